package org.docksweep.kiosk.proving;

import java.util.List;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * Two plain gates for comparison, taught from the same known-good units at one test point: a meter for DC resistance with
 * a limit of 9 %, and a mask of 3.5 dB around the mean impedance magnitude. Both get the same cabinets at the same
 * temperatures; the meter has no error of its own.
 *
 * @param meterOhm median DC resistance of the good units
 * @param frequencyHz grid of the mask
 * @param meanLogOhm mean of ln|Z| of the good units
 */
record PlainGates(double meterOhm, double[] frequencyHz, double[] meanLogOhm) {
    private static final double METER_LIMIT = 0.09;
    private static final double MASK_LIMIT_LOG = 3.5 * Math.log(10) / 20;
    /** Slow enough for every coil to be a short and every capacitor an open. */
    private static final double[] NEARLY_DC_HZ = {0.01};

    static double meterOhm(ProvingGround ground, ProvingUnit unit, String testPointCode) {
        return ground.impedanceOhm(unit, testPointCode, NEARLY_DC_HZ)[0][0];
    }

    static PlainGates of(List<Double> meterOhm, List<Measured> good) {
        double[] sorted =
                meterOhm.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double[] grid = good.get(0).impedance().frequencyHz();
        double[] mean = new double[grid.length];
        for (Measured unit : good) {
            double[] log = logOhm(unit.impedance());
            for (int i = 0; i < mean.length; i++) {
                mean[i] += log[i] / good.size();
            }
        }
        return new PlainGates(sorted[sorted.length / 2], grid, mean);
    }

    boolean meterFails(double ohm) {
        return !(Math.abs(ohm / meterOhm - 1) <= METER_LIMIT);
    }

    /** Whether a curve leaves the mask anywhere on its grid; a curve on another grid is another cabinet's, and does. */
    boolean maskFails(ImpedanceCurve curve) {
        double[] log = logOhm(curve);
        if (!java.util.Arrays.equals(curve.frequencyHz(), frequencyHz)) {
            return true;
        }
        for (int i = 0; i < log.length; i++) {
            if (!(Math.abs(log[i] - meanLogOhm[i]) <= MASK_LIMIT_LOG)) {
                return true;
            }
        }
        return false;
    }

    private static double[] logOhm(ImpedanceCurve curve) {
        double[] log = new double[curve.frequencyHz().length];
        for (int i = 0; i < log.length; i++) {
            log[i] = Math.log(Math.hypot(curve.resistanceOhm()[i], curve.reactanceOhm()[i]));
        }
        return log;
    }
}
