package org.docksweep.gate;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.circuit.CircuitCompiler;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.PointCircuit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.FrequencyGrid;

/**
 * The lowest impedance magnitude in the rated range must not fall below 80 % of the rated impedance (IEC
 * 60268-5:2003+A1:2007, clause 16.1; equality passes). It rates the type at its reference temperature: used as a warning
 * when a model is registered, never to fail a unit, since healthy cold units fall below it.
 */
public final class RatedImpedanceRule {
    /** Share of the rated impedance that the lowest magnitude must reach. */
    public static final double LOWEST_SHARE = 0.8;

    private RatedImpedanceRule() {}

    /**
     * A test point that breaks the rule.
     *
     * @param testPointCode test point
     * @param lowestOhm lowest magnitude by the model's nominal values
     * @param frequencyHz where it is
     * @param allowedOhm lowest magnitude allowed
     */
    public record Warning(String testPointCode, double lowestOhm, double frequencyHz, double allowedOhm) {}

    /**
     * Whether a lowest magnitude keeps the rule.
     *
     * @param lowestOhm lowest magnitude in the rated range
     * @param ratedImpedanceOhm rated impedance
     * @return true when it is at least 80 %
     */
    public static boolean keeps(double lowestOhm, double ratedImpedanceOhm) {
        return lowestOhm >= LOWEST_SHARE * ratedImpedanceOhm;
    }

    /**
     * Checks a model by its nominal circuit over the band of each test point.
     *
     * @param book models
     * @param model cabinet model
     * @return one warning per test point that breaks the rule
     */
    public static List<Warning> warnings(ModelBook book, CabinetModel model) {
        List<Warning> warnings = new ArrayList<>();
        for (TestPoint point : model.testPoints()) {
            if (point.kind() == TestPointKind.LINE_INPUT) {
                continue;
            }
            Warning lowest = lowest(book, model, point);
            if (!keeps(lowest.lowestOhm(), point.ratedImpedanceOhm())) {
                warnings.add(lowest);
            }
        }
        return warnings;
    }

    private static Warning lowest(ModelBook book, CabinetModel model, TestPoint point) {
        PointCircuit circuit = CircuitCompiler.compile(book, model, point, CircuitFault.NONE);
        double[] x = circuit.nominal();
        double lowestOhm = Double.POSITIVE_INFINITY;
        double atHz = 0;
        for (double hz : FrequencyGrid.within(
                point.levelMask().lowestHz(), point.levelMask().highestHz())) {
            double[] z = circuit.impedanceOhm(hz, x);
            double magnitude = Math.hypot(z[0], z[1]);
            if (magnitude < lowestOhm) {
                lowestOhm = magnitude;
                atHz = hz;
            }
        }
        return new Warning(point.code(), lowestOhm, atHz, LOWEST_SHARE * point.ratedImpedanceOhm());
    }
}
