package org.docksweep.service.reliability;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.docksweep.contract.PartLife;
import org.docksweep.survival.Lifetime;

/** A life on record as statistics take it: ages in weeks since fitting. */
record PartHistory(PartLife life, LocalDate recordsFrom) {
    /** A failure within so many weeks of fitting is called early. Common practice, no source. */
    static final double EARLY_WEEKS = 4;

    private static final double DAYS_PER_WEEK = 7;

    /**
     * The lifetime. A failure lies between the last return that passed and the day it was found. A part in service, or
     * taken out while it worked, worked until its last good return where one is known, else until it was taken out or now.
     *
     * @return empty when the day of fitting is not known, or the part had failed before the records began
     */
    Optional<Lifetime> lifetime(Instant asOf, ZoneId zone) {
        if (life.fittedOn() == null) {
            return Optional.empty();
        }
        double entry = recordsFrom == null ? 0 : Math.max(0, weeks(recordsFrom));
        double seenGood = life.lastPassAt() == null ? 0 : Math.max(0, weeks(day(life.lastPassAt(), zone)));
        if (life.failed()) {
            // One that is found broken on the day of its fitting lived for part of a day.
            double found = Math.max(1 / DAYS_PER_WEEK, weeks(day(life.endedAt(), zone)));
            double alive = Math.max(entry, Math.min(seenGood, found));
            return found > entry ? Optional.of(new Lifetime(entry, alive, found)) : Optional.empty();
        }
        double end = life.endedAt() == null && life.lastPassAt() != null
                ? seenGood
                : weeks(day(life.endedAt() == null ? asOf : life.endedAt(), zone));
        return end >= entry ? Optional.of(new Lifetime(entry, end, Double.POSITIVE_INFINITY)) : Optional.empty();
    }

    /** Whether it failed before its first good return, or soon after its fitting. */
    boolean failedEarly(ZoneId zone) {
        return life.failed()
                && life.fittedOn() != null
                && (recordsFrom == null || !recordsFrom.isAfter(life.fittedOn()))
                && (life.lastPassAt() == null || weeks(day(life.endedAt(), zone)) <= EARLY_WEEKS);
    }

    private double weeks(LocalDate until) {
        return ChronoUnit.DAYS.between(life.fittedOn(), until) / DAYS_PER_WEEK;
    }

    private static LocalDate day(Instant instant, ZoneId zone) {
        return LocalDate.ofInstant(instant, zone);
    }
}
