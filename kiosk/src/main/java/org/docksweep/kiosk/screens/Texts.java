package org.docksweep.kiosk.screens;

import java.text.MessageFormat;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.Pattern;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;

/** Words of the window in the language of the settings. */
class Texts {
    private static final String BUNDLE = "org.docksweep.kiosk.screens.screens";

    private static final Pattern NUMBER_AND_UNIT = Pattern.compile("(\\d) (k?\u03a9|ohm|dB|k?Hz|\u00b0C|%)");

    private final Locale locale;
    private final DateTimeFormatter clock;
    private final DateTimeFormatter dayAndClock;
    private final ResourceBundle bundle;

    Texts(Locale locale, ZoneId zone) {
        this.locale = locale;
        this.clock = DateTimeFormatter.ofPattern("HH:mm", locale).withZone(zone);
        this.dayAndClock = DateTimeFormatter.ofPattern("d MMM HH:mm", locale).withZone(zone);
        this.bundle = ResourceBundle.getBundle(
                BUNDLE, locale, ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_DEFAULT));
    }

    /**
     * A text of the window.
     *
     * @param key bundle key
     * @param arguments arguments of the placeholders
     * @throws java.util.MissingResourceException if no text exists, which is a defect of this program
     */
    String say(String key, Object... arguments) {
        return new MessageFormat(bundle.getString(key), locale).format(arguments);
    }

    /** A text named by an enum constant: the key is {@code prefix.CONSTANT}. */
    String say(String prefix, Enum<?> constant) {
        return say(prefix + "." + constant.name());
    }

    /** A sentence kept as key and arguments. */
    String say(Reason reason) {
        // A number must not be parted from its unit at the end of a line.
        return NUMBER_AND_UNIT.matcher(Reasons.text(reason, locale)).replaceAll("$1\u00a0$2");
    }

    String clock(Instant at) {
        return clock.format(at);
    }

    String dayAndClock(Instant at) {
        return dayAndClock.format(at);
    }

    Locale locale() {
        return locale;
    }
}
