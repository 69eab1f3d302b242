package org.docksweep.fleet;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Code of a bench job as printed on a repair tag: J, two digits of the kiosk that made it, a hyphen, five digits (for
 * example {@code J01-00042}). Made by the kiosk so that a tag can be printed without a network.
 *
 * @param value normal form
 */
public record JobCode(@JsonValue String value) {
    private static final Pattern FORM = Pattern.compile("J[0-9]{2}-[0-9]{5}");

    @JsonCreator
    public JobCode {
        if (value == null || !FORM.matcher(value).matches()) {
            throw new IllegalArgumentException("\"" + value + "\" is not a job code; expected J, two digits, a hyphen"
                    + " and five digits, like J01-00042");
        }
    }

    /**
     * Makes a code.
     *
     * @param kioskNumber number of the kiosk, 1 to 99
     * @param sequence running number at that kiosk, 1 to 99999
     * @return the code
     */
    public static JobCode of(int kioskNumber, int sequence) {
        Require.inRange("kiosk number", kioskNumber, 1, 99);
        Require.inRange("job sequence", sequence, 1, 99999);
        return new JobCode(String.format(Locale.ROOT, "J%02d-%05d", kioskNumber, sequence));
    }

    /**
     * Whether a scanned text has the form of a job code.
     *
     * @param text text, may be null
     * @return true if it has
     */
    public static boolean looksLike(String text) {
        return text != null && FORM.matcher(text).matches();
    }

    @Override
    public String toString() {
        return value;
    }
}
