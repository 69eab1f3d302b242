package org.docksweep.gate;

import java.util.List;
import org.docksweep.circuit.CircuitCompiler;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.CircuitFit;
import org.docksweep.circuit.CircuitParameter;
import org.docksweep.circuit.CircuitPrior;
import org.docksweep.circuit.CurveData;
import org.docksweep.circuit.ModelOffsets;
import org.docksweep.circuit.PointCircuit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.rigcal.RigRepeatability;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * What is known of a test point before the sweep: what its circuit's parameters should be, how far healthy ones stray,
 * and what the circuit model is known to miss. Comes from the model's data sheet values, better from known-good units,
 * best from the cabinet's own last good curve.
 *
 * @param circuit healthy circuit
 * @param prior prior of its parameters
 * @param offsets what the model misses
 * @param ofThisCabinet whether the cabinet's own last good curve is in it, or its model alone
 */
public record Knowledge(PointCircuit circuit, CircuitPrior prior, ModelOffsets offsets, boolean ofThisCabinet) {
    /** Relative error of an untaught circuit model, smooth over frequency; common practice, no source. */
    static final double UNTAUGHT_SIGMA = 0.03;
    /** The same from point to point. */
    static final double UNTAUGHT_GRAIN = 0.002;
    /** What a taught model leaves from point to point. */
    static final double TAUGHT_GRAIN = 0.0003;
    /** Takes every third of the 24 points per octave: neighbours share their model error. */
    static final int EVERY_NTH = 3;
    /** What two sweeps of one healthy cabinet differ in beyond drift of its parameters, smooth over frequency. */
    private static final double BASELINE_SIGMA = 0.0008;
    /** What the gate holds of every rig, relative standard deviation of |Z| of a comparison: part of the above. */
    public static final double RIG_SHARE = BASELINE_SIGMA;
    /** To that comes this share of what units of the model differ in: where the circuit explains units badly, it explains changes badly. */
    private static final double BASELINE_SHARE = 0.15;
    /** The same from point to point. */
    private static final double BASELINE_GRAIN = 0.0003;
    /** Body of a cabinet against the air around the dock: trucks are cold, halls are not. */
    private static final double CLIMATE_SPREAD_KELVIN = 6;

    private static final double REFERENCE_CELSIUS = 20;
    /** Only a number above 0: nothing is fitted to such data. */
    static final double MEASURED_GRAIN = 1e-3;

    private static final double APART = 0.3;
    /** Spread of what may not move. */
    private static final double PINNED = 1e-6;
    /** Relative uncertainty of a good sweep. */
    private static final double EXPECTED_UNCERTAINTY = 3e-4;

    /**
     * Knowledge of the model alone; parameters as above.
     *
     * @param circuit healthy circuit
     * @param prior prior of its parameters
     * @param offsets what the model misses
     */
    public Knowledge(PointCircuit circuit, CircuitPrior prior, ModelOffsets offsets) {
        this(circuit, prior, offsets, false);
    }

    /**
     * Knowledge from nominal values alone.
     *
     * @param book models
     * @param model cabinet model
     * @param point test point with terminals
     * @return knowledge
     */
    public static Knowledge nominal(ModelBook book, CabinetModel model, TestPoint point) {
        PointCircuit circuit = CircuitCompiler.compile(book, model, point, CircuitFault.NONE);
        return new Knowledge(
                circuit, CircuitPrior.nominal(circuit.parameters()), ModelOffsets.none(UNTAUGHT_SIGMA, UNTAUGHT_GRAIN));
    }

    /**
     * Adds what known-good units taught.
     *
     * @param reference reference of the same model and test point, of today or of an older judge; one whose parameters do not match the circuit (the
     *     model was changed since) is refused
     * @return knowledge
     * @throws IllegalArgumentException if the reference belongs to another version of the model
     */
    public Knowledge taughtBy(PointReference reference) {
        PointReference.Taught taught =
                reference.taught() == null ? null : OlderTerms.translated(reference.taught(), circuit.parameters());
        List<String> ids =
                circuit.parameters().stream().map(CircuitParameter::id).toList();
        if (taught == null || !taught.parameterIds().equals(ids)) {
            throw new IllegalArgumentException("the reference of " + reference.cabinetModelCode() + " "
                    + reference.testPointCode() + " was taught for another version of the model; teach it again");
        }
        return new Knowledge(
                circuit,
                new CircuitPrior(taught.mean(), taught.spread()),
                new ModelOffsets(
                        reference.frequencyHz(),
                        taught.offsetLog(),
                        taught.offsetPhaseRad(),
                        taught.offsetSigma(),
                        UNTAUGHT_SIGMA,
                        TAUGHT_GRAIN,
                        0));
    }

    /**
     * Adds what a thermometer says.
     *
     * @param ambientCelsius air temperature at the dock, or null when nobody looked
     * @return knowledge of a cabinet whose body is about as warm
     */
    public Knowledge at(Double ambientCelsius) {
        return ambientCelsius == null
                ? this
                : new Knowledge(
                        circuit,
                        prior.with(
                                circuit.indexOf("climate"), ambientCelsius - REFERENCE_CELSIUS, CLIMATE_SPREAD_KELVIN),
                        offsets,
                        ofThisCabinet);
    }

    /**
     * Adds the cabinet's own last good curve: its parameters become the means, only drift is left as spread.
     *
     * @param baseline baseline with an impedance curve
     * @return knowledge
     */
    public Knowledge sharpenedBy(Baseline baseline) {
        CurveData data = dataOf(baseline.impedance());
        double[] x = CircuitFit.fit(circuit, data, at(baseline.ambientCelsius()).prior, start())
                .x();
        double[] mean = x.clone();
        double[] spread = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            CircuitParameter parameter = circuit.parameters().get(i);
            if (!Drift.belongsToTheCabinet(parameter.id())) {
                mean[i] = prior.mean()[i];
            }
            spread[i] = Math.min(prior.spread()[i], Drift.of(parameter.id()));
        }
        return new Knowledge(circuit, new CircuitPrior(mean, spread), residuals(baseline, x), true);
    }

    private ModelOffsets residuals(Baseline baseline, double[] x) {
        CurveData all = CurveData.of(baseline.impedance(), ModelOffsets.none(0, MEASURED_GRAIN), 1);
        double[][] fitted = CircuitFit.predict(circuit, all.frequencyHz(), x);
        double[] log = new double[all.size()];
        double[] phase = new double[all.size()];
        double[] sigma = new double[all.size()];
        double[] strays = offsets.sigmaAt(all.frequencyHz());
        for (int i = 0; i < log.length; i++) {
            log[i] = all.logOhm()[i] - fitted[0][i];
            phase[i] = Math.IEEEremainder(all.phaseRad()[i] - fitted[1][i], 2 * Math.PI);
            sigma[i] = BASELINE_SHARE * strays[i];
        }
        return new ModelOffsets(all.frequencyHz(), log, phase, sigma, UNTAUGHT_SIGMA, BASELINE_GRAIN, BASELINE_SIGMA);
    }

    /**
     * Adds how the rig repeats itself. Only what goes beyond {@link #RIG_SHARE} and the contact's own spread widens anything; a
     * better rig narrows nothing, since both hold what cabinets and plugs do as well.
     *
     * @param rig what its study found
     * @param sweeps sweeps that are compared: 1 against a reference, 2 against a baseline
     * @return knowledge; this one when nothing is widened
     */
    public Knowledge onRig(RigRepeatability rig, int sweeps) {
        double share = rig.impedanceOf(sweeps);
        double contactOhm = rig.contactOf(sweeps);
        int contact = circuit.indexOf("contact");
        Knowledge wider = this;
        if (share > RIG_SHARE) {
            double beyond = StrictMath.sqrt(share * share - RIG_SHARE * RIG_SHARE);
            wider = new Knowledge(circuit, prior, offsets.widenedBy(beyond), ofThisCabinet);
        }
        return contactOhm > prior.spread()[contact]
                ? new Knowledge(
                        circuit, prior.with(contact, prior.mean()[contact], contactOhm), wider.offsets, ofThisCabinet)
                : wider;
    }

    /**
     * Knowledge for a fit that measures and not decides: values hold for the moment, and creep and friction are that fit's own
     * matter.
     *
     * @return knowledge with body temperature, creep and friction pinned to 0
     */
    Knowledge forMeasuring() {
        CircuitPrior fixed = prior;
        for (int i = 0; i < prior.mean().length; i++) {
            if (isPinned(i)) {
                fixed = fixed.with(i, 0, PINNED);
            }
        }
        return new Knowledge(circuit, fixed, offsets, ofThisCabinet);
    }

    /** A parameter vector with the same pinned to 0. */
    double[] pinned(double[] x) {
        double[] fixed = x.clone();
        for (int i = 0; i < fixed.length; i++) {
            fixed[i] = isPinned(i) ? 0 : fixed[i];
        }
        return fixed;
    }

    private boolean isPinned(int index) {
        String id = circuit.parameters().get(index).id();
        return id.equals("climate") || id.endsWith(".creep") || id.endsWith(".friction");
    }

    /**
     * The curve of a unit with the mean parameters.
     *
     * @return curve on the grid of what was taught
     * @throws IllegalStateException if nothing was taught
     */
    public ImpedanceCurve expectedCurve() {
        double[] grid = offsets.frequencyHz();
        if (grid.length == 0) {
            throw new IllegalStateException("no reference was taught, so no curve can be expected");
        }
        double[][] fitted = CircuitFit.predict(circuit, grid, prior.mean());
        double[] re = new double[grid.length];
        double[] im = new double[grid.length];
        double[] uncertainty = new double[grid.length];
        for (int i = 0; i < grid.length; i++) {
            double magnitude = StrictMath.exp(fitted[0][i] + offsets.logOhm()[i]);
            double phase = fitted[1][i] + offsets.phaseRad()[i];
            re[i] = magnitude * StrictMath.cos(phase);
            im[i] = magnitude * StrictMath.sin(phase);
            uncertainty[i] = EXPECTED_UNCERTAINTY * magnitude;
        }
        return new ImpedanceCurve(grid, re, im, uncertainty);
    }

    /**
     * Where a fit starts: at the prior means, but equal drivers a little apart, or the fit would keep them equal for ever.
     *
     * @return parameter vector
     */
    public double[] start() {
        double[] x = prior.mean();
        double[] spread = prior.spread();
        int sign = 1;
        for (int i = 0; i < x.length; i++) {
            if (circuit.parameters().get(i).id().endsWith(".fs")) {
                x[i] += sign * APART * spread[i];
                sign = -sign;
            }
        }
        return x;
    }

    /**
     * Prepares a calibrated curve for fits with this knowledge.
     *
     * @param curve calibrated impedance
     * @return data
     */
    public CurveData dataOf(ImpedanceCurve curve) {
        return CurveData.of(curve, offsets, EVERY_NTH);
    }
}
