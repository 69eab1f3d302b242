package org.docksweep.kiosk.night;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/** What an integration test needs and a machine may lack: it skips and says so, or fails where that is demanded. */
final class Capability {
    /** Set by the full run: a skipped capability is a failure there. */
    private static final String DEMAND = "docksweep.require.service-jar";

    private Capability() {}

    static Path serviceJar() {
        Path jar = Path.of(System.getProperty("docksweep.service-jar", "../service/target/no-service-jar-given"));
        if (!Files.isRegularFile(jar)) {
            String words = "the service's executable jar is not at "
                    + jar.toAbsolutePath().normalize() + "; build it with: mvn -pl service -am package";
            if (Boolean.getBoolean(DEMAND)) {
                throw new AssertionError(words);
            }
            System.out.println("SKIPPED: " + words);
            Assumptions.abort(words);
        }
        return jar;
    }
}
