package org.docksweep.kiosk;

/** Version of this program, as papers name it. */
public final class Version {
    private Version() {}

    /**
     * The version.
     *
     * @return version of the packaged program, or {@code development} when it runs from class files
     */
    public static String text() {
        String version = Version.class.getPackage().getImplementationVersion();
        return version == null ? "development" : version;
    }
}
