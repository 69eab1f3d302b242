package org.docksweep.demo.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.FaultKind;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.rigcal.RigRepeatability;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlans;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What a judgement says of the rig, and what it holds of it. */
class RigInTheJudgementTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-14T01:30:00Z"), ZoneOffset.UTC);
    private static final long SEED = 31;
    private static final int UNITS = 6;
    private static final RigRepeatability GOOD = new RigRepeatability(1e-4, 0.003, 0.05, 12);
    private static final RigRepeatability POOR = new RigRepeatability(0.02, 0.2, 2, 12);

    private static MicrophoneScene scene;

    @BeforeAll
    static void teach() throws RigException {
        scene = new MicrophoneScene("SPIN12", "IN", SEED);
    }

    private static Capture sweep(String name, VirtualCabinet unit, double wornOhm) throws RigException {
        VirtualRig rig = new VirtualRig(
                RigSettings.of(
                        Map.of("seed", Long.toString(SEED), "hallNoiseDb", "45", "wornOhm", Double.toString(wornOhm))),
                CLOCK);
        rig.plug(name, unit, scene.point().code());
        return rig.play(SweepPlans.dock(scene.point(), 48_000), scene.point().kind(), share -> {});
    }

    private static Optional<Reading> reading(CabinetJudgement judgement, ReadingKind kind) {
        return judgement.points().get(0).readings().stream()
                .filter(r -> r.kind() == kind)
                .findFirst();
    }

    @Test
    void tellsByHowMuchThePlugIsWorseToTenMilliohm() throws RigException {
        for (int n = 0; n < UNITS; n++) {
            VirtualCabinet unit = scene.unit(n);
            Baseline baseline = scene.baseline(unit, "unit-" + n);
            CabinetJudgement fresh = scene.judge(sweep("now-" + n, unit, 0), baseline);
            CabinetJudgement worn = scene.judge(sweep("now-" + n, unit, 0.1), baseline);

            assertThat(List.of(fresh.verdict(), worn.verdict())).containsOnly(Verdict.PASS);
            Reading before = reading(fresh, ReadingKind.PLUG_CONTACT).orElseThrow();
            Reading after = reading(worn, ReadingKind.PLUG_CONTACT).orElseThrow();
            assertThat(after.value() - before.value()).isCloseTo(0.1, within(0.01));
            // Plugs of this rig have 0.03 to 0.15 ohm; the baseline's counts as the usual 0.06.
            assertThat(before.value()).isBetween(-0.1, 0.25);
            assertThat(before.standardUncertainty()).isBetween(0.005, 0.05);
        }
    }

    @Test
    void saysNothingOfThePlugWhereUnitsDifferByMore() throws RigException {
        CabinetJudgement byReference = scene.judge(sweep("unit-1", scene.unit(1), 0), null);

        assertThat(byReference.verdict()).isEqualTo(Verdict.PASS);
        assertThat(reading(byReference, ReadingKind.PLUG_CONTACT)).isEmpty();
    }

    @Test
    void judgesAsBeforeOnARigThatRepeatsWell() throws RigException {
        VirtualCabinet unit = scene.unit(1);
        Baseline baseline = scene.baseline(unit, "unit-1");
        VirtualCabinet faulty = unit.with(Fault.of(FaultKind.DRIVER_OPEN, "HF", 1));
        for (VirtualCabinet cabinet : List.of(unit, faulty)) {
            Capture capture = sweep("now-1", cabinet, 0);
            CabinetJudgement unstudied = scene.judge(capture, baseline);
            CabinetJudgement studied = scene.judge(capture, baseline, GOOD);

            assertThat(reading(unstudied, ReadingKind.RIG_REPEATABILITY)).isEmpty();
            Reading held = reading(studied, ReadingKind.RIG_REPEATABILITY).orElseThrow();
            assertThat(held.value()).isEqualTo(0.08);
            assertThat(held.state()).isEqualTo(ReadingState.OK);
            assertThat(studied.reason()).isEqualTo(unstudied.reason());
            assertThat(studied.suspects()).isEqualTo(unstudied.suspects());
            assertThat(studied.points().get(0).readings().stream()
                            .filter(r -> r.kind() != ReadingKind.RIG_REPEATABILITY))
                    .containsExactlyElementsOf(unstudied.points().get(0).readings());
        }
    }

    @Test
    void believesAPoorRigLessAndWritesDownWhatItHeld() throws RigException {
        VirtualCabinet unit = scene.unit(1);
        Baseline baseline = scene.baseline(unit, "unit-1");
        Capture capture = sweep("now-1", unit, 0.35);

        CabinetJudgement unstudied = scene.judge(capture, baseline);
        CabinetJudgement poor = scene.judge(capture, baseline, POOR);

        // 0.35 ohm more are a fault of the contact where plugs are known to repeat, and nothing where they do not.
        assertThat(unstudied.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(poor.verdict()).isEqualTo(Verdict.PASS);
        Reading held = reading(poor, ReadingKind.RIG_REPEATABILITY).orElseThrow();
        // 2 % times root 2 for two sweeps times t(12) / 1.96 = 2.179 / 1.96.
        assertThat(held.value()).isCloseTo(2 * Math.sqrt(2) * 2.179 / 1.96, within(0.01));
        assertThat(held.state()).isEqualTo(ReadingState.WATCH);
        assertThat(held.reference()).isEqualTo(0.08);
        assertThat(poor.points().get(0).readings())
                .filteredOn(r -> r.kind() == ReadingKind.WAY_LEVEL)
                .isNotEmpty()
                .allSatisfy(r -> assertThat(r.standardUncertainty()).isGreaterThan(2));
    }
}
