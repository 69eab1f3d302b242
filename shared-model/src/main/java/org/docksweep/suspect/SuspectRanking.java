package org.docksweep.suspect;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.circuit.CircuitFit;
import org.docksweep.circuit.CurveData;
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
    /** A curve that some explanation meets to this relative error counts as explained, however sharp its reference is. */
    private static final double MISFIT_SIGMA = 0.012;
    /** Known faults together must be this good against healthy to be named where healthy is untenable. */
    private static final double KNOWN_AGAINST_HEALTHY = 0.25;
    /** Largest exponent worth taking. */
    private static final double MOST_LOG = 600;
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
        CircuitFit.Result result = CircuitFit.fit(knowledge.circuit(), data, knowledge.prior(), knowledge.start());
        return new Healthy(result.logEvidence() + data.logNormalisation(), result.chi2() / (2.0 * data.size()));
    }

    /**
     * Fit of the healthy circuit.
     *
     * @param logEvidence logarithm of the evidence, comparable between cabinet models for one curve
     * @param reducedChi2 reduced chi squared
     */
    public record Healthy(double logEvidence, double reducedChi2) {}

    /**
     * Explains a curve.
     *
     * @param curve calibrated impedance
     * @return the explanation
     */
    public Explanation explain(ImpedanceCurve curve) {
        CurveData data = knowledge.dataOf(curve);
        Explanation whole = explain(curve, data);
        if (!whole.isUnknown() || knowledge.ofThisCabinet()) {
            return whole;
        }
        return NarrowStray.worstOf(knowledge, data)
                .map(stray -> stray.watched(whole, explain(curve, stray.elsewhere())))
                .orElse(whole);
    }

    private Explanation explain(ImpedanceCurve curve, CurveData whole) {
        Contest contest = new Contest(book, model, point, knowledge, whole);
        List<Contest.Entry> scored = contest.run(priors.applied(model, HypothesisSet.of(model, point)));
        CurveData data = contest.data();
        // When even the best explanation misfits, all data are believed less: no verdict from model error alone.
        double temper = Math.max(
                1,
                scored.stream()
                                .filter(s -> s.fit() != null)
                                .mapToDouble(s -> s.fit().dataChi2())
                                .min()
                                .orElseThrow()
                        / (2.0 * data.size()));
        return posterior(contest, scored, temper, curve);
    }

    private Explanation posterior(Contest contest, List<Contest.Entry> scored, double temper, ImpedanceCurve curve) {
        CurveData data = contest.data();
        double[] log = new double[scored.size() + 1];
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < scored.size(); i++) {
            Contest.Entry entry = scored.get(i);
            // evidence falls by half of chi squared; one that was not fitted is known by its evidence alone
            double chi2 = entry.fit() != null
                    ? entry.fit().chi2()
                    : scored.get(0).fit().chi2()
                            - 2 * (entry.logEvidence() - scored.get(0).logEvidence());
            log[i] = entry.score() + 0.5 * chi2 * (1 - 1 / temper);
            largest = Math.max(largest, log[i]);
        }
        double known = 0;
        for (int i = 1; i < scored.size(); i++) {
            known += StrictMath.exp(log[i] - largest);
        }
        double well = StrictMath.exp(log[0] - largest);
        int unknown = scored.size();
        log[unknown] = log[0] + contest.logUnknown();
        double none = StrictMath.exp(Math.min(MOST_LOG, log[unknown] - largest));
        double faults = (known + none) / (known + none + well);
        // "None of these" is named where no known fault is as good as none at all.
        boolean named = known > KNOWN_AGAINST_HEALTHY * well;
        double sum = named ? known : known + none;
        double reference = largest;
        List<Suspect> suspects = new ArrayList<>();
        Contest.Entry likeliest = null;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < log.length; i++) {
            if (i == unknown && named) {
                continue;
            }
            double among = StrictMath.exp(Math.min(MOST_LOG, log[i] - reference)) / Math.max(sum, 1e-300);
            if (among < SHOWN) {
                continue;
            }
            if (i == unknown) {
                suspects.add(SuspectWords.unknown(point, rounded(among)));
            } else if (scored.get(i).fit() != null) {
                if (log[i] > most) {
                    most = log[i];
                    likeliest = scored.get(i);
                }
                suspects.add(SuspectWords.suspect(
                        scored.get(i).hypothesis(),
                        model,
                        point,
                        rounded(among),
                        scored.get(i).fit()));
            }
        }
        if (likeliest != null) {
            predict(suspects, likeliest, curve, contest.sharpData());
        }
        suspects = merged(suspects);
        suspects.replaceAll(suspect -> priors.informed(model, suspect));
        suspects.sort(Comparator.comparingDouble(Suspect::probability).reversed());
        CircuitFit.Result healthyFit = scored.get(0).fit();
        return new Explanation(
                faults,
                misfit(scored, data),
                contest.sharpReducedChi2(),
                contest.comparableLogEvidence(scored),
                suspects.subList(0, Math.min(SHOWN_AT_MOST, suspects.size())),
                healthyFit.x(),
                healthyFit.posteriorSpread());
    }

    /** One fault of one part may act in two ways; it is told once, with what both together weigh, in the words of the likelier. */
    private static List<Suspect> merged(List<Suspect> suspects) {
        Map<List<Object>, Suspect> byName = new LinkedHashMap<>();
        for (Suspect suspect : suspects) {
            List<Object> name = Arrays.asList(suspect.kind(), suspect.positionCode(), suspect.elementId());
            byName.merge(name, suspect, (a, b) -> {
                Suspect likelier = a.probability() >= b.probability() ? a : b;
                return likelier.withProbability(rounded(Math.min(1, a.probability() + b.probability())));
            });
        }
        return new ArrayList<>(byName.values());
    }

    /** Gives the likeliest of the fitted suspects its curve. */
    private static void predict(List<Suspect> suspects, Contest.Entry likeliest, ImpedanceCurve curve, CurveData data) {
        int best = 0;
        for (int i = 1; i < suspects.size(); i++) {
            if (suspects.get(i).kind() != FaultKind.UNKNOWN
                    && (suspects.get(best).kind() == FaultKind.UNKNOWN
                            || suspects.get(i).probability()
                                    > suspects.get(best).probability())) {
                best = i;
            }
        }
        suspects.set(
                best,
                suspects.get(best)
                        .withPredicted(PredictedCurve.of(
                                curve,
                                data,
                                likeliest.circuit(),
                                likeliest.fit().x())));
    }

    /** Misfit of the best of all fits. */
    private static double misfit(List<Contest.Entry> scored, CurveData data) {
        Contest.Entry best = scored.stream()
                .filter(s -> s.fit() != null)
                .min(Comparator.comparingDouble(s -> s.fit().chi2()))
                .orElseThrow();
        double[][] fitted = CircuitFit.predict(
                best.circuit(), data.frequencyHz(), best.fit().x());
        double sum = 0;
        for (int i = 0; i < data.size(); i++) {
            double log = data.logOhm()[i] - fitted[0][i];
            double phase = Math.IEEEremainder(data.phaseRad()[i] - fitted[1][i], 2 * Math.PI);
            sum += (log * log + phase * phase) / (MISFIT_SIGMA * MISFIT_SIGMA);
        }
        return sum / (2.0 * data.size());
    }

    /** Four decimals: more is noise, and would differ with every change of the engine. */
    private static double rounded(double probability) {
        return Math.min(1, Math.rint(probability * 1e4) / 1e4);
    }
}
