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
 */
final class Contest {
    /** The first look at a change of structure uses every fifth point of the data, believed so much less. */
    private static final int FIRST_LOOK = 5;

    private static final double DOUBT = 5;
    /** Chi squared by which a change of structure may lie behind the best in the first look. */
    private static final double CONCEIVABLE = 40;
    /** Slopes by severity are taken so close to none, as a share of the usual severity: resonances soon bend. */
    static final double SLOPE_STEP = 0.02;
    /** Quick fits use every second point of the data. */
    private static final int THINNED = 2;
    /** A hypothesis this far behind the best in logarithmic evidence is not fitted in full; its score stands. */
    private static final double RACE = 5;
    /** Scores at the healthy optimum mean less, the worse that optimum fits. */
    private static final double DOUBTED_RACE = 25;
    /** Healthy fits with a reduced chi squared above this doubt scores. */
    private static final double HEALTHY_FITS = 1.5;
    /** Error of a circuit with changed structure, as a share of what the change does to ln Z. */
    private static final double CHANGED_STRUCTURE_ERROR = 0.01;
    /** So many are fitted in full at most, the best first. */
    private static final int FITTED_AT_MOST = 7;

    private final ModelBook book;
    private final CabinetModel model;
    private final TestPoint point;
    private final Knowledge knowledge;
    private final CurveData data;
    private final CircuitFit.Result healthy;
    private final List<Entry> entries = new ArrayList<>();

    /**
     * A hypothesis in the race.
     *
     * @param hypothesis the hypothesis
     * @param circuit its circuit
     * @param prior prior of all parameters
     * @param data the curve, believed as far as its circuit is
     * @param start where a fit starts
     * @param logEvidence logarithm of its evidence so far, on the scale of fits to all data
     * @param fit its fit to all data, or null when it was not worth one
     */
    record Entry(
            Hypothesis hypothesis,
            PointCircuit circuit,
            CircuitPrior prior,
            CurveData data,
            double[] start,
            double logEvidence,
            CircuitFit.Result fit) {
        double score() {
            return logEvidence + StrictMath.log(hypothesis.weight());
        }

        Entry with(double[] newStart, double newLogEvidence, CircuitFit.Result newFit) {
            return new Entry(hypothesis, circuit, prior, data, newStart, newLogEvidence, newFit);
        }
    }

    Contest(ModelBook book, CabinetModel model, TestPoint point, Knowledge knowledge, CurveData data) {
        this.book = book;
        this.model = model;
        this.point = point;
        this.knowledge = knowledge;
        this.data = data;
        this.healthy = CircuitFit.fit(knowledge.circuit(), data, knowledge.prior(), knowledge.start());
    }

    CircuitFit.Result healthy() {
        return healthy;
    }

    /** Runs the race; healthy first, then all faults that are still conceivable. */
    List<Entry> run() {
        List<Hypothesis> hypotheses = HypothesisSet.of(model, point);
        Entry first = new Entry(
                hypotheses.get(0),
                knowledge.circuit(),
                knowledge.prior(),
                data,
                healthy.x(),
                healthy.logEvidence(),
                healthy);
        boolean fits = healthy.dataChi2() < HEALTHY_FITS * 2 * data.size();
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
        fitTheBest(first, fits);
        entries.add(0, first);
        return entries;
    }

    private Entry widened(Hypothesis hypothesis) {
        int index = knowledge.circuit().indexOf(hypothesis.widenedParameter());
        double mean = knowledge.prior().mean()[index] + hypothesis.shift();
        return new Entry(
                hypothesis,
                knowledge.circuit(),
                knowledge.prior().with(index, mean, hypothesis.spread()),
                data,
                healthy.x(),
                healthy.logEvidenceWith(knowledge.prior(), index, mean, hypothesis.spread()),
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
            double ratio = new Severity(StrictMath.log(hypothesis.severityOf(mean)), hypothesis.logSpread(mean, spread))
                    .logEvidenceRatio(signature.pull(), signature.strength(), small);
            double best = small * signature.pull() / Math.max(1e-9, signature.strength());
            double usual = hypothesis.severityOf(mean);
            double severity = Math.min(hypothesis.largestSeverity(), Math.max(0.1 * usual, Math.min(3 * usual, best)));
            x[last] = hypothesis.carried(severity);
            entries.add(new Entry(hypothesis, circuit, prior, data, x, healthy.logEvidence() + ratio, null));
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
            CircuitPrior prior = knowledge.prior().extendedTo(circuit);
            double reached = CircuitFit.chi2AfterOneStep(circuit, few, prior, DOUBT);
            least = Math.min(least, reached);
            looked.add(new Entry(hypothesis, circuit, prior, data, knowledge.start(), 0, null));
            chi2.add(reached);
        }
        CurveData thinned = data.thinned(THINNED);
        double reference = Double.NaN;
        for (int i = 0; i < looked.size(); i++) {
            if (chi2.get(i) > least + CONCEIVABLE) {
                continue;
            }
            if (Double.isNaN(reference)) {
                reference = CircuitFit.fit(
                                knowledge.circuit(), thinned, knowledge.prior(), healthy.x(), CircuitFit.Effort.NEAR)
                        .logEvidence();
            }
            Entry entry = doubted(looked.get(i));
            CurveData thinnedHere = entry.data().thinned(THINNED);
            CircuitFit.Result quick =
                    CircuitFit.fit(entry.circuit(), thinnedHere, entry.prior(), entry.start(), CircuitFit.Effort.QUICK);
            double against = quick.logEvidence()
                    + thinnedHere.logNormalisation()
                    - reference
                    - thinned.logNormalisation();
            entries.add(entry.with(quick.x(), healthy.logEvidence() + against, null));
        }
    }

    /** The circuit of a changed structure is known less well than the healthy one it was taught as. */
    private Entry doubted(Entry entry) {
        double[] hz = data.frequencyHz();
        double[][] healthyCurve = CircuitFit.predict(knowledge.circuit(), hz, knowledge.prior().mean());
        double[][] faultyCurve = CircuitFit.predict(entry.circuit(), hz, entry.prior().mean());
        double[] change = new double[hz.length];
        for (int i = 0; i < hz.length; i++) {
            change[i] = Math.hypot(
                    faultyCurve[0][i] - healthyCurve[0][i],
                    Math.IEEEremainder(faultyCurve[1][i] - healthyCurve[1][i], 2 * Math.PI));
        }
        return new Entry(
                entry.hypothesis(),
                entry.circuit(),
                entry.prior(),
                data.doubtedWhere(change, CHANGED_STRUCTURE_ERROR),
                entry.start(),
                entry.logEvidence(),
                null);
    }

    private void fitTheBest(Entry first, boolean fits) {
        entries.sort(Comparator.comparingDouble(Entry::score).reversed());
        double race = fits ? RACE : DOUBTED_RACE;
        double best = Math.max(first.score(), entries.get(0).score());
        for (int i = 0; i < Math.min(FITTED_AT_MOST, entries.size()); i++) {
            Entry entry = entries.get(i);
            if (entry.score() < best - race) {
                break;
            }
            CircuitFit.Result fit =
                    CircuitFit.fit(entry.circuit(), entry.data(), entry.prior(), entry.start(), CircuitFit.Effort.NEAR);
            double against = entry.data().logNormalisation() - data.logNormalisation();
            entries.set(i, entry.with(fit.x(), fit.logEvidence() + against, fit));
        }
    }

    private PointCircuit circuit(Hypothesis hypothesis) {
        return hypothesis.structure().equals(CircuitFault.NONE)
                ? knowledge.circuit()
                : CircuitCompiler.compile(book, model, point, hypothesis.structure());
    }
}
