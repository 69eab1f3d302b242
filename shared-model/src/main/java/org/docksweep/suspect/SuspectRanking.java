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
    /** The first look uses every sixth point of the data, believed so much less. */
    private static final int FIRST_LOOK = 6;

    private static final double DOUBT = 5;
    /** Chi squared by which a hypothesis may lie behind the best in the first look. */
    private static final double CONCEIVABLE = 60;
    /** Quick fits use every third point of the data. */
    private static final int THINNED = 3;
    /** A hypothesis this far behind the best in logarithmic evidence after a quick fit is not fitted in full. */
    private static final double RACE = 14;
    /** But so many of the best are always fitted in full. */
    private static final int FITTED_AT_LEAST = 4;
    /** Suspects shown at most. */
    private static final int SHOWN_AT_MOST = 6;

    private final ModelBook book;
    private final CabinetModel model;
    private final TestPoint point;
    private final Knowledge knowledge;
    private final Priors priors;

    /**
     * Prepares the ranking for a test point with the usual priors.
     *
     * @param book models
     * @param model cabinet model
     * @param point test point with terminals
     * @param knowledge what is known of it
     */
    public SuspectRanking(ModelBook book, CabinetModel model, TestPoint point, Knowledge knowledge) {
        this(book, model, point, knowledge, Priors.USUAL);
    }

    /**
     * Prepares the ranking for a test point.
     *
     * @param book models
     * @param model cabinet model
     * @param point test point with terminals
     * @param knowledge what is known of it
     * @param priors what the house learned from its repairs
     */
    public SuspectRanking(ModelBook book, CabinetModel model, TestPoint point, Knowledge knowledge, Priors priors) {
        this.book = book;
        this.model = model;
        this.point = point;
        this.knowledge = knowledge;
        this.priors = priors;
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
        List<Hypothesis> hypotheses = priors.applied(model, HypothesisSet.of(model, point));
        Scored healthy =
                new Scored(hypotheses.get(0), CircuitFit.fit(knowledge.circuit(), data, knowledge.prior(), null));
        List<Scored> scored = new ArrayList<>(List.of(healthy));
        for (Contender contender : worthFitting(hypotheses, data, healthy.fit())) {
            scored.add(new Scored(contender.hypothesis(), fullFit(contender, data)));
        }
        double freedom = 2.0 * data.size();
        double best = scored.stream().mapToDouble(s -> s.fit().chi2()).min().orElseThrow();
        // When even the best explanation misfits, all data are believed less: no verdict from model error alone.
        double temper = Math.max(1, best / freedom);
        return posterior(scored, temper, best / freedom, data);
    }

    /** A fault with its circuit, prior, where its fit should start, and its score so far. */
    private record Contender(
            Hypothesis hypothesis, PointCircuit circuit, CircuitPrior prior, double[] start, double score) {}

    /** Faults that quick looks leave in the race. */
    private List<Contender> worthFitting(List<Hypothesis> hypotheses, CurveData data, CircuitFit.Result healthy) {
        CurveData thinned = data.thinned(THINNED);
        List<Contender> contenders = new ArrayList<>();
        for (Contender contender : conceivable(hypotheses, data)) {
            contenders.add(quickLook(contender, thinned, healthy));
        }
        contenders.sort(Comparator.comparingDouble(Contender::score).reversed());
        double best = Math.max(
                healthy.logEvidence() + StrictMath.log(hypotheses.get(0).weight()),
                contenders.get(0).score());
        List<Contender> kept = new ArrayList<>();
        for (Contender contender : contenders) {
            if (kept.size() < FITTED_AT_LEAST || contender.score() >= best - RACE) {
                kept.add(contender);
            }
        }
        return kept;
    }

    /** Drops changes of structure that could not explain the curve even if it were measured badly. */
    private List<Contender> conceivable(List<Hypothesis> hypotheses, CurveData data) {
        CurveData doubted = data.thinned(FIRST_LOOK).withSigmaScaled(DOUBT);
        List<Contender> all = new ArrayList<>();
        double least = Double.POSITIVE_INFINITY;
        for (Hypothesis hypothesis : hypotheses.subList(1, hypotheses.size())) {
            PointCircuit circuit = circuit(hypothesis);
            CircuitPrior prior = prior(hypothesis, circuit);
            double chi2 = circuit == knowledge.circuit() ? 0 : CircuitFit.chi2AfterOneStep(circuit, doubted, prior);
            least = circuit == knowledge.circuit() ? least : Math.min(least, chi2);
            all.add(new Contender(hypothesis, circuit, prior, null, -chi2));
        }
        double limit = least + CONCEIVABLE;
        return all.stream().filter(c -> -c.score() <= limit).toList();
    }

    private Contender quickLook(Contender contender, CurveData thinned, CircuitFit.Result healthy) {
        Hypothesis hypothesis = contender.hypothesis();
        double weight = StrictMath.log(hypothesis.weight());
        if (hypothesis.widenedParameter() != null) {
            int index = contender.circuit().indexOf(hypothesis.widenedParameter());
            double score = healthy.logEvidenceWith(
                    knowledge.prior(),
                    index,
                    contender.prior().mean()[index],
                    contender.prior().spread()[index]);
            return new Contender(hypothesis, contender.circuit(), contender.prior(), healthy.x(), score + weight);
        }
        CircuitFit.Result quick =
                CircuitFit.fit(contender.circuit(), thinned, contender.prior(), null, CircuitFit.Effort.QUICK);
        return new Contender(
                hypothesis, contender.circuit(), contender.prior(), quick.x(), quick.logEvidence() + weight);
    }

    private static CircuitFit.Result fullFit(Contender contender, CurveData data) {
        return CircuitFit.fit(contender.circuit(), data, contender.prior(), contender.start(), CircuitFit.Effort.NEAR);
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

    private Explanation posterior(List<Scored> scored, double temper, double reducedBest, CurveData data) {
        double[] log = new double[scored.size()];
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < log.length; i++) {
            CircuitFit.Result fit = scored.get(i).fit();
            log[i] = fit.logEvidence()
                    + 0.5 * fit.chi2() * (1 - 1 / temper)
                    + StrictMath.log(scored.get(i).hypothesis().weight());
            largest = Math.max(largest, log[i]);
        }
        double sum = 0;
        for (double l : log) {
            sum += StrictMath.exp(l - largest);
        }
        double healthy = StrictMath.exp(log[0] - largest) / sum;
        double faults = 1 - healthy;
        List<Suspect> suspects = new ArrayList<>();
        for (int i = 1; i < log.length; i++) {
            double among = StrictMath.exp(log[i] - largest) / sum / Math.max(faults, 1e-12);
            if (among >= SHOWN) {
                suspects.add(SuspectWords.suspect(
                        scored.get(i).hypothesis(),
                        model,
                        point,
                        rounded(among),
                        scored.get(i).fit()));
            }
        }
        suspects.replaceAll(suspect -> priors.informed(model, suspect));
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

    /** Four decimals: more is noise, and would differ with every change of the engine. */
    private static double rounded(double probability) {
        return Math.min(1, Math.rint(probability * 1e4) / 1e4);
    }

    /** Evidence of the whole model with the data fully believed: what other models are compared with. */
    private static double rawEvidence(List<Scored> scored) {
        double largest = Double.NEGATIVE_INFINITY;
        for (Scored s : scored) {
            largest = Math.max(
                    largest,
                    s.fit().logEvidence() + StrictMath.log(s.hypothesis().weight()));
        }
        return largest;
    }

    /** Normalisation of the data's likelihood, which differs between cabinet models. */
    private static double constant(CurveData data) {
        double sum = 0;
        for (double s : data.sigma()) {
            sum -= 2 * StrictMath.log(s);
        }
        return sum;
    }
}
