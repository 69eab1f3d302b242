package org.docksweep.suspect;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.docksweep.circuit.CircuitCompiler;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.CircuitFit;
import org.docksweep.circuit.CircuitPrior;
import org.docksweep.circuit.CurveData;
import org.docksweep.circuit.PointCircuit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Knowledge;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * Compares all hypotheses of a test point by their evidence: each circuit is fitted to the curve with its own free
 * severity, tolerances, temperature and contact; the posterior follows from evidence and prior weight.
 */
public final class SuspectRanking {
    /** Suspects less probable than this are not shown. */
    private static final double SHOWN = 0.01;
    /** Suspects shown at most. */
    private static final int SHOWN_AT_MOST = 6;

    private final ModelBook book;
    private final CabinetModel model;
    private final TestPoint point;
    private final Knowledge knowledge;

    /**
     * Prepares the ranking for a test point.
     *
     * @param book models
     * @param model cabinet model
     * @param point test point with terminals
     * @param knowledge what is known of it
     */
    public SuspectRanking(ModelBook book, CabinetModel model, TestPoint point, Knowledge knowledge) {
        this.book = book;
        this.model = model;
        this.point = point;
        this.knowledge = knowledge;
    }

    /**
     * How well the healthy circuit explains a curve; quick.
     *
     * @param curve calibrated impedance
     * @return logarithm of its evidence and its reduced chi squared
     */
    public Healthy healthy(ImpedanceCurve curve) {
        CurveData data = knowledge.dataOf(curve);
        CircuitFit.Result result = CircuitFit.fit(knowledge.circuit(), data, knowledge.prior(), null);
        return new Healthy(result.logEvidence() + constant(data), result.chi2() / (2.0 * data.size()));
    }

    /**
     * Fit of the healthy circuit.
     *
     * @param logEvidence logarithm of the evidence, comparable between cabinet models for one curve
     * @param reducedChi2 reduced chi squared
     */
    public record Healthy(double logEvidence, double reducedChi2) {}

    private record Scored(Hypothesis hypothesis, CircuitFit.Result fit) {}

    /**
     * Explains a curve.
     *
     * @param curve calibrated impedance
     * @return the explanation
     */
    public Explanation explain(ImpedanceCurve curve) {
        CurveData data = knowledge.dataOf(curve);
        List<Scored> scored = new ArrayList<>();
        double[] start = null;
        for (Hypothesis hypothesis : HypothesisSet.of(model, point)) {
            CircuitFit.Result fit = fit(hypothesis, data, start);
            if (hypothesis.kind() == null) {
                start = fit.x();
            }
            scored.add(new Scored(hypothesis, fit));
        }
        double freedom = 2.0 * data.size();
        double best = scored.stream().mapToDouble(s -> s.fit().chi2()).min().orElseThrow();
        // When even the best explanation misfits, all data are believed less: no verdict from model error alone.
        double temper = Math.max(1, best / freedom);
        return posterior(scored, temper, best / freedom, data);
    }

    private CircuitFit.Result fit(Hypothesis hypothesis, CurveData data, double[] healthyX) {
        boolean same = hypothesis.structure().equals(CircuitFault.NONE);
        PointCircuit circuit =
                same ? knowledge.circuit() : CircuitCompiler.compile(book, model, point, hypothesis.structure());
        CircuitPrior prior = knowledge.prior().extendedTo(circuit);
        if (hypothesis.widenedParameter() != null) {
            int index = circuit.indexOf(hypothesis.widenedParameter());
            prior = prior.with(index, prior.mean()[index] + hypothesis.shift(), hypothesis.spread());
        }
        CircuitFit.Result fromPrior = CircuitFit.fit(circuit, data, prior, null);
        if (healthyX == null || !same) {
            return fromPrior;
        }
        CircuitFit.Result fromHealthy = CircuitFit.fit(circuit, data, prior, healthyX);
        return fromHealthy.logEvidence() > fromPrior.logEvidence() ? fromHealthy : fromPrior;
    }

    private Explanation posterior(List<Scored> scored, double temper, double reducedBest, CurveData data) {
        double[] log = new double[scored.size()];
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < log.length; i++) {
            CircuitFit.Result fit = scored.get(i).fit();
            log[i] = fit.logEvidence()
                    + 0.5 * fit.chi2() * (1 - 1 / temper)
                    + Math.log(scored.get(i).hypothesis().weight());
            largest = Math.max(largest, log[i]);
        }
        double sum = 0;
        for (double l : log) {
            sum += Math.exp(l - largest);
        }
        double healthy = Math.exp(log[0] - largest) / sum;
        double faults = 1 - healthy;
        List<Suspect> suspects = new ArrayList<>();
        for (int i = 1; i < log.length; i++) {
            double among = Math.exp(log[i] - largest) / sum / Math.max(faults, 1e-12);
            if (among >= SHOWN) {
                suspects.add(SuspectWords.suspect(
                        scored.get(i).hypothesis(),
                        model,
                        point,
                        Math.min(1, among),
                        scored.get(i).fit()));
            }
        }
        suspects.sort(Comparator.comparingDouble(Suspect::probability).reversed());
        CircuitFit.Result healthyFit = scored.get(0).fit();
        return new Explanation(
                faults,
                reducedBest,
                healthyFit.chi2() / (2.0 * data.size()),
                rawEvidence(scored) + constant(data),
                suspects.subList(0, Math.min(SHOWN_AT_MOST, suspects.size())),
                healthyFit.x(),
                healthyFit.posteriorSpread());
    }

    /** Evidence of the whole model with the data fully believed: what other models are compared with. */
    private static double rawEvidence(List<Scored> scored) {
        double largest = Double.NEGATIVE_INFINITY;
        for (Scored s : scored) {
            largest = Math.max(
                    largest, s.fit().logEvidence() + Math.log(s.hypothesis().weight()));
        }
        return largest;
    }

    /** Normalisation of the data's likelihood, which differs between cabinet models. */
    private static double constant(CurveData data) {
        double sum = 0;
        for (double s : data.sigma()) {
            sum -= 2 * Math.log(s);
        }
        return sum;
    }
}
