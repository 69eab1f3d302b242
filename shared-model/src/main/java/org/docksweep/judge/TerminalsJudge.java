package org.docksweep.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.docksweep.circuit.CircuitParameter;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.Finding;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.Quantities;
import org.docksweep.gate.Quantity;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.suspect.AmbiguityGroups;
import org.docksweep.suspect.Explanation;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;
import org.docksweep.suspect.SuspectRanking;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SweepAnalysis;

/** Judges a test point with terminals from its impedance. */
final class TerminalsJudge {
    private final JudgeRequest request;
    private final TestPoint point;
    private final SweepAnalysis analysis;
    private final Double ambientCelsius;

    TerminalsJudge(JudgeRequest request, TestPoint point, SweepAnalysis analysis, Double ambientCelsius) {
        this.request = request;
        this.point = point;
        this.analysis = analysis;
        this.ambientCelsius = ambientCelsius;
    }

    PointEvidence judge() {
        if (!analysis.clean()) {
            Reason reason = analysis.firstIssue().orElseThrow().reason();
            return evidence(Verdict.SWEEP_AGAIN, Prompt.SWEEP_AGAIN, reason, null, List.of(), List.of(), List.of(), 0);
        }
        return switch (analysis.load()) {
            case OPEN -> open();
            case SHORT -> shorted();
            case PRESENT -> present();
            case UNKNOWN ->
                evidence(
                        Verdict.SWEEP_AGAIN,
                        Prompt.PERSON_DECIDES,
                        Reason.of("judge-no-curve", point.contacts()),
                        null,
                        List.of(),
                        List.of(),
                        List.of(),
                        0);
        };
    }

    /** Open alone is no verdict: nothing may be plugged in. The cabinet's other points decide. */
    private PointEvidence open() {
        return evidence(
                Verdict.SWEEP_AGAIN,
                Prompt.PLUG_IN,
                Reason.of("judge-plug-in", point.contacts()),
                null,
                List.of(),
                List.of(),
                List.of(),
                0);
    }

    private PointEvidence shorted() {
        List<Suspect> suspects = new ArrayList<>();
        boolean single = point.positionCodes().size() == 1;
        suspects.add(new Suspect(
                FaultKind.TERMINALS_SHORTED,
                point.code(),
                null,
                null,
                single ? 0.5 : 0.9,
                Reason.of("suspect-terminals-shorted", point.contacts()),
                Reason.of("next-terminals-shorted", point.contacts())));
        if (single) {
            String position = point.positionCodes().get(0);
            suspects.add(new Suspect(
                    FaultKind.DRIVER_SHORTED,
                    point.code(),
                    position,
                    null,
                    0.5,
                    Reason.of("suspect-driver-shorted", position, ""),
                    Reason.of("next-driver-shorted", position)));
        }
        Reason reason = Reason.of("verdict-terminals-shorted", point.contacts());
        Finding finding = new Finding(
                ReadingState.FAULT,
                point.code(),
                null,
                single ? point.positionCodes().get(0) : null,
                null,
                null,
                reason);
        return evidence(Verdict.FAIL, Prompt.NONE, reason, null, List.of(), List.of(finding), suspects, 1);
    }

    private PointEvidence present() {
        ImpedanceCurve curve = rounded(request.correction().correct(analysis.impedance()));
        PointReference reference = ownReference(request, point).orElse(null);
        CurveReadings reader = new CurveReadings(request.model(), point, curve, reference);
        List<Reading> readings = new ArrayList<>(reader.readings());
        if (reference == null) {
            return evidence(
                    Verdict.SWEEP_AGAIN,
                    Prompt.PERSON_DECIDES,
                    Reason.of("judge-no-reference", request.model().name(), point.contacts()),
                    curve,
                    readings,
                    List.of(),
                    List.of(),
                    0);
        }
        Knowledge knowledge = ownKnowledge(request, point, reference, ambientCelsius);
        Explanation explanation =
                new SuspectRanking(request.book(), request.model(), point, knowledge, request.priors()).explain(curve);
        if (explanation.faultProbability()
                < request.limits().failProbability(ownBaseline().isPresent())) {
            readings.replaceAll(FittedReadings.sharpenedBy(measured(curve, explanation)));
        }
        readings.addAll(0, resistances(knowledge, explanation));
        readings.addAll(DeviationReadings.of(point, curve, reader.deviation(), ownBaseline()));
        RigReadings rig = new RigReadings(point, ownBaseline().isPresent());
        rig.repeatability(request.repeatability()).ifPresent(readings::add);
        if (!analysis.currentDropouts().isEmpty()) {
            return intermittent(curve, readings);
        }
        if (!fails(explanation, request.limits(), ownBaseline().isPresent())) {
            rig.contact(knowledge, explanation).ifPresent(readings::add);
            boolean watch = watch(explanation, request.limits());
            Reason reason = watch ? Reason.of("verdict-pass-watch") : Reason.of("verdict-pass");
            List<Finding> findings = watch ? List.of(finding(ReadingState.WATCH, null, reader, reason)) : List.of();
            return evidence(
                    Verdict.PASS,
                    Prompt.NONE,
                    reason,
                    curve,
                    readings,
                    findings,
                    List.of(),
                    explanation.faultProbability());
        }
        return new Impostors(request, point, curve, ambientCelsius)
                .find(explanation)
                .map(found -> evidence(
                        Verdict.SWEEP_AGAIN, found.prompt(), found.reason(), curve, readings, List.of(), List.of(), 0))
                .orElseGet(() -> failed(curve, readings, reader, explanation, reference));
    }

    static boolean fails(Explanation explanation, LimitSet limits, boolean ownBaseline) {
        return explanation.faultProbability() >= limits.failProbability(ownBaseline)
                || explanation.reducedChi2() > limits.misfitLimit();
    }

    static boolean watch(Explanation explanation, LimitSet limits) {
        return explanation.faultProbability() >= limits.watchProbability();
    }

    private List<Quantity> measured(ImpedanceCurve curve, Explanation explanation) {
        return Quantities.of(
                request.book(), request.model(), point, FittedReadings.thinned(curve), null, explanation.healthyX());
    }

    private PointEvidence failed(
            ImpedanceCurve curve,
            List<Reading> readings,
            CurveReadings reader,
            Explanation explanation,
            PointReference reference) {
        boolean unexplained = explanation.reducedChi2() > request.limits().misfitLimit();
        List<Suspect> suspects = new ArrayList<>(AmbiguityGroups.of(request.book(), request.model(), point, reference)
                .arrange(explanation.suspects()));
        CurveReadings.Deviation worst = reader.deviation();
        suspects.replaceAll(s -> s.kind() == FaultKind.UNKNOWN ? unknown(s.probability(), worst) : s);
        if (suspects.isEmpty() || unexplained && suspects.get(0).kind() != FaultKind.UNKNOWN) {
            suspects.removeIf(s -> s.kind() == FaultKind.UNKNOWN);
            suspects.add(0, unknown(1, worst));
        }
        Reason reason = VerdictWords.reason(request.model(), suspects, worst);
        Finding finding = finding(ReadingState.FAULT, suspects.get(0).positionCode(), reader, reason);
        return evidence(Verdict.FAIL, Prompt.NONE, reason, curve, readings, List.of(finding), suspects, 1);
    }

    private Suspect unknown(double probability, CurveReadings.Deviation worst) {
        return new Suspect(
                FaultKind.UNKNOWN,
                point.code(),
                null,
                null,
                probability,
                Reason.of("suspect-unknown", worst == null ? "" : Rounding.hertz(worst.fromHz())),
                Reason.of("next-unknown"));
    }

    private PointEvidence intermittent(ImpedanceCurve curve, List<Reading> readings) {
        String position =
                point.positionCodes().size() == 1 ? point.positionCodes().get(0) : null;
        Suspect suspect = new Suspect(
                FaultKind.INTERMITTENT_CONTACT,
                point.code(),
                position,
                null,
                1,
                Reason.of(
                        "suspect-intermittent-contact",
                        String.valueOf(analysis.currentDropouts().size())),
                Reason.of("next-intermittent-contact"));
        Reason reason = Reason.of("verdict-intermittent-contact", point.contacts());
        Finding finding = new Finding(ReadingState.FAULT, point.code(), null, position, null, null, reason);
        return evidence(Verdict.FAIL, Prompt.NONE, reason, curve, readings, List.of(finding), List.of(suspect), 1);
    }

    private Finding finding(ReadingState state, String positionCode, CurveReadings reader, Reason reason) {
        CurveReadings.Deviation worst = reader.deviation();
        return new Finding(
                state,
                point.code(),
                positionCode == null
                        ? null
                        : request.model().position(positionCode).way(),
                positionCode,
                worst == null ? null : Rounding.significant(worst.fromHz()),
                worst == null ? null : Rounding.significant(worst.toHz()),
                reason);
    }

    /** Resistance of each driver at 20 C from the fit; the coil's temperature is a free quantity of it. */
    private List<Reading> resistances(Knowledge knowledge, Explanation explanation) {
        List<Reading> readings = new ArrayList<>();
        List<CircuitParameter> parameters = knowledge.circuit().parameters();
        for (int i = 0; i < parameters.size(); i++) {
            String id = parameters.get(i).id();
            if (!id.endsWith(".Re")) {
                continue;
            }
            double value = StrictMath.exp(explanation.healthyX()[i]);
            double expected = StrictMath.exp(knowledge.prior().mean()[i]);
            double spread = Math.max(0.03, knowledge.prior().spread()[i]);
            double low = expected * StrictMath.exp(-4 * spread);
            double high = expected * StrictMath.exp(4 * spread);
            readings.add(new Reading(
                    ReadingKind.DC_RESISTANCE_20C,
                    point.code(),
                    id.substring(0, id.length() - 3),
                    Rounding.significant(value),
                    Rounding.significant(value * explanation.healthySpread()[i]),
                    Rounding.significant(expected),
                    Rounding.significant(low),
                    Rounding.significant(high),
                    value >= low && value <= high ? ReadingState.OK : ReadingState.WATCH));
        }
        return readings;
    }

    static Optional<PointReference> ownReference(JudgeRequest request, TestPoint point) {
        return request.references().stream()
                .filter(r -> r.cabinetModelCode().equals(request.model().code())
                        && r.testPointCode().equals(point.code()))
                .findFirst();
    }

    /** What is known of a point of the cabinet itself: its model's reference, its own baseline, the weather, the rig. */
    static Knowledge ownKnowledge(
            JudgeRequest request, TestPoint point, PointReference reference, Double ambientCelsius) {
        Knowledge taught =
                Knowledge.nominal(request.book(), request.model(), point).taughtBy(reference);
        Optional<Baseline> baseline = baseline(request, point);
        return baseline.map(taught::sharpenedBy)
                .orElse(taught)
                .at(ambientCelsius)
                .onRig(request.repeatability(), baseline.isPresent() ? 2 : 1);
    }

    private Optional<Baseline> ownBaseline() {
        return baseline(request, point);
    }

    private static Optional<Baseline> baseline(JudgeRequest request, TestPoint point) {
        return request.baselines().stream()
                .filter(b -> b.testPointCode().equals(point.code()) && b.impedance() != null)
                .findFirst();
    }

    private PointEvidence evidence(
            Verdict verdict,
            Prompt prompt,
            Reason reason,
            ImpedanceCurve curve,
            List<Reading> readings,
            List<Finding> findings,
            List<Suspect> suspects,
            double faultProbability) {
        return new PointEvidence(
                new PointJudgement(
                        point.code(),
                        verdict,
                        prompt,
                        reason,
                        curve,
                        analysis.acoustic(),
                        readings,
                        findings,
                        suspects),
                analysis.load(),
                faultProbability);
    }

    static ImpedanceCurve rounded(ImpedanceCurve curve) {
        return new ImpedanceCurve(
                curve.frequencyHz(),
                Rounding.significant(curve.resistanceOhm()),
                Rounding.significant(curve.reactanceOhm()),
                Rounding.significant(curve.standardUncertaintyOhm()));
    }
}
