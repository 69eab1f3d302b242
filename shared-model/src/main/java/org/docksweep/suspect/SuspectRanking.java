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
    /** Quick fits use every third point of the data. */
    private static final int THINNED = 3;
    /** A hypothesis this far behind the best in logarithmic evidence after a quick fit is not fitted in full. */
    private static final double RACE = 25;
    /** But so many of the best are always fitted in full. */
    private static final int FITTED_AT_LEAST = 4;
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
        List<Hypothesis> hypotheses = HypothesisSet.of(model, point);
        Scored healthy =
                new Scored(hypotheses.get(0), CircuitFit.fit(knowledge.circuit(), data, knowledge.prior(), null));
        List<Scored> scored = new ArrayList<>(List.of(healthy));
        for (Hypothesis hypothesis : worthFitting(hypotheses, data, healthy.fit())) {
            scored.add(new Scored(
                    hypothesis, fullFit(hypothesis, data, healthy.fit().x())));
        }
        double freedom = 2.0 * data.size();
        double best = scored.stream().mapToDouble(s -> s.fit().chi2()).min().orElseThrow();
        // When even the best explanation misfits, all data are believed less: no verdict from model error alone.
        double temper = Math.max(1, best / freedom);
        return posterior(scored, temper, best / freedom, data);
    }

    /** Faults that a quick fit on a thinned curve leaves in the race. */
    private List<Hypothesis> worthFitting(List<Hypothesis> hypotheses, CurveData data, CircuitFit.Result healthy) {
        CurveData thinned = data.thinned(THINNED);
        double[] score = new double[hypotheses.size()];
        double best = healthy.logEvidence() + Math.log(hypotheses.get(0).weight());
        for (int i = 1; i < score.length; i++) {
            Hypothesis hypothesis = hypotheses.get(i);
            PointCircuit circuit = circuit(hypothesis);
            double[] start = circuit == knowledge.circuit() ? healthy.x() : null;
            score[i] = CircuitFit.fit(circuit, thinned, prior(hypothesis, circuit), start, CircuitFit.Effort.QUICK)
                            .logEvidence()
                    + Math.log(hypothesis.weight());
            best = Math.max(best, score[i]);
        }
        double[] order = score.clone();
        java.util.Arrays.sort(order, 1, order.length);
        double fewest = order[Math.max(1, order.length - FITTED_AT_LEAST)];
        List<Hypothesis> kept = new ArrayList<>();
        for (int i = 1; i < score.length; i++) {
            if (score[i] >= Math.min(best - RACE, fewest)) {
                kept.add(hypotheses.get(i));
            }
        }
        return kept;
    }

    private PointCircuit circuit(Hypothesis hypothesis) {
        return hypothesis.structure().equals(CircuitFault.NONE)
                ? knowledge.circuit()
                : CircuitCompiler.compile(book, model, point, hypothesis.structure());
    }

    private CircuitPrior prior(Hypothesis hypothesis, PointCircuit circuit) {
        CircuitPrior prior = knowledge.prior().extendedTo(circuit);
        if (hypothesis.widenedParameter() == null) {
            return prior;
        }
        int index = circuit.indexOf(hypothesis.widenedParameter());
        return prior.with(index, prior.mean()[index] + hypothesis.shift(), hypothesis.spread());
    }

    private CircuitFit.Result fullFit(Hypothesis hypothesis, CurveData data, double[] healthyX) {
        PointCircuit circuit = circuit(hypothesis);
        CircuitPrior prior = prior(hypothesis, circuit);
        CircuitFit.Result fromPrior = CircuitFit.fit(circuit, data, prior, null);
        if (circuit != knowledge.circuit()) {
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
