package org.docksweep.survival;

import org.docksweep.fleet.Require;

/**
 * What is known of one part's life. Ages are counted from its fitting, in one unit of time throughout (weeks in the
 * house). A failure is found at a return, so mostly it is known only to lie between the last good return and the bad one.
 *
 * @param entryAge age at which the part came under observation; 0 when it was watched from its fitting. A part already old
 *     at the start of the records counts only because it had not failed until then (left truncation)
 * @param aliveAge oldest age at which the part was known to work, at least the entry age
 * @param failedAge age by which it was known to have failed; equal to {@code aliveAge} when the moment is known exactly,
 *     infinite when it has not failed yet
 */
public record Lifetime(double entryAge, double aliveAge, double failedAge) {
    public Lifetime {
        Require.notNegative("entry age of a lifetime", entryAge);
        Require.notNegative("last good age of a lifetime", aliveAge);
        if (!(aliveAge >= entryAge)) {
            throw new IllegalArgumentException("a part that came under observation at age " + entryAge
                    + " must have been seen working at that age or later, but its last good age is " + aliveAge);
        }
        if (!(failedAge >= aliveAge)) {
            throw new IllegalArgumentException("a part that worked at age " + aliveAge
                    + " must have failed at that age or later, but its failure is given at age " + failedAge);
        }
        if (!(failedAge > 0)) {
            throw new IllegalArgumentException(
                    "a part that failed at age 0 never worked; count it as a faulty delivery, not as a lifetime");
        }
    }

    /**
     * A part that failed at a known age.
     *
     * @param age age, greater than 0
     * @return the lifetime
     */
    public static Lifetime failedAt(double age) {
        return new Lifetime(0, age, age);
    }

    /**
     * A part that works still, or was taken out of use while it worked.
     *
     * @param age oldest age at which it was known to work, at least 0
     * @return the lifetime
     */
    public static Lifetime workedUntil(double age) {
        return new Lifetime(0, age, Double.POSITIVE_INFINITY);
    }

    /**
     * A part whose failure was found at a return.
     *
     * @param aliveAge age at the last good return, 0 when there was none
     * @param failedAge age at the return that found the failure
     * @return the lifetime
     */
    public static Lifetime failedBetween(double aliveAge, double failedAge) {
        return new Lifetime(0, aliveAge, failedAge);
    }

    /**
     * The same life, watched only from an age on.
     *
     * @param age age at which the records begin
     * @return the lifetime
     */
    public Lifetime observedFrom(double age) {
        return new Lifetime(age, aliveAge, failedAge);
    }

    /**
     * Whether the part failed.
     *
     * @return whether it did
     */
    public boolean failed() {
        return failedAge < Double.POSITIVE_INFINITY;
    }

    /**
     * Age at which its story ends here: when the failure was found, or when it was last seen working.
     *
     * @return the age
     */
    public double endAge() {
        return failed() ? failedAge : aliveAge;
    }

    /**
     * Time it was watched, found failures counted up to the finding.
     *
     * @return end age minus entry age
     */
    public double watched() {
        return endAge() - entryAge;
    }
}
