package org.docksweep.kiosk.screens;

import java.time.ZoneId;
import java.util.Locale;
import java.util.ResourceBundle;
import org.docksweep.fleet.Reason;

/** Texts of the window that also know the gate's sample sentences, and can be stretched to test for room. */
final class SampleTexts extends Texts {
    private final ResourceBundle samples;
    private final double longer;

    /**
     * Makes texts.
     *
     * @param longer share by which window texts are lengthened: 0 for none
     */
    SampleTexts(Locale locale, ZoneId zone, double longer) {
        super(locale, zone);
        this.longer = longer;
        this.samples = ResourceBundle.getBundle(
                "org.docksweep.kiosk.screens.samples",
                locale,
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_DEFAULT));
    }

    @Override
    String say(String key, Object... arguments) {
        String text = super.say(key, arguments);
        // Figures, codes and the huge words do not grow in another language; sentences and labels do.
        boolean grows = longer > 0 && !key.startsWith("number.") && text.chars().anyMatch(Character::isLetter);
        return grows ? text + stretch(text) : text;
    }

    private String stretch(String text) {
        StringBuilder tail = new StringBuilder();
        int more = (int) Math.ceil(text.length() * longer);
        for (int i = 0; i < more; i++) {
            tail.append(i % 7 == 0 ? ' ' : 'x');
        }
        return text.contains(" ") ? tail.toString() : tail.toString().replace(" ", "");
    }

    @Override
    String say(Reason reason) {
        return samples.containsKey(reason.key()) ? samples.getString(reason.key()) : super.say(reason);
    }
}
