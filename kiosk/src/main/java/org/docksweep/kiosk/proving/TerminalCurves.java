package org.docksweep.kiosk.proving;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.TestPoint;

/** What all terminals of a model show of a unit, from the simulator's own solver: ln|Z| and phase in turn, point by point. */
final class TerminalCurves {
    private static final double HIGHEST_HZ = 20_000;

    private final ProvingGround ground;
    private final CabinetModel model;
    private final int pointsPerOctave;

    /**
     * Prepares the curves of a model.
     *
     * @param ground simulator
     * @param model a model whose test points have terminals
     * @param pointsPerOctave frequencies per octave
     */
    TerminalCurves(ProvingGround ground, CabinetModel model, int pointsPerOctave) {
        this.ground = ground;
        this.model = model;
        this.pointsPerOctave = pointsPerOctave;
    }

    /**
     * The curves of a unit.
     *
     * @param unit unit of the model
     * @param contactOhm resistance of the plug at a test point
     * @return ln|Z| and phase in turn, at all test points
     */
    double[] logs(ProvingUnit unit, ToDoubleFunction<TestPoint> contactOhm) {
        List<double[]> parts = new ArrayList<>();
        int length = 0;
        for (TestPoint point : model.testPoints()) {
            double[] grid = grid(point);
            double[][] ohm = ground.impedanceOhm(unit, point.code(), grid);
            double contact = contactOhm.applyAsDouble(point);
            double[] logs = new double[2 * grid.length];
            for (int i = 0; i < grid.length; i++) {
                double real = ohm[0][i] + contact;
                logs[2 * i] = Math.log(Math.hypot(real, ohm[1][i]));
                logs[2 * i + 1] = Math.atan2(ohm[1][i], real);
            }
            parts.add(logs);
            length += logs.length;
        }
        double[] all = new double[length];
        int at = 0;
        for (double[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }

    /** Difference of two entries at a place of the curves; every second entry is a phase. */
    static double difference(double a, double b, int place) {
        return place % 2 == 1 ? Math.IEEEremainder(a - b, 2 * Math.PI) : a - b;
    }

    private double[] grid(TestPoint point) {
        double low = point.levelMask().lowestHz();
        double high = Math.min(HIGHEST_HZ, point.levelMask().highestHz());
        int count = (int) (pointsPerOctave * Math.log(high / low) / Math.log(2));
        double[] grid = new double[count];
        for (int i = 0; i < count; i++) {
            grid[i] = low * Math.pow(high / low, i / (count - 1.0));
        }
        return grid;
    }
}
