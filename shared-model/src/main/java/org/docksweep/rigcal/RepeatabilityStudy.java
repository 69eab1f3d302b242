package org.docksweep.rigcal;

import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * Gauge repeatability and reproducibility by analysis of variance: some parts, each measured by several operators (or after
 * several plug-ins), several times each. Random effects, parts and operators crossed:
 * {@code y = mean + part + operator + part x operator + repeat}.
 *
 * <p>Components from the expected mean squares (Montgomery, "Design and Analysis of Experiments", two-factor random model; from
 * memory): {@code repeat = MSe; interaction = (MSpo - MSe)/n; operator = (MSo - MSpo)/(p n); part = (MSp - MSpo)/(o n)};
 * negative ones count as 0.
 *
 * @param mean mean of all
 * @param repeatability standard deviation between repeats (equipment)
 * @param reproducibility standard deviation between operators or plug-ins, interaction included
 * @param partSpread standard deviation between parts
 * @param repeatabilityLow lower limit of the repeatability, two-sided 95 %
 * @param repeatabilityHigh its upper limit
 * @param operatorSignificance probability of operators differing so much by chance alone (F test)
 * @param repeatFreedom degrees of freedom of the repeatability
 */
public record RepeatabilityStudy(
        double mean,
        double repeatability,
        double reproducibility,
        double partSpread,
        double repeatabilityLow,
        double repeatabilityHigh,
        double operatorSignificance,
        int repeatFreedom) {

    private static final double ONE_TAIL = 0.025;

    /**
     * Evaluates a study.
     *
     * @param readings readings[part][operator][repeat], equally many everywhere: at least 2 of each
     * @return components
     * @throws IllegalArgumentException if there are too few, they are not equally many, or one is not a number
     */
    public static RepeatabilityStudy of(double[][][] readings) {
        int parts = readings.length;
        int operators = parts == 0 ? 0 : readings[0].length;
        int repeats = operators == 0 ? 0 : readings[0][0].length;
        if (parts < 2 || operators < 2 || repeats < 2) {
            throw new IllegalArgumentException(
                    "a repeatability study needs at least 2 parts, 2 operators or plug-ins and" + " 2 repeats, but has "
                            + parts + ", " + operators + " and " + repeats + "; measure more");
        }
        double[][] cell = new double[parts][operators];
        double[] part = new double[parts];
        double[] operator = new double[operators];
        double mean = 0;
        for (int p = 0; p < parts; p++) {
            for (int o = 0; o < operators; o++) {
                cell[p][o] = mean(readings, p, o, operators, repeats);
                part[p] += cell[p][o] / operators;
                operator[o] += cell[p][o] / parts;
                mean += cell[p][o] / (parts * operators);
            }
        }
        double within = 0;
        double interaction = 0;
        for (int p = 0; p < parts; p++) {
            for (int o = 0; o < operators; o++) {
                interaction += repeats * square(cell[p][o] - part[p] - operator[o] + mean);
                for (double reading : readings[p][o]) {
                    within += square(reading - cell[p][o]);
                }
            }
        }
        int freedom = parts * operators * (repeats - 1);
        int interactionFreedom = (parts - 1) * (operators - 1);
        double msWithin = within / freedom;
        double msInteraction = interaction / interactionFreedom;
        double msPart = operators * repeats * squares(part, mean) / (parts - 1);
        double msOperator = parts * repeats * squares(operator, mean) / (operators - 1);
        double byInteraction = Math.max(0, (msInteraction - msWithin) / repeats);
        double byOperator = Math.max(0, (msOperator - msInteraction) / (parts * repeats));
        double byPart = Math.max(0, (msPart - msInteraction) / (operators * repeats));
        ChiSquaredDistribution chi = new ChiSquaredDistribution(freedom);
        double significance = msInteraction > 0
                ? 1
                        - new FDistribution(operators - 1, interactionFreedom)
                                .cumulativeProbability(msOperator / msInteraction)
                : msOperator > 0 ? 0 : 1;
        return new RepeatabilityStudy(
                mean,
                Math.sqrt(msWithin),
                Math.sqrt(byOperator + byInteraction),
                Math.sqrt(byPart),
                Math.sqrt(within / chi.inverseCumulativeProbability(1 - ONE_TAIL)),
                Math.sqrt(within / chi.inverseCumulativeProbability(ONE_TAIL)),
                significance,
                freedom);
    }

    private static double mean(double[][][] readings, int p, int o, int operators, int repeats) {
        if (readings[p].length != operators || readings[p][o].length != repeats) {
            throw new IllegalArgumentException("a repeatability study needs equally many readings everywhere: part "
                    + (p + 1) + " has others than part 1; measure the missing ones");
        }
        double sum = 0;
        for (double reading : readings[p][o]) {
            if (!Double.isFinite(reading)) {
                throw new IllegalArgumentException("reading of part " + (p + 1) + ", operator " + (o + 1)
                        + " is not a number (" + reading + "); measure it again");
            }
            sum += reading;
        }
        return sum / repeats;
    }

    private static double squares(double[] values, double mean) {
        double sum = 0;
        for (double value : values) {
            sum += square(value - mean);
        }
        return sum;
    }

    private static double square(double value) {
        return value * value;
    }

    /**
     * Standard deviation of one measurement of one part: repeatability and reproducibility together.
     *
     * @return square root of the sum of both variances
     */
    public double gaugeSpread() {
        return Math.hypot(repeatability, reproducibility);
    }

    /**
     * Share of the gauge in all spread seen.
     *
     * @return gauge over total standard deviation, in per cent; 0 when nothing spread at all
     */
    public double gaugePercent() {
        double total = Math.hypot(gaugeSpread(), partSpread);
        return total == 0 ? 0 : 100 * gaugeSpread() / total;
    }

    /**
     * Standard uncertainty for a guard band (JCGM 106:2012): a value measured with some repeats after one plug-in.
     *
     * @param repeats repeats averaged, at least 1
     * @param calibrationUncertainty standard uncertainty of the calibration in the unit of the readings, at least 0
     * @return standard uncertainty of one result
     */
    public double guardUncertainty(int repeats, double calibrationUncertainty) {
        if (repeats < 1 || !(calibrationUncertainty >= 0)) {
            throw new IllegalArgumentException(
                    "a guard band needs at least 1 repeat and a calibration uncertainty of at" + " least 0, but has "
                            + repeats + " and " + calibrationUncertainty);
        }
        return Math.sqrt(repeatability * repeatability / repeats
                + reproducibility * reproducibility
                + calibrationUncertainty * calibrationUncertainty);
    }

    /**
     * Pooled standard deviation of groups, {@code sqrt(sum v_i s_i^2 / sum v_i)} (NIST/SEMATECH e-Handbook 2.4.4).
     *
     * @param deviations standard deviations, at least one
     * @param freedom degrees of freedom of each, at least 1
     * @return pooled standard deviation
     */
    public static double pooled(double[] deviations, int freedom) {
        if (deviations.length == 0 || freedom < 1) {
            throw new IllegalArgumentException(
                    "pooling needs at least one standard deviation and 1 degree of freedom, but" + " has "
                            + deviations.length + " and " + freedom);
        }
        double sum = 0;
        for (double deviation : deviations) {
            sum += deviation * deviation;
        }
        return Math.sqrt(sum / deviations.length);
    }
}
