package org.docksweep.service.reliability;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.docksweep.contract.PartLife;
import org.docksweep.survival.Lifetime;

/**
 * A life on record as statistics take it: ages in weeks since fitting.
 *
 * @param life the life
 * @param recordsFrom first day from which a failure would have been known, or null when it was watched from its fitting
 * @param foundAt when its failure was found, or null when it has not failed
 * @param lastPassAt last return that passed, or null
 */
record PartHistory(PartLife life, LocalDate recordsFrom, Instant foundAt, Instant lastPassAt) {
    /** A failure within so many weeks of fitting is called early. Common practice, no source. */
    static final double EARLY_WEEKS = 4;

    private static final double DAYS_PER_WEEK = 7;

    /**
     * The lifetime. A failure lies between the last return that passed and the day it was found. A part in service works
     * as far as its last good return tells; one that was taken out while it worked, until then.
     *
     * @return empty when the day of fitting is not known, or the part had failed before the records began
     */
    Optional<Lifetime> lifetime(ZoneId zone) {
        if (life.fittedOn() == null) {
            return Optional.empty();
        }
        double entry = recordsFrom == null ? 0 : Math.max(0, weeks(recordsFrom));
        double seenGood = lastPassAt == null ? 0 : Math.max(0, weeks(day(lastPassAt, zone)));
        if (life.failed()) {
            // One that is found broken on the day of its fitting lived for part of a day.
            double found = Math.max(1 / DAYS_PER_WEEK, weeks(day(foundAt, zone)));
            double alive = Math.max(entry, Math.min(seenGood, found));
            return found > entry ? Optional.of(new Lifetime(entry, alive, found)) : Optional.empty();
        }
        double end = life.endedAt() == null ? Math.max(entry, seenGood) : weeks(day(life.endedAt(), zone));
        return end >= entry ? Optional.of(new Lifetime(entry, end, Double.POSITIVE_INFINITY)) : Optional.empty();
    }

    /** Whether it failed before its first good return, or soon after its fitting. */
    boolean failedEarly(ZoneId zone) {
        return life.failed()
                && life.fittedOn() != null
                && (recordsFrom == null || !recordsFrom.isAfter(life.fittedOn()))
                && (!passedSinceFitting(zone) || weeks(day(foundAt, zone)) <= EARLY_WEEKS);
    }

    private boolean passedSinceFitting(ZoneId zone) {
        return lastPassAt != null && day(lastPassAt, zone).isAfter(life.fittedOn());
    }

    private double weeks(LocalDate until) {
        return ChronoUnit.DAYS.between(life.fittedOn(), until) / DAYS_PER_WEEK;
    }

    private static LocalDate day(Instant instant, ZoneId zone) {
        return LocalDate.ofInstant(instant, zone);
    }
}
