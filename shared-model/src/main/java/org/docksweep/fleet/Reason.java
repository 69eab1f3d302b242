package org.docksweep.fleet;

import java.util.List;

/**
 * A sentence for people, kept as a key and its arguments so that it can be said in any language. Texts live in the
 * resource bundle {@code org.docksweep.fleet.reasons}.
 *
 * @param key bundle key, for example {@code driver-open}
 * @param arguments arguments in the order of the text's placeholders; numbers already formatted by the point of origin
 */
public record Reason(String key, List<String> arguments) {
    public Reason {
        Require.text("reason key", key);
        arguments = Require.copy("reason arguments", arguments);
    }

    /**
     * Makes a reason.
     *
     * @param key bundle key
     * @param arguments arguments
     * @return the reason
     */
    public static Reason of(String key, String... arguments) {
        return new Reason(key, List.of(arguments));
    }
}
