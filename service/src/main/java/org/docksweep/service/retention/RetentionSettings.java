package org.docksweep.service.retention;

import java.time.LocalDate;
import java.time.Period;
import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * How long curves and recordings are kept.
 *
 * @param curves age after which curves are removed, like {@code 3y}, {@code 18m}; null keeps them for ever
 * @param recordings age after which recordings are removed; null keeps them for ever
 */
@ConfigurationProperties("docksweep.retention")
public record RetentionSettings(Period curves, Period recordings) {
    /** A slip of the pen must not empty a house. */
    private static final int SHORTEST_DAYS = 30;

    private static final LocalDate ANY_DAY = LocalDate.of(2026, 1, 1);

    public RetentionSettings {
        require("docksweep.retention.curves", curves);
        require("docksweep.retention.recordings", recordings);
    }

    private static void require(String name, Period age) {
        if (age != null && ANY_DAY.minus(age).isAfter(ANY_DAY.minusDays(SHORTEST_DAYS))) {
            throw new IllegalArgumentException(name + " must be at least " + SHORTEST_DAYS + " days, but is " + age
                    + "; leave it empty to keep everything");
        }
    }

    LocalDate curvesBefore(LocalDate today) {
        return curves == null ? null : today.minus(curves);
    }

    LocalDate recordingsBefore(LocalDate today) {
        return recordings == null ? null : today.minus(recordings);
    }

    boolean removesAnything() {
        return curves != null || recordings != null;
    }
}
