package org.docksweep.survival;

/**
 * A confidence interval.
 *
 * @param lower lower end
 * @param upper upper end, at least the lower one; infinite where the data set no bound
 */
public record Interval(double lower, double upper) {
    public Interval {
        if (!(lower <= upper)) {
            throw new IllegalArgumentException(
                    "interval must go from its lower to its upper end, but is " + lower + " to " + upper);
        }
    }

    /**
     * Whether a value lies within, ends included.
     *
     * @param value value
     * @return whether it does
     */
    public boolean contains(double value) {
        return value >= lower && value <= upper;
    }

    /**
     * Width of the interval.
     *
     * @return upper minus lower end, infinite where one end is
     */
    public double width() {
        return upper - lower;
    }
}
