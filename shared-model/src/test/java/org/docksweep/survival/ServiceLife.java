package org.docksweep.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Five years of diaphragms with a known truth. Positions are in hire from the start or bought later; every position goes
 * out and comes back after one to about ten weeks; a diaphragm that has failed is found at the return and replaced by a new one. The
 * records begin at week 0, so diaphragms that are old then were watched only from that age on. Ages are whole days, as
 * fractions of a week.
 */
final class ServiceLife {
    /** The records cover five years. */
    static final double WEEKS = 260;
    /** Positions were in hire for up to six years before the records began. */
    private static final double WEEKS_BEFORE = 312;

    private static final double SHARE_BOUGHT_LATER = 0.5;
    private static final double LAST_BOUGHT_WEEK = 156;
    private static final double MEAN_HIRE_WEEKS = 3;

    private final Weibull truth;
    private final SplittableRandom random;
    private final List<Lifetime> lives = new ArrayList<>();

    private ServiceLife(Weibull truth, long seed) {
        this.truth = truth;
        this.random = new SplittableRandom(seed);
    }

    static List<Lifetime> fiveYears(Weibull truth, int positions, long seed) {
        ServiceLife house = new ServiceLife(truth, seed);
        for (int i = 0; i < positions; i++) {
            boolean later = house.random.nextDouble() < SHARE_BOUGHT_LATER;
            double when = house.random.nextDouble();
            house.position(later ? LAST_BOUGHT_WEEK * when : -WEEKS_BEFORE * when);
        }
        return house.lives;
    }

    private void position(double firstFittedAt) {
        double now = day(firstFittedAt);
        while (now <= WEEKS) {
            now = oneDiaphragm(now);
        }
    }

    /** Lives one diaphragm and returns when its successor is fitted, or a time after the records. */
    private double oneDiaphragm(double fittedAt) {
        double failsAt = fittedAt + life();
        double now = fittedAt;
        double lastGood = fittedAt;
        // One that is old when the records begin is watched from its first good return within them. If that return
        // already
        // finds it broken, nothing but "it had been fitted once" is known, and it does not count.
        double watchedFrom = fittedAt >= 0 ? fittedAt : Double.NaN;
        while (true) {
            now = day(now + 1 - Math.log1p(-random.nextDouble()) * MEAN_HIRE_WEEKS);
            if (now > WEEKS) {
                add(fittedAt, watchedFrom, lastGood, Double.POSITIVE_INFINITY);
                return now;
            }
            if (failsAt <= now) {
                add(fittedAt, watchedFrom, lastGood, now);
                return now;
            }
            lastGood = now;
            if (Double.isNaN(watchedFrom) && now >= 0) {
                watchedFrom = now;
            }
        }
    }

    private void add(double fittedAt, double watchedFrom, double lastGood, double found) {
        if (!Double.isNaN(watchedFrom) && (found < Double.POSITIVE_INFINITY || lastGood > watchedFrom)) {
            lives.add(new Lifetime(watchedFrom - fittedAt, lastGood - fittedAt, found - fittedAt));
        }
    }

    private double life() {
        return truth.scale() * Math.pow(-Math.log1p(-random.nextDouble()), 1 / truth.shape());
    }

    private static double day(double weeks) {
        return Math.round(weeks * 7) / 7.0;
    }
}
