package org.docksweep.suspect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.SampleCabinets;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Reasons;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.DrawnUnits;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.ReferenceTeacher;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PriorTeacherTest {
    private static final Instant NOW = Instant.parse("2026-11-26T02:00:00Z");
    private static final Duration HALF_LIFE = Duration.ofDays(730);
    private static final PriorTeacher.Policy POLICY = new PriorTeacher.Policy(20, 10, HALF_LIFE, 5);

    private final ModelBook book = SampleCabinets.twoWay();
    private final CabinetModel model = book.cabinetModels().get(0);
    private final String horn = model.position("HF1").driverModelCode();

    /** By hand: of 20 + 10 findings, a kind with usual share s has 20 s, and contact 10 more. */
    @Test
    void movesTheSharesOfTheKinds() {
        PriorTeacher.Lesson lesson = teach(List.of(), joints(10, NOW));

        double usualRate = lesson.rows().stream()
                .mapToDouble(PriorTeacher.Row::usualWeight)
                .sum();
        PriorTeacher.Row contact = row(lesson, FaultKind.CONTACT_RESISTANCE);
        double share = contact.usualWeight() / usualRate;
        assertThat(contact.factor()).isCloseTo((20 * share + 10) / 30 / share, within(1e-9));
        assertThat(row(lesson, FaultKind.DRIVER_OPEN).factor()).isCloseTo(20.0 / 30, within(1e-9));
        assertThat(contact.findings()).isCloseTo(10, within(1e-9));
        assertThat(lesson.rows()).allMatch(r -> r.ownerCode().equals(horn));
    }

    /** By hand: 10 failures where 50 returns let expect 50 times the usual rate: (10 + 10) / (10 + 50 rate). */
    @Test
    void raisesTheRateOfADriverThatFailsMoreOftenThanUsual() {
        PriorTeacher.Lesson without = teach(List.of(), joints(10, NOW));
        PriorTeacher.Lesson with = teach(List.of(new PriorTeacher.Returns(horn, NOW, 50)), joints(10, NOW));

        double usualRate = without.rows().stream()
                .mapToDouble(PriorTeacher.Row::usualWeight)
                .sum();
        assertThat(row(with, FaultKind.DRIVER_OPEN).factor())
                .isCloseTo(row(without, FaultKind.DRIVER_OPEN).factor() * 20 / (10 + 50 * usualRate), within(1e-9));
    }

    @Test
    void neverLowersTheRateBecauseNobodyWroteFindingsDown() {
        PriorTeacher.Lesson lesson = teach(List.of(new PriorTeacher.Returns(horn, NOW, 100_000)), joints(1, NOW));

        assertThat(row(lesson, FaultKind.CONTACT_RESISTANCE).factor()).isGreaterThan(1);
        assertThat(teach(List.of(new PriorTeacher.Returns(horn, NOW, 100_000)), List.of())
                        .priors())
                .isEqualTo(Priors.USUAL);
    }

    @Test
    void forgetsByHalfLife() {
        PriorTeacher.Row old = row(teach(List.of(), joints(10, NOW.minus(HALF_LIFE))), FaultKind.CONTACT_RESISTANCE);

        assertThat(old.findingsNow()).isCloseTo(5, within(1e-9));
        assertThat(old.factor())
                .isCloseTo(
                        row(teach(List.of(), joints(5, NOW)), FaultKind.CONTACT_RESISTANCE)
                                .factor(),
                        within(1e-9));
    }

    @Test
    void staysWithinItsBoundsHoweverMuchItSees() {
        PriorTeacher.Lesson lesson = teach(List.of(new PriorTeacher.Returns(horn, NOW, 10)), joints(5_000, NOW));

        assertThat(row(lesson, FaultKind.CONTACT_RESISTANCE).factor()).isEqualTo(5);
        assertThat(lesson.rows()).allMatch(r -> r.factor() >= 0.2 && r.factor() <= 5);
    }

    @Test
    void changesWhatTheGateBelieves() {
        TestPoint point = model.testPoints().get(0);
        Knowledge knowledge = knowledge(point);
        Priors priors = teach(List.of(), joints(30, NOW)).priors();
        var curve = DrawnUnits.draw(book, new CircuitFault(CircuitFault.Kind.SERIES_RESISTANCE, "HF1"), 1.2, 977);

        Explanation usual = new SuspectRanking(book, model, point, knowledge).explain(curve);
        Explanation learned = new SuspectRanking(book, model, point, knowledge, priors).explain(curve);

        assertThat(probability(learned)).isGreaterThan(probability(usual));
        assertThat(learned.suspects().get(0).kind()).isEqualTo(FaultKind.CONTACT_RESISTANCE);
        assertThat(Reasons.text(learned.suspects().get(0).nextStep(), Locale.ENGLISH))
                .isEqualTo("Look at HF1 for this first: lead-in or its joint broken or corroded."
                        + " Our own repairs found it 30 times of 30.");
    }

    @Test
    void leavesEverythingAsItWasWithoutFindings() {
        TestPoint point = model.testPoints().get(0);
        List<Hypothesis> usual = HypothesisSet.of(model, point);

        assertThat(Priors.USUAL.applied(model, usual)).isEqualTo(usual);
    }

    @ParameterizedTest
    @EnumSource(ConfirmedCause.class)
    void givesEveryCauseItsWordsAndSharesThatAddUp(ConfirmedCause cause) {
        String key = "learned-" + cause.name().toLowerCase(Locale.ROOT).replace('_', '-');
        assertThat(Reasons.text(org.docksweep.fleet.Reason.of(key), Locale.GERMAN))
                .isNotBlank();

        double sum = CauseKinds.shares(cause, false, List.of()).values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
        assertThat(sum).isCloseTo(CauseKinds.of(cause).isEmpty() ? 0 : 1, within(1e-12));
    }

    @Test
    void readsAFindingByWhatTheDockSuspected() {
        List<Suspect> dock = List.of(
                suspect(FaultKind.DRIVER_OPEN, 0.6),
                suspect(FaultKind.COIL_SEIZED, 0.2),
                suspect(FaultKind.CONTACT_RESISTANCE, 0.2));

        assertThat(CauseKinds.shares(ConfirmedCause.LEAD_IN_JOINT, false, dock))
                .containsOnlyKeys(FaultKind.DRIVER_OPEN, FaultKind.CONTACT_RESISTANCE)
                .containsEntry(FaultKind.DRIVER_OPEN, 0.6 / 0.8);
        assertThat(CauseKinds.shares(ConfirmedCause.COIL_BURNT, true, dock))
                .isEqualTo(Map.of(FaultKind.DRIVER_OPEN, 1.0));
    }

    private static Suspect suspect(FaultKind kind, double probability) {
        return new Suspect(
                kind,
                "IN",
                "HF1",
                null,
                probability,
                org.docksweep.fleet.Reason.of("suspect-unknown"),
                org.docksweep.fleet.Reason.of("next-unknown"));
    }

    private static double probability(Explanation explanation) {
        return explanation.suspects().stream()
                        .filter(s -> s.kind() == FaultKind.CONTACT_RESISTANCE && "HF1".equals(s.positionCode()))
                        .mapToDouble(Suspect::probability)
                        .sum()
                * explanation.faultProbability();
    }

    private PriorTeacher.Lesson teach(List<PriorTeacher.Returns> returns, List<PriorTeacher.Confirmed> confirmed) {
        return PriorTeacher.teach(book, confirmed, returns, NOW, POLICY);
    }

    private List<PriorTeacher.Confirmed> joints(int count, Instant at) {
        return new ArrayList<>(Collections.nCopies(
                count,
                new PriorTeacher.Confirmed(
                        model.code(),
                        horn,
                        null,
                        ConfirmedCause.LEAD_IN_JOINT,
                        Map.of(FaultKind.CONTACT_RESISTANCE, 1.0),
                        at)));
    }

    private static PriorTeacher.Row row(PriorTeacher.Lesson lesson, FaultKind kind) {
        return lesson.rows().stream().filter(r -> r.kind() == kind).findFirst().orElseThrow();
    }

    private Knowledge knowledge(TestPoint point) {
        List<ReferenceTeacher.Unit> units = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            units.add(DrawnUnits.unit(book, CircuitFault.NONE, 0, 300 + i));
        }
        return Knowledge.nominal(book, model, point)
                .taughtBy(ReferenceTeacher.teach(book, model.code(), point.code(), units));
    }
}
