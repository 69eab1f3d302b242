package org.docksweep.paper;

import java.text.MessageFormat;
import java.text.NumberFormat;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.ResourceBundle;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;
import org.docksweep.gate.ReadingKind;

/** The words and numbers of a paper in its language and time zone. Numbers follow the locale here and nowhere else. */
final class PaperText {
    static final String BUNDLE = "org.docksweep.paper.paper";
    /** Above this many ohm a reading means "no current"; digits would only pretend. */
    private static final double LARGEST_SHOWN = 9999;

    private final PaperContext context;
    private final Locale locale;
    private final ResourceBundle bundle;

    PaperText(PaperContext context) {
        this.context = context;
        this.locale = context.locale();
        this.bundle = ResourceBundle.getBundle(
                BUNDLE, locale, ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_DEFAULT));
    }

    Locale locale() {
        return locale;
    }

    boolean isPractice() {
        return context.practice();
    }

    String siteName() {
        return context.siteName();
    }

    String get(String key) {
        return bundle.getString(key);
    }

    String get(String key, Object... arguments) {
        return new MessageFormat(bundle.getString(key), locale).format(arguments);
    }

    /** The word for a constant: key {@code group.CONSTANT}. */
    String word(String group, Enum<?> constant) {
        return bundle.getString(group + "." + constant.name());
    }

    String reason(Reason reason) {
        return Reasons.text(reason, locale);
    }

    String day(LocalDate day) {
        return DateTimeFormatter.ofPattern(get("format.day"), locale).format(day);
    }

    /** Day of a past event, without its weekday. */
    String date(Instant instant) {
        return date(LocalDate.ofInstant(instant, context.zone()));
    }

    String date(LocalDate day) {
        return DateTimeFormatter.ofPattern(get("format.date"), locale).format(day);
    }

    String moment(Instant instant) {
        return DateTimeFormatter.ofPattern(get("format.moment"), locale)
                .withZone(context.zone())
                .format(instant);
    }

    String time(Instant instant) {
        return DateTimeFormatter.ofPattern(get("format.time"), locale)
                .withZone(context.zone())
                .format(instant);
    }

    String count(long count) {
        return NumberFormat.getIntegerInstance(locale).format(count);
    }

    String percent(double share) {
        return NumberFormat.getPercentInstance(locale).format(share);
    }

    String number(double value, int decimals) {
        NumberFormat format = NumberFormat.getNumberInstance(locale);
        format.setMinimumFractionDigits(decimals);
        format.setMaximumFractionDigits(decimals);
        return format.format(value).replace('-', '\u2212');
    }

    /**
     * A value of a reading without its unit: two decimals below 10 ohm, one below 100 (ohm, hertz, all decibels), none
     * above.
     */
    String value(ReadingKind kind, double value) {
        if (Double.isNaN(value)) {
            return get("reading.none");
        }
        if (value > LARGEST_SHOWN && kind.unit().equals("\u03a9")) {
            return get("reading.over", number(LARGEST_SHOWN, 0));
        }
        double size = Math.abs(value);
        int decimals = switch (kind.unit()) {
            case "dB" -> 1;
            case "Hz" -> size < 100 ? 1 : 0;
            default -> size < 10 ? 2 : size < 100 ? 1 : 0;
        };
        return number(value, decimals);
    }

    String printedLine() {
        return get("foot.printed", moment(context.printedAt()), context.printedBy(), context.siteName());
    }

    String versionLine() {
        return get("foot.version", context.softwareVersion());
    }
}
