package org.docksweep.gate;

import java.util.Random;
import org.docksweep.circuit.CircuitCompiler;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.CircuitParameter;
import org.docksweep.circuit.PointCircuit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.sweep.FrequencyGrid;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * Units drawn from the gate's own circuit with something it does not know on top: a smooth error of one per cent. Good
 * for behaviour; how good the gate is must be measured on cabinets of another make.
 */
public final class DrawnUnits {
    private static final double NOISE = 0.001;
    private static final double UNKNOWN = 0.01;

    private DrawnUnits() {}

    public static ImpedanceCurve draw(ModelBook book, CircuitFault fault, double severity, long seed) {
        CabinetModel model = book.cabinetModels().get(0);
        PointCircuit circuit =
                CircuitCompiler.compile(book, model, model.testPoints().get(0), fault);
        Random random = new Random(seed);
        double[] x = circuit.nominal();
        for (int i = 0; i < x.length; i++) {
            CircuitParameter parameter = circuit.parameters().get(i);
            x[i] += 0.7 * parameter.spread() * random.nextGaussian();
            if (parameter.id().startsWith("fault.") && severity > 0) {
                x[i] = Math.log(severity);
            }
        }
        double[] grid =
                FrequencyGrid.within(20, model.testPoints().get(0).levelMask().highestHz() * 0.95);
        double[] re = new double[grid.length];
        double[] im = new double[grid.length];
        double[] uncertainty = new double[grid.length];
        double phase = random.nextDouble() * 6;
        for (int i = 0; i < grid.length; i++) {
            double[] z = circuit.impedanceOhm(grid[i], x);
            double wobble = 1 + UNKNOWN * Math.sin(2.2 * Math.log(grid[i]) + phase);
            double magnitude = Math.hypot(z[0], z[1]);
            re[i] = z[0] * wobble + NOISE * magnitude * random.nextGaussian();
            im[i] = z[1] * wobble + NOISE * magnitude * random.nextGaussian();
            uncertainty[i] = NOISE * magnitude;
        }
        return new ImpedanceCurve(grid, re, im, uncertainty);
    }

    public static ReferenceTeacher.Unit unit(ModelBook book, CircuitFault fault, double severity, long seed) {
        return new ReferenceTeacher.Unit(draw(book, fault, severity, seed), null, 20.0);
    }
}
