package org.docksweep.fleet;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;

/** Says {@link Reason}s in words. */
public final class Reasons {
    private static final String BUNDLE = "org.docksweep.fleet.reasons";
    /** An argument that begins so is itself a key of the bundle: a word to be said in the reader's language. */
    private static final String WORD = "@";

    private Reasons() {}

    /**
     * The sentence in a language.
     *
     * @param reason the reason
     * @param locale language wanted; English where a language has no text
     * @return the sentence
     * @throws IllegalArgumentException if no text exists for the key, which is a defect of this program
     */
    public static String text(Reason reason, Locale locale) {
        ResourceBundle bundle = ResourceBundle.getBundle(
                BUNDLE, locale, ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_DEFAULT));
        try {
            Object[] arguments = reason.arguments().stream()
                    .map(a -> a.startsWith(WORD) ? bundle.getString(a.substring(WORD.length())) : a)
                    .toArray();
            return new MessageFormat(bundle.getString(reason.key()), locale).format(arguments);
        } catch (MissingResourceException e) {
            throw new IllegalArgumentException("no text for reason key \"" + reason.key() + "\" in " + BUNDLE, e);
        }
    }
}
