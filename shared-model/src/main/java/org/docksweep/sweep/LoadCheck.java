package org.docksweep.sweep;

import java.util.Arrays;

/** What the terminals look like, and whether the channels carry what they claim. */
final class LoadCheck {
    /** A load is called open or shorted when so large a share of the points says so. */
    private static final double MOST = 0.9;

    /** Inductance of a long cable (0.5-0.7 uH/m, common practice, no source), in henry. */
    private static final double CABLE_H = 10e-6;

    /** Noise must leave an impedance of this size visible before its absence means anything, in ohm. */
    private static final double VISIBLE_OHM = 200;

    private static final double INDUCTIVE_SHARE = 0.7;

    /** Exchanged channels turn a coil, and the rise of every resonance, capacitive: an octave of ten at the least. */
    private static final double CAPACITIVE_SHARE = 0.08;

    private final ImpedanceEstimate estimate;
    private final AnalysisSettings settings;
    private final double scaleRatioOhm;

    /**
     * Makes the check.
     *
     * @param estimate impedance
     * @param scaleRatioOhm volts per full scale over amperes per full scale, in ohm
     * @param settings limits
     */
    LoadCheck(ImpedanceEstimate estimate, double scaleRatioOhm, AnalysisSettings settings) {
        this.estimate = estimate;
        this.scaleRatioOhm = scaleRatioOhm;
        this.settings = settings;
    }

    SweepAnalysis.Load load() {
        int open = 0;
        int blind = 0;
        int shorted = 0;
        int points = estimate.frequencyHz.length;
        for (int p = 0; p < points; p++) {
            double voltage = estimate.voltageGain[p];
            double currentFloor = 3 * Math.sqrt(2) * estimate.currentGainUncertainty[p];
            boolean visible = voltage / VISIBLE_OHM > currentFloor;
            if (!visible && estimate.currentGain[p] < currentFloor) {
                blind++;
            } else if (estimate.currentGain[p] < Math.max(currentFloor, voltage / settings.openOhm())) {
                open++;
            }
            double cableOhm = 2 * Math.PI * estimate.frequencyHz[p] * CABLE_H;
            if (Math.abs(estimate.resistanceOhm[p]) < settings.shortOhm()
                    && Math.abs(estimate.reactanceOhm[p]) < settings.shortOhm() + cableOhm) {
                shorted++;
            }
        }
        if (blind > points / 2) {
            return SweepAnalysis.Load.UNKNOWN;
        }
        if (open >= MOST * (points - blind)) {
            return SweepAnalysis.Load.OPEN;
        }
        return shorted >= MOST * points ? SweepAnalysis.Load.SHORT : SweepAnalysis.Load.PRESENT;
    }

    /**
     * Whether voltage and current are exchanged: the channel called current then follows the drive evenly and at the
     * level the voltage should have, while the one called voltage has the shape of a load's admittance, or its level.
     * What reads as 1/Z of a load does not look like a coil at the top of the band; a shorted driver does.
     */
    boolean swapped() {
        double[] current = logs(estimate.currentGain);
        double[] voltage = logs(estimate.voltageGain);
        if (inductiveAbove()) {
            // Exchanged channels show 1/Z: a coil's rise becomes a fall. A short with its cable rises as well.
            return false;
        }
        double asVoltage = median(current) + StrictMath.log(scaleRatioOhm);
        boolean currentIsDrive = spread(current) < StrictMath.log(1.3) && Math.abs(asVoltage) < StrictMath.log(1.6);
        boolean voltageIsShaped = spread(voltage) > 2 * spread(current) + StrictMath.log(1.1);
        boolean voltageIsOff = Math.abs(median(voltage)) > StrictMath.log(1.6);
        return currentIsDrive
                && (voltageIsShaped || voltageIsOff)
                && shareAtTheTop(1) < 0.5
                && (load() != SweepAnalysis.Load.SHORT
                        || shareAtTheTop(-1) > 0.5
                        || capacitiveShare() > CAPACITIVE_SHARE);
    }

    /** Share of the points that are capacitive beyond doubt, which a short behind a cable never is anywhere. */
    private double capacitiveShare() {
        int points = estimate.frequencyHz.length;
        int count = 0;
        for (int p = 0; p < points; p++) {
            double limit = 0.2 * estimate.magnitudeOhm(p) + 5 * estimate.standardUncertaintyOhm[p];
            if (estimate.reactanceOhm[p] < -limit) {
                count++;
            }
        }
        return count / (double) points;
    }

    /** Share of the upper quarter of the points whose reactance has a sign and a tenth of the magnitude. */
    private double shareAtTheTop(int sign) {
        int points = estimate.frequencyHz.length;
        int top = Math.max(1, points / 4);
        int count = 0;
        for (int p = points - top; p < points; p++) {
            if (sign * estimate.reactanceOhm[p] > 0.1 * estimate.magnitudeOhm(p)) {
                count++;
            }
        }
        return count / (double) top;
    }

    /** Whether the upper half of the band looks inductive, as every coil and every cable does. */
    private boolean inductiveAbove() {
        int points = estimate.frequencyHz.length;
        int inductive = 0;
        for (int p = points / 2; p < points; p++) {
            if (estimate.reactanceOhm[p] > 0.02 * estimate.magnitudeOhm(p)) {
                inductive++;
            }
        }
        return inductive > INDUCTIVE_SHARE * (points - points / 2);
    }

    /** Share of the asked voltage that arrives: the best tenth of the points, since a low impedance loads the source. */
    double arrivingShare() {
        double[] sorted = estimate.voltageGain.clone();
        Arrays.sort(sorted);
        return sorted[(int) (0.9 * (sorted.length - 1))];
    }

    boolean notPassive() {
        int count = 0;
        for (int p = 0; p < estimate.frequencyHz.length; p++) {
            double limit = 3 * estimate.standardUncertaintyOhm[p] + 0.03 * estimate.magnitudeOhm(p);
            if (estimate.resistanceOhm[p] < -limit) {
                count++;
            }
        }
        return count > estimate.frequencyHz.length / 20;
    }

    boolean tooNoisy() {
        int count = 0;
        for (int p = 0; p < estimate.frequencyHz.length; p++) {
            if (estimate.standardUncertaintyOhm[p] > settings.noiseLimit() * estimate.magnitudeOhm(p)) {
                count++;
            }
        }
        return count > estimate.frequencyHz.length / 4;
    }

    private static double[] logs(double[] values) {
        return Arrays.stream(values)
                .map(x -> StrictMath.log(Math.max(1e-12, x)))
                .toArray();
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    /** Distance between the points a tenth from both ends. */
    private static double spread(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[(int) (0.9 * (sorted.length - 1))] - sorted[(int) (0.1 * (sorted.length - 1))];
    }
}
