package org.docksweep.fleet;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Asset key of the GS1 system on a label beside the house's own: a GIAI, application identifier 8004, or a GRAI with its serial,
 * 8003 (GS1 General Specifications). Normal form is the one printed under the bars, identifier in brackets:
 * {@code (8004)06141415678}.
 *
 * <ul>
 *   <li>GIAI: company prefix and reference, 1 to 30 characters, no check digit.
 *   <li>GRAI: a filler 0, 13 digits the last of which is a check digit modulo 10, then a serial of 1 to 16 characters. Without
 *       a serial it names a kind of asset, not one of them, and is refused.
 * </ul>
 *
 * @param value normal form
 */
public record Gs1Key(@JsonValue String value) {
    private static final String GIAI = "8004";
    private static final String GRAI = "8003";
    private static final int GRAI_DIGITS = 14;
    /** Character set 82 of the General Specifications, section 7.11. */
    private static final String CHARACTERS = "[!\"%-?A-Z_a-z&&[^$]]";

    private static final Pattern GIAI_FORM = Pattern.compile(CHARACTERS + "{1,30}");
    private static final Pattern GRAI_FORM = Pattern.compile("[0-9]{14}" + CHARACTERS + "{0,16}");
    /** A scanner may put a symbology identifier (ISO/IEC 15424) and a function character before it; people type the brackets. */
    private static final Pattern SCANNED =
            Pattern.compile("(?:\\][A-Za-z][0-9])?\\u001D?(?:\\((800[34])\\)|(800[34]))(.+?)\\u001D?");

    @JsonCreator
    public Gs1Key {
        Matcher matcher = SCANNED.matcher(value == null ? "" : value);
        if (!matcher.matches() || matcher.group(1) == null) {
            throw new IllegalArgumentException(
                    "\"" + value
                            + "\" is not an asset key; expected (8004) and up to 30 characters, or (8003), 14 digits and a serial");
        }
        String fault = fault(matcher.group(1), matcher.group(3));
        if (fault != null) {
            throw new IllegalArgumentException("asset key " + value + " " + fault);
        }
    }

    /**
     * Whether a scan claims to be one: it starts with the application identifier of an asset, in brackets or after what a scanner
     * puts before GS1 symbols. Bare digits claim it only when all is right: article numbers begin like that too.
     *
     * @param scan text of the scanner
     * @return whether to read it with {@link #read}
     */
    public static boolean looksLike(String scan) {
        String text = scan.strip();
        return SCANNED.matcher(text).matches()
                && (!Character.isDigit(text.charAt(0)) || read(text).isPresent());
    }

    /**
     * Reads a scan, with or without symbology identifier, function characters and brackets.
     *
     * @param scan text of the scanner
     * @return the key; empty when it is none, or its check digit is wrong
     */
    public static Optional<Gs1Key> read(String scan) {
        Matcher matcher = SCANNED.matcher(scan.strip());
        if (!matcher.matches()) {
            return Optional.empty();
        }
        String identifier = matcher.group(1) == null ? matcher.group(2) : matcher.group(1);
        String data = matcher.group(3);
        return fault(identifier, data) == null
                ? Optional.of(new Gs1Key("(" + identifier + ")" + data))
                : Optional.empty();
    }

    /**
     * Check digit modulo 10: weights 3 and 1 in turn from the right (GS1 General Specifications, section 7.9).
     *
     * @param digits digits before the check digit, 1 to 17
     * @return the check digit
     * @throws IllegalArgumentException when there is something else than digits
     */
    public static int checkDigit(String digits) {
        if (!digits.matches("[0-9]{1,17}")) {
            throw new IllegalArgumentException("\"" + digits + "\" is not 1 to 17 digits");
        }
        int sum = 0;
        for (int i = 0; i < digits.length(); i++) {
            int digit = digits.charAt(digits.length() - 1 - i) - '0';
            sum += i % 2 == 0 ? 3 * digit : digit;
        }
        return (10 - sum % 10) % 10;
    }

    /** What is wrong, or null. */
    private static String fault(String identifier, String data) {
        if (identifier.equals(GIAI)) {
            return GIAI_FORM.matcher(data).matches()
                    ? null
                    : "has something else than 1 to 30 characters of the set 82 after " + GIAI;
        }
        if (!GRAI_FORM.matcher(data).matches() || data.charAt(0) != '0') {
            return "has something else than a 0, 13 digits and a serial of at most 16 characters after " + GRAI;
        }
        int expected = checkDigit(data.substring(1, GRAI_DIGITS - 1));
        int found = data.charAt(GRAI_DIGITS - 1) - '0';
        if (expected != found) {
            return "has check digit " + found + ", its digits ask for " + expected + ": read or typed wrongly";
        }
        return data.length() > GRAI_DIGITS ? null : "has no serial: it names a kind of asset, not one of them";
    }

    @Override
    public String toString() {
        return value;
    }
}
