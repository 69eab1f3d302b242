package org.docksweep.fleet;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.regex.Pattern;

/**
 * Asset tag of a cabinet, in its normal form: upper-case letters, a hyphen, digits (for example {@code MCH-000123}).
 *
 * @param value normal form
 */
public record AssetTag(@JsonValue String value) implements Comparable<AssetTag> {
    /** Normal form of one tag. */
    public static final Pattern FORM = Pattern.compile("[A-Z]{2,5}-[0-9]{3,8}");

    @JsonCreator
    public AssetTag {
        if (value == null || !FORM.matcher(value).matches()) {
            throw new IllegalArgumentException(
                    "\"" + printable(value)
                            + "\" is not an asset tag; expected 2 to 5 capital letters, a hyphen and 3 to 8 digits, like MCH-000123");
        }
    }

    private static String printable(String value) {
        return value == null ? "" : value.replaceAll("\\p{Cntrl}", "?").substring(0, Math.min(40, value.length()));
    }

    @Override
    public int compareTo(AssetTag other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
