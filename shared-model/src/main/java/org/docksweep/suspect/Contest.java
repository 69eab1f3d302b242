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
import org.docksweep.circuit.ScoreTest;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Knowledge;

/**
 * The race of a point's hypotheses for one curve. Healthy is fitted first. Faults that grow from nothing are weighed by a score
 * test at its optimum, values off by a change of their prior, changes of structure by one step on few points; only those that
 * could win, or take a noticeable share of the probability, are fitted.
 *
 * <p>A reference knows the healthy circuit's error to a tenth of a per cent, and nobody knows a broken one's so well. Where healthy is
 * untenable, all are therefore compared on data believed less where the curve deviates: which fault it is, is read off large
 * features then.
 */
final class Contest {
    /** The first look at a change of structure uses every fifth point of the data, believed so much less. */
    private static final int FIRST_LOOK = 5;

    private static final double DOUBT = 5;
    /** Chi squared by which a change of structure may lie behind the best in the first look. */
    private static final double CONCEIVABLE = 40;
    /** Slopes by severity are taken so close to none, as a share of the usual severity: resonances soon bend. */
    static final double SLOPE_STEP = 0.02;
    /** Where healthy is untenable, every second point of the data says enough. */
    private static final int THINNED = 2;
    /** A hypothesis this far behind the best in logarithmic evidence is not fitted in full; its score stands. */
    private static final double RACE = 5;
    /** Scores mean less where healthy is untenable. */
    private static final double DOUBTED_RACE = 20;
    /** Where healthy is untenable, all circuits are believed to this share of what the curve deviates by, no better. */
    private static final double CHANGED_CIRCUIT_ERROR = 0.03;
    /**
     * What nobody thought of may stray by this many standard deviations. Half of it could be a spread that is wrong: a handful of units does
     * not tell it better than to a factor of two.
     */
    private static final double UNKNOWN_FACTOR = 8;
    /**
     * A healthy fit that moved a parameter by so many of its spreads may be another answer than any near the means. What is weighed at such
     * an optimum says little: a part that is off is not missed there if, say, a capacitor's losses took its place.
     */
    private static final double STRAYS = 3.5;
    /** So many are fitted in full at most, the best first. */
    private static final int FITTED_AT_MOST = 8;

    private final ModelBook book;
    private final CabinetModel model;
    private final TestPoint point;
    private final Knowledge knowledge;
    private final CurveData data;
    private final CurveData sharpData;
    private final CircuitFit.Result sharp;
    private final CircuitFit.Result healthy;
    private final double logUnknown;
    private final List<Entry> entries = new ArrayList<>();

    /**
     * A hypothesis in the race.
     *
     * @param hypothesis the hypothesis
     * @param circuit its circuit
     * @param prior prior of all parameters
     * @param start where a fit starts
     * @param logEvidence logarithm of its evidence so far, on the scale of fits to all data
     * @param fit its fit to all data, or null when it was not worth one
     */
    record Entry(
            Hypothesis hypothesis,
            PointCircuit circuit,
            CircuitPrior prior,
            double[] start,
            double logEvidence,
            CircuitFit.Result fit) {
        double score() {
            return logEvidence + StrictMath.log(hypothesis.weight());
        }

        Entry with(double[] newStart, double newLogEvidence, CircuitFit.Result newFit) {
            return new Entry(hypothesis, circuit, prior, newStart, newLogEvidence, newFit);
        }
    }

    Contest(ModelBook book, CabinetModel model, TestPoint point, Knowledge knowledge, CurveData data) {
        this.book = book;
        this.model = model;
        this.point = point;
        this.knowledge = knowledge;
        this.sharpData = data;
        this.sharp = CircuitFit.fit(knowledge.circuit(), data, knowledge.prior(), knowledge.start());
        this.logUnknown = logUnknownAgainstHealthy(sharp, data);
        if (logUnknown < 0) {
            this.data = data;
            this.healthy = sharp;
        } else {
            CurveData few = data.thinned(THINNED);
            this.data = few.doubtedWhere(deviation(few), CHANGED_CIRCUIT_ERROR);
            this.healthy = CircuitFit.fit(knowledge.circuit(), this.data, knowledge.prior(), knowledge.start());
        }
    }

    /**
     * "None of these" against healthy, logarithm: an explanation that may stray by {@link #UNKNOWN_FACTOR} times the standard
     * deviations of everything, and pays for that freedom at every point.
     */
    private static double logUnknownAgainstHealthy(CircuitFit.Result healthy, CurveData data) {
        double wide = UNKNOWN_FACTOR * UNKNOWN_FACTOR;
        return 0.5 * healthy.chi2() * (1 - 1 / wide)
                - data.size() * StrictMath.log(wide)
                + StrictMath.log(HypothesisSet.UNKNOWN / HypothesisSet.HEALTHY);
    }

    /** How far ln Z is from what was expected, point by point. */
    private double[] deviation(CurveData curve) {
        double[][] expected = CircuitFit.predict(
                knowledge.circuit(), curve.frequencyHz(), knowledge.prior().mean());
        double[] deviation = new double[curve.size()];
        for (int i = 0; i < deviation.length; i++) {
            deviation[i] = Math.hypot(
                    curve.logOhm()[i] - expected[0][i],
                    Math.IEEEremainder(curve.phaseRad()[i] - expected[1][i], 2 * Math.PI));
        }
        return deviation;
    }

    /** Reduced chi squared of healthy on data believed fully. */
    double sharpReducedChi2() {
        return sharp.chi2() / (2.0 * sharpData.size());
    }

    /** ln of how much better "none of these" is than healthy, priors included. */
    double logUnknown() {
        return logUnknown;
    }

    /**
     * Evidence of the best explanation on all data, comparable between cabinet models: believed fully, or as far as the circuit
     * of a broken cabinet deserves, whichever is more. Else a fault whose circuit is known to a few per cent only would lose
     * against whatever happens to look like it.
     *
     * @param entries entries of the race
     * @return logarithm
     */
    double comparableLogEvidence(List<Entry> entries) {
        Entry best = entries.stream()
                .filter(e -> e.fit() != null)
                .max(Comparator.comparingDouble(Entry::score))
                .orElseThrow();
        double log = logEvidence(best, sharpData);
        if (logUnknown >= 0) {
            log = Math.max(log, logEvidence(best, sharpData.doubtedWhere(deviation(sharpData), CHANGED_CIRCUIT_ERROR)));
        }
        return log + StrictMath.log(best.hypothesis().weight());
    }

    private static double logEvidence(Entry entry, CurveData curve) {
        return CircuitFit.fit(entry.circuit(), curve, entry.prior(), entry.fit().x(), CircuitFit.Effort.NONE)
                        .logEvidence()
                + curve.logNormalisation();
    }

    /** The data all hypotheses were compared on. */
    CurveData data() {
        return data;
    }

    /** The whole curve, believed fully. */
    CurveData sharpData() {
        return sharpData;
    }

    /** Runs the race of hypotheses, healthy the first of them; healthy first, then all faults that are still conceivable. */
    List<Entry> run(List<Hypothesis> hypotheses) {
        Entry first = new Entry(
                hypotheses.get(0), knowledge.circuit(), knowledge.prior(), healthy.x(), healthy.logEvidence(), healthy);
        List<Hypothesis> growing = new ArrayList<>();
        List<Hypothesis> changing = new ArrayList<>();
        for (Hypothesis hypothesis : hypotheses.subList(1, hypotheses.size())) {
            if (hypothesis.widenedParameter() != null) {
                entries.add(widened(hypothesis));
            } else if (hypothesis.grows()) {
                growing.add(hypothesis);
            } else {
                changing.add(hypothesis);
            }
        }
        score(growing);
        firstLook(changing);
        if (logUnknown < 0 && strays()) {
            firstLook(hypotheses.subList(1, hypotheses.size()).stream()
                    .filter(h -> !changing.contains(h))
                    .toList());
        }
        fitTheBest(first);
        entries.add(0, first);
        return entries;
    }

    private boolean strays() {
        double[] mean = knowledge.prior().mean();
        double[] spread = knowledge.prior().spread();
        for (int i = 0; i < mean.length; i++) {
            if (Math.abs(healthy.x()[i] - mean[i]) > STRAYS * spread[i]) {
                return true;
            }
        }
        return false;
    }

    private Entry widened(Hypothesis hypothesis) {
        int index = knowledge.circuit().indexOf(hypothesis.widenedParameter());
        CircuitPrior prior = prior(hypothesis, knowledge.circuit());
        return new Entry(
                hypothesis,
                knowledge.circuit(),
                prior,
                healthy.x(),
                healthy.logEvidenceWith(knowledge.prior(), index, prior.mean()[index], hypothesis.spread()),
                null);
    }

    private void score(List<Hypothesis> growing) {
        ScoreTest test = new ScoreTest(knowledge.circuit(), data, knowledge.prior(), healthy.x());
        for (Hypothesis hypothesis : growing) {
            PointCircuit circuit = circuit(hypothesis);
            CircuitPrior prior = knowledge.prior().extendedTo(circuit);
            int last = prior.mean().length - 1;
            double[] x = java.util.Arrays.copyOf(healthy.x(), last + 1);
            double mean = prior.mean()[last];
            double spread = prior.spread()[last];
            double small = SLOPE_STEP * hypothesis.severityOf(mean);
            x[last] = hypothesis.carried(small);
            ScoreTest.Signature signature = test.signature(circuit, x);
            double ratio = new Severity(
                            StrictMath.log(hypothesis.severityOf(mean)),
                            hypothesis.logSpread(mean, spread),
                            hypothesis.leastSeverity())
                    .logEvidenceRatio(signature.pull(), signature.strength(), small);
            double best = small * signature.pull() / Math.max(1e-9, signature.strength());
            double usual = hypothesis.severityOf(mean);
            double severity = Math.min(hypothesis.largestSeverity(), Math.max(0.1 * usual, Math.min(3 * usual, best)));
            x[last] = hypothesis.carried(severity);
            entries.add(new Entry(hypothesis, circuit, prior, x, healthy.logEvidence() + ratio, null));
        }
    }

    /** Drops changes of structure that could not explain the curve even if it were measured badly. */
    private void firstLook(List<Hypothesis> changing) {
        CurveData few = data.thinned(FIRST_LOOK);
        double least = CircuitFit.chi2AfterOneStep(knowledge.circuit(), few, knowledge.prior(), DOUBT);
        List<Entry> looked = new ArrayList<>();
        List<Double> chi2 = new ArrayList<>();
        for (Hypothesis hypothesis : changing) {
            PointCircuit circuit = circuit(hypothesis);
            CircuitPrior prior = prior(hypothesis, circuit);
            double reached = CircuitFit.chi2AfterOneStep(circuit, few, prior, DOUBT);
            least = Math.min(least, reached);
            looked.add(new Entry(hypothesis, circuit, prior, startOf(prior), 0, null));
            chi2.add(reached);
        }
        for (int i = 0; i < looked.size(); i++) {
            if (chi2.get(i) > least + CONCEIVABLE) {
                continue;
            }
            Entry entry = looked.get(i);
            CircuitFit.Result fit =
                    CircuitFit.fit(entry.circuit(), data, entry.prior(), entry.start(), CircuitFit.Effort.NEAR);
            keepTheBetter(fitted(entry, fit));
        }
    }

    /** A fit whose severity is too small to be the fault explains nothing. */
    private static Entry fitted(Entry entry, CircuitFit.Result fit) {
        Hypothesis hypothesis = entry.hypothesis();
        boolean tooSmall =
                hypothesis.grows() && hypothesis.severityOf(fit.x()[fit.x().length - 1]) < hypothesis.leastSeverity();
        return entry.with(fit.x(), tooSmall ? Double.NEGATIVE_INFINITY : fit.logEvidence(), fit);
    }

    private void keepTheBetter(Entry fitted) {
        for (int i = 0; i < entries.size(); i++) {
            if (entries.get(i).hypothesis().equals(fitted.hypothesis())) {
                if (entries.get(i).logEvidence() < fitted.logEvidence()) {
                    entries.set(i, fitted);
                }
                return;
            }
        }
        entries.add(fitted);
    }

    private double[] startOf(CircuitPrior prior) {
        double[] start = prior.mean();
        double[] healthyStart = knowledge.start();
        System.arraycopy(healthyStart, 0, start, 0, healthyStart.length);
        return start;
    }

    /** Fits whoever leads without a fit, until all that could win are fitted: scores flatter. */
    private void fitTheBest(Entry first) {
        double best = first.score();
        for (Entry entry : entries) {
            best = entry.fit() == null ? best : Math.max(best, entry.score());
        }
        double race = logUnknown < 0 ? RACE : DOUBTED_RACE;
        for (int count = 0; count < FITTED_AT_MOST; count++) {
            int leader = -1;
            for (int i = 0; i < entries.size(); i++) {
                if (entries.get(i).fit() == null
                        && (leader < 0
                                || entries.get(i).score() > entries.get(leader).score())) {
                    leader = i;
                }
            }
            if (leader < 0 || entries.get(leader).score() < best - race) {
                return;
            }
            Entry entry = entries.get(leader);
            CircuitFit.Result fit =
                    CircuitFit.fit(entry.circuit(), data, entry.prior(), entry.start(), CircuitFit.Effort.NEAR);
            Entry fitted = fitted(entry, fit);
            entries.set(leader, fitted);
            best = Math.max(best, fitted.score());
        }
    }

    private CircuitPrior prior(Hypothesis hypothesis, PointCircuit circuit) {
        CircuitPrior healthyPrior = knowledge.prior();
        if (hypothesis.widenedParameter() == null) {
            return healthyPrior.extendedTo(circuit);
        }
        int index = circuit.indexOf(hypothesis.widenedParameter());
        return healthyPrior.with(index, healthyPrior.mean()[index] + hypothesis.shift(), hypothesis.spread());
    }

    private PointCircuit circuit(Hypothesis hypothesis) {
        return hypothesis.structure().equals(CircuitFault.NONE)
                ? knowledge.circuit()
                : CircuitCompiler.compile(book, model, point, hypothesis.structure());
    }
}
