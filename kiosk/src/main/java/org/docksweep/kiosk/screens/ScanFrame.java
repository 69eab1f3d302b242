package org.docksweep.kiosk.screens;

/**
 * What a scanner is set to put around every code, so that it is not taken for a part of it. A hand that types puts nothing around.
 *
 * @param prefix characters before the code, may be empty
 * @param suffix characters after it, before Enter or Tab, may be empty
 */
public record ScanFrame(String prefix, String suffix) {
    /** Nothing around the code. */
    public static final ScanFrame NONE = new ScanFrame("", "");

    public ScanFrame {
        if (prefix == null || suffix == null) {
            throw new IllegalArgumentException("prefix and suffix of a scan must be there, empty for none");
        }
    }

    /**
     * The code itself.
     *
     * @param text what arrived
     * @return the text without the prefix and the suffix, each where it is there
     */
    public String strip(String text) {
        String code = text.startsWith(prefix) ? text.substring(prefix.length()) : text;
        return code.endsWith(suffix) ? code.substring(0, code.length() - suffix.length()) : code;
    }
}
