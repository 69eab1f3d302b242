package org.docksweep.kiosk.rig;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.docksweep.rigcal.EwmaChart;
import org.docksweep.rigcal.IndividualsChart;

/**
 * Control chart of one check standard since the last calibration, or of the microphone since its sound was accepted: single readings with Shewhart limits, and their
 * exponentially weighted average, which sees slow drift. Limits come from the first {@value #BASELINE} readings, as soon
 * as there are {@value #FEWEST} and one more; before that only the fixed limit of the check decides.
 *
 * @param standardName standard
 * @param at times of the readings
 * @param shares readings: {@link CheckReading#meanShare()} of a standard, decibels or metres of the microphone
 * @param averages moving averages; empty before there are limits
 * @param limits limits; empty before there are enough readings
 */
public record CheckChart(
        String standardName, List<Instant> at, List<Double> shares, List<Double> averages, Optional<Limits> limits) {
    /** Fewest readings for limits (common practice, no source). */
    static final int FEWEST = 8;

    /** Readings that make the limits; they stay as they are after that. */
    static final int BASELINE = 20;

    /** Weight of the newest reading and width, as in NIST/SEMATECH e-Handbook 6.3.2.4. */
    private static final double LAMBDA = 0.2;

    private static final double WIDTH = 3;

    /**
     * Least standard deviation. What stays within a tenth of the limit of the check is of no consequence, however
     * steady the baseline was.
     */
    private static final double LEAST_DEVIATION = RigDay.CHECK_LIMIT_SHARE / 10 / WIDTH;

    /** Mean range of two normal readings over their standard deviation. */
    private static final double D2 = 1.128;

    /**
     * Limits.
     *
     * @param centre mean of the baseline
     * @param lower lower limit of single readings
     * @param upper upper limit of single readings
     * @param averageLower lower limit of the averages
     * @param averageUpper upper limit of the averages
     */
    public record Limits(double centre, double lower, double upper, double averageLower, double averageUpper) {}

    public CheckChart {
        at = List.copyOf(at);
        shares = List.copyOf(shares);
        averages = List.copyOf(averages);
    }

    /**
     * Draws the charts of a book.
     *
     * @param book the book
     * @return one chart per standard that was read since the last calibration, in the order of the last check
     */
    public static List<CheckChart> of(RigBook book) {
        List<RigEntry.Checked> checks = sinceCalibration(book.entries());
        List<CheckChart> charts = new ArrayList<>();
        if (checks.isEmpty()) {
            return charts;
        }
        for (CheckReading newest : checks.get(checks.size() - 1).readings()) {
            List<Instant> at = new ArrayList<>();
            List<Double> shares = new ArrayList<>();
            for (RigEntry.Checked check : checks) {
                check.readings().stream()
                        .filter(r -> r.standardName().equals(newest.standardName()))
                        .findFirst()
                        .ifPresent(r -> {
                            at.add(check.at());
                            shares.add(r.meanShare());
                        });
            }
            charts.add(of(newest.standardName(), at, shares));
        }
        return charts;
    }

    private static List<RigEntry.Checked> sinceCalibration(List<RigEntry> entries) {
        List<RigEntry.Checked> checks = new ArrayList<>();
        for (RigEntry entry : entries) {
            if (entry instanceof RigEntry.Calibrated) {
                // Another calibration reads all standards a little otherwise.
                checks.clear();
            } else if (entry instanceof RigEntry.Checked check) {
                checks.add(check);
            }
        }
        return checks;
    }

    /**
     * Draws a chart.
     *
     * @param standardName standard
     * @param at times
     * @param shares readings in the order of time
     * @return the chart
     */
    public static CheckChart of(String standardName, List<Instant> at, List<Double> shares) {
        return of(standardName, at, shares, LEAST_DEVIATION);
    }

    /**
     * Draws a chart of any quantity.
     *
     * @param standardName what is charted
     * @param at times
     * @param shares readings in the order of time
     * @param leastDeviation standard deviation that is of no consequence, in the unit of the readings, greater than 0
     * @return the chart
     */
    static CheckChart of(String standardName, List<Instant> at, List<Double> shares, double leastDeviation) {
        if (shares.size() <= FEWEST) {
            return new CheckChart(standardName, at, shares, List.of(), Optional.empty());
        }
        double[] all = shares.stream().mapToDouble(Double::doubleValue).toArray();
        // The newest reading must not widen the limits it is held against.
        double[] baseline = java.util.Arrays.copyOf(all, Math.min(all.length - 1, BASELINE));
        IndividualsChart measured = IndividualsChart.of(baseline);
        IndividualsChart single =
                new IndividualsChart(measured.centre(), Math.max(measured.meanMovingRange(), leastDeviation * D2));
        EwmaChart moving = new EwmaChart(single.centre(), single.meanMovingRange() / D2, LAMBDA, WIDTH);
        List<Double> averages =
                java.util.Arrays.stream(moving.averages(all)).boxed().toList();
        Limits limits = new Limits(
                single.centre(), single.lowerLimit(), single.upperLimit(), moving.lowerLimit(), moving.upperLimit());
        return new CheckChart(standardName, at, shares, averages, Optional.of(limits));
    }

    /**
     * Whether a reading lies outside the limits of single readings.
     *
     * @param index reading from 0
     * @return true if so; false without limits
     */
    public boolean jumps(int index) {
        double share = shares.get(index);
        return limits.filter(l -> !(share >= l.lower() && share <= l.upper())).isPresent();
    }

    /**
     * Whether an average lies outside its limits.
     *
     * @param index reading from 0
     * @return true if so; false without limits
     */
    public boolean drifts(int index) {
        return limits.filter(l -> {
                    double average = averages.get(index);
                    return !(average >= l.averageLower() && average <= l.averageUpper());
                })
                .isPresent();
    }

    /**
     * Whether the newest reading or average is out of control.
     *
     * @return true if so
     */
    public boolean signalsNow() {
        int newest = shares.size() - 1;
        return newest >= 0 && (jumps(newest) || drifts(newest));
    }
}
