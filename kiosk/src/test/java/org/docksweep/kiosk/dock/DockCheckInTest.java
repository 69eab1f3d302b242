package org.docksweep.kiosk.dock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.docksweep.kiosk.dock.SmallHouse.BIAMPED;
import static org.docksweep.kiosk.dock.SmallHouse.FIRST;
import static org.docksweep.kiosk.dock.SmallHouse.SECOND;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import org.docksweep.contract.CheckInBody;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.dock.DockState.TagPrint;
import org.docksweep.kiosk.printing.PrintResult;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.rigcal.RigRepeatability;
import org.docksweep.sweep.CurveCorrection;
import org.docksweep.sweep.QualityIssue;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalysis;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DockCheckInTest {
    @TempDir
    Path folder;

    private DockBench bench;

    @BeforeEach
    void open() {
        bench = new DockBench(folder);
    }

    @AfterEach
    void close() {
        bench.close();
    }

    @Test
    void sendsHealthyCabinetToItsShelf() throws InterruptedException {
        bench.gate.pass();
        DockState state = bench.checkIn(FIRST);
        DockState.Answer answer = state.answer().orElseThrow();
        assertThat(answer.verdict()).contains(Verdict.PASS);
        assertThat(answer.route()).contains(Route.SHELF);
        assertThat(answer.place()).isEqualTo("shelf C-04");
        assertThat(answer.jobCode()).isEmpty();
        assertThat(state.returns().orElseThrow().back()).isEqualTo(1);
        assertThat(bench.gate.plans).containsExactly("probe LF", "sweep LF");
        CheckInBody body = onlyCheckIn();
        assertThat(body.tag()).isEqualTo(FIRST);
        assertThat(body.operator()).isEqualTo("Ines");
        assertThat(body.returnListId()).isEqualTo(SmallHouse.LIST);
        assertThat(body.measurements()).hasSize(1);
        assertThat(body.measurements().get(0).recordingSha256()).hasSize(64);
        assertThat(bench.spool.outbox().counts().waiting())
                .as("its recording and itself")
                .isEqualTo(2);
    }

    @Test
    void sendsFailingCabinetToBenchWithTag() throws InterruptedException {
        bench.gate.fail();
        bench.checkIn(FIRST);
        DockState state = bench.await(
                "the tag",
                s -> s.answer()
                        .filter(a -> a.tagPrint() == TagPrint.SAVED_TO_FOLDER)
                        .isPresent());
        assertThat(state.answer().orElseThrow().route()).contains(Route.BENCH);
        assertThat(state.answer().orElseThrow().jobCode().orElseThrow().value()).isEqualTo("J01-00001");
        assertThat(bench.tags).singleElement().satisfies(tag -> {
            assertThat(tag.checkIn().tag()).isEqualTo(FIRST);
            assertThat(tag.checkIn().faultPositionCode()).isEqualTo("LF");
            assertThat(tag.needOn()).as("from the kiosk's copy").isEqualTo(LocalDate.parse("2026-05-09"));
        });
    }

    @Test
    void tellsWhenTagCannotBePrintedAndPrintsItAgain() throws InterruptedException {
        bench.printResult = new PrintResult(PrintResult.Outcome.FAILED, null, "no paper");
        bench.gate.fail();
        bench.checkIn(FIRST);
        DockState failed = bench.notice("dock-tag-not-printed");
        assertThat(failed.notice().orElseThrow().text().arguments()).contains("no paper");
        bench.printResult = new PrintResult(PrintResult.Outcome.PRINTED, Path.of("tag.pdf"), "");
        bench.dock.printTag();
        bench.await(
                "the second print",
                s -> s.answer().filter(a -> a.tagPrint() == TagPrint.PRINTED).isPresent());
        assertThat(bench.tags).hasSize(2);
        assertThat(bench.spool.checkIns()).hasSize(1);
    }

    @ParameterizedTest
    @EnumSource(
            value = VisualItem.class,
            names = {"RIGGING", "MAINS_INLET"})
    void holdsUnsafeCabinetWithoutSweepingIt(VisualItem damage) throws InterruptedException {
        bench.look(FIRST);
        bench.dock.lookedOver(Set.of(damage, VisualItem.WET));
        DockState.Answer answer = bench.answer(FIRST).answer().orElseThrow();
        assertThat(answer.route()).contains(Route.SAFETY_HOLD);
        assertThat(answer.verdict()).isEmpty();
        assertThat(bench.rig.plays).hasValue(0);
        assertThat(onlyCheckIn().visualDamage()).contains(damage);
    }

    @Test
    void holdsWetCabinetForAPersonWithoutSweepingIt() throws InterruptedException {
        bench.look(FIRST);
        bench.dock.lookedOver(Set.of(VisualItem.WET));
        DockState.Answer answer = bench.answer(FIRST).answer().orElseThrow();
        assertThat(answer.route()).contains(Route.MANUAL_HOLD);
        assertThat(answer.reason().key()).isEqualTo("dock-wet");
        assertThat(bench.rig.plays).hasValue(0);
    }

    @Test
    void givesWatchMarkToPassingCabinetWithDentedGrille() throws InterruptedException {
        bench.gate.pass();
        bench.look(FIRST);
        bench.dock.lookedOver(Set.of(VisualItem.GRILLE));
        DockState.Answer answer = bench.answer(FIRST).answer().orElseThrow();
        assertThat(answer.route()).contains(Route.SHELF);
        assertThat(answer.watch()).isTrue();
    }

    @Test
    void asksToPlugWhenNoCurrentFlowsAndSweepsAfterwards() throws InterruptedException {
        bench.gate.probe(SweepAnalysis.Load.OPEN).pass();
        bench.look(FIRST);
        bench.dock.lookedOver(Set.of());
        DockState asked = bench.await("the prompt to plug", s -> s.phase() == Phase.PLUG);
        assertThat(asked.answer().orElseThrow().prompt()).isEqualTo(Prompt.PLUG_IN);
        assertThat(asked.answer().orElseThrow().route()).isEmpty();
        assertThat(bench.spool.checkIns()).isEmpty();
        bench.dock.plugged();
        assertThat(bench.answer(FIRST).answer().orElseThrow().route()).contains(Route.SHELF);
        assertThat(bench.gate.plans).containsExactly("probe LF", "probe LF", "sweep LF");
    }

    @Test
    void sweepsOpenTestPointQuietlyAndLetsTheWholeCabinetDecide() throws InterruptedException {
        bench.gate.pass(); // LF
        bench.gate.probe(SweepAnalysis.Load.OPEN).probe(SweepAnalysis.Load.OPEN);
        bench.gate.judge(Verdict.FAIL, Prompt.NONE, ScriptedGate.BROKEN);
        bench.look(BIAMPED);
        bench.dock.lookedOver(Set.of());
        bench.await("the prompt to plug", s -> s.phase() == Phase.PLUG);
        bench.dock.plugged();
        assertThat(bench.answer(BIAMPED).answer().orElseThrow().route()).contains(Route.BENCH);
        assertThat(bench.gate.plans).containsExactly("probe LF", "sweep LF", "probe HF", "probe HF", "quiet HF");
        assertThat(onlyCheckIn().measurements()).hasSize(2);
    }

    @Test
    void holdsCabinetInWhichNothingIsEverConnected() throws InterruptedException {
        bench.gate.probe(SweepAnalysis.Load.OPEN).probe(SweepAnalysis.Load.OPEN);
        bench.gate.judge(Verdict.SWEEP_AGAIN, Prompt.PLUG_IN, ScriptedGate.DOUBT);
        bench.look(FIRST);
        bench.dock.lookedOver(Set.of());
        bench.await("the prompt to plug", s -> s.phase() == Phase.PLUG);
        bench.dock.plugged();
        assertThat(bench.answer(FIRST).answer().orElseThrow().route()).contains(Route.MANUAL_HOLD);
    }

    @ParameterizedTest
    @EnumSource(
            value = QualityIssue.class,
            names = {"CLIPPED", "TOO_SHORT", "SILENT", "CHANNEL_DEAD"})
    void repeatsSpoiledProbesTwiceThenHoldsAndSaysWhy(QualityIssue issue) throws InterruptedException {
        for (int i = 0; i < 3; i++) {
            bench.gate.probe(SweepAnalysis.Load.UNKNOWN, issue);
        }
        DockState state = bench.checkIn(FIRST);
        assertThat(state.answer().orElseThrow().route()).contains(Route.MANUAL_HOLD);
        assertThat(state.answer().orElseThrow().reason()).isEqualTo(Reason.of("dock-scan-read", issue.name()));
        assertThat(bench.rig.plays).hasValue(3);
        assertThat(bench.tags).isEmpty();
    }

    @Test
    void repeatsSpoiledSweepTwiceThenLeavesItToAPerson() throws InterruptedException {
        for (int i = 0; i < 3; i++) {
            bench.gate.probe(SweepAnalysis.Load.PRESENT);
            bench.gate.judge(Verdict.SWEEP_AGAIN, Prompt.SWEEP_AGAIN, ScriptedGate.SPOILED);
        }
        DockState.Answer answer = bench.checkIn(FIRST).answer().orElseThrow();
        assertThat(answer.route()).contains(Route.MANUAL_HOLD);
        assertThat(answer.reason()).isEqualTo(ScriptedGate.SPOILED);
        assertThat(onlyCheckIn().measurements()).extracting(m -> m.attempt()).containsExactly(1, 2, 3);
    }

    @Test
    void passesCabinetWhoseSecondSweepIsClean() throws InterruptedException {
        bench.gate.probe(SweepAnalysis.Load.PRESENT);
        bench.gate
                .judge(Verdict.SWEEP_AGAIN, Prompt.SWEEP_AGAIN, ScriptedGate.SPOILED)
                .pass();
        assertThat(bench.checkIn(FIRST).answer().orElseThrow().route()).contains(Route.SHELF);
        assertThat(onlyCheckIn().measurements()).hasSize(2);
    }

    @Test
    void asksForTheSocketOnceThenHolds() throws InterruptedException {
        for (int i = 0; i < 2; i++) {
            bench.gate.probe(SweepAnalysis.Load.PRESENT);
            bench.gate.judge(Verdict.SWEEP_AGAIN, Prompt.CHECK_SOCKET, ScriptedGate.DOUBT);
        }
        bench.look(FIRST);
        bench.dock.lookedOver(Set.of());
        bench.await(
                "the prompt for the socket",
                s -> s.answer().filter(a -> a.prompt() == Prompt.CHECK_SOCKET).isPresent());
        bench.dock.plugged();
        assertThat(bench.answer(FIRST).answer().orElseThrow().route()).contains(Route.MANUAL_HOLD);
        bench.gate.assertAllUsed();
    }

    @Test
    void recordsNothingForAWrongLabelOnceTheRightOneIsScanned() throws InterruptedException {
        bench.gate.probe(SweepAnalysis.Load.PRESENT);
        bench.gate
                .judge(Verdict.SWEEP_AGAIN, Prompt.CHECK_LABEL, ScriptedGate.DOUBT)
                .pass();
        bench.look(FIRST);
        bench.dock.lookedOver(Set.of());
        bench.await(
                "the prompt for the label",
                s -> s.answer().filter(a -> a.prompt() == Prompt.CHECK_LABEL).isPresent());
        bench.checkIn(SECOND);
        assertThat(onlyCheckIn().tag()).isEqualTo(SECOND);
    }

    @Test
    void asksForTheLabelOnlyAfterTheLastContacts() throws InterruptedException {
        bench.gate.probe(SweepAnalysis.Load.PRESENT).judge(Verdict.SWEEP_AGAIN, Prompt.CHECK_LABEL, ScriptedGate.DOUBT);
        bench.gate.fail(); // both together: the other contacts bear the label out
        bench.look(BIAMPED);
        bench.dock.lookedOver(Set.of());
        DockState answer = bench.answer(BIAMPED);
        assertThat(answer.answer().orElseThrow().route()).contains(Route.BENCH);
        assertThat(bench.gate.plans).containsExactly("probe LF", "sweep LF", "probe HF", "sweep HF");
    }

    @Test
    void leavesToAPersonWhatTheGateCannotJudge() throws InterruptedException {
        bench.gate.probe(SweepAnalysis.Load.PRESENT);
        bench.gate.judge(Verdict.PASS, Prompt.PERSON_DECIDES, ScriptedGate.DOUBT);
        assertThat(bench.checkIn(FIRST).answer().orElseThrow().route()).contains(Route.MANUAL_HOLD);
    }

    @Test
    void stopsAtOnceAndRecordsNothingUntilThePersonDecides() throws InterruptedException {
        bench.gate.probe(SweepAnalysis.Load.PRESENT).pass();
        bench.look(FIRST);
        bench.rig.waitInPlayback();
        bench.dock.lookedOver(Set.of());
        bench.rig.awaitPlayback();
        bench.dock.stop();
        DockState stopped = bench.await(
                "the stop",
                s -> s.answer()
                        .filter(a -> a.reason().key().equals("dock-stopped"))
                        .isPresent());
        assertThat(stopped.answer().orElseThrow().route()).isEmpty();
        assertThat(bench.rig.stopsHeard.get()).isPositive();
        assertThat(bench.spool.checkIns()).isEmpty();
        bench.gate.probes.poll();
        bench.dock.sweepAgain();
        assertThat(bench.answer(FIRST).answer().orElseThrow().route()).contains(Route.SHELF);
        assertThat(onlyCheckIn().measurements()).hasSize(1);
    }

    @Test
    void tellsWhatTheRigSaysAndHoldsWhenThePersonWantsIt() throws InterruptedException {
        Reason unplugged = Reason.of("dock-rig-refused", "interface unplugged");
        bench.rig.failNext(new RigException(RigException.Cause.DEVICE_LOST, unplugged));
        bench.look(FIRST);
        bench.dock.lookedOver(Set.of());
        bench.await(
                "the rig's words",
                s -> s.answer().filter(a -> a.reason().equals(unplugged)).isPresent());
        bench.dock.holdForPerson();
        DockState.Answer answer = bench.answer(FIRST).answer().orElseThrow();
        assertThat(answer.route()).contains(Route.MANUAL_HOLD);
        assertThat(answer.reason().key()).isEqualTo("dock-held-by-person");
    }

    @Test
    void sweepsNothingOnARigThatFailedItsCheck() throws InterruptedException {
        bench.standing =
                new RigStanding(Reason.of("dock-rig-failed", "21:10"), ReadingState.FAULT, CurveCorrection.NONE);
        bench.look(FIRST);
        bench.dock.lookedOver(Set.of());
        DockState state = bench.notice("dock-rig-check-failed");
        assertThat(state.phase()).isEqualTo(Phase.LOOK);
        assertThat(bench.rig.plays).hasValue(0);
    }

    @Test
    void sweepsNoPoweredCabinetWithAMicrophoneThatIsNotProvedButGoesOnWithOthers() throws InterruptedException {
        try (DockBench powered =
                new DockBench(folder.resolve("powered"), true, Duration.ZERO, SmallHouse.withPowered())) {
            Reason doubt = Reason.of("mic-failed", "21:10");
            powered.standing = new RigStanding(
                    Reason.of("dock-mic-failed", "21:10"),
                    ReadingState.WATCH,
                    CurveCorrection.NONE,
                    Reason.of("dock-rig-check-failed"),
                    RigRepeatability.UNKNOWN,
                    Optional.of(doubt));
            powered.look(SECOND);
            powered.dock.lookedOver(Set.of());
            DockState state = powered.notice("mic-failed");
            assertThat(state.phase()).isEqualTo(Phase.LOOK);
            assertThat(powered.rig.plays).hasValue(0);
            powered.dock.holdForPerson();
            powered.answer(SECOND);

            powered.gate.pass();
            powered.look(FIRST);
            powered.dock.lookedOver(Set.of());
            assertThat(powered.answer(FIRST).answer().orElseThrow().route()).contains(Route.SHELF);
            assertThat(powered.gate.asked.get(0).microphoneDoubt()).contains(doubt);
        }
    }

    @Test
    void remindsOfAnElectricalSafetyTestWithTheAnswerAndBlocksNothing() throws InterruptedException {
        try (DockBench powered =
                new DockBench(folder.resolve("powered"), true, Duration.ZERO, SmallHouse.withPowered())) {
            powered.gate.pass();
            powered.look(SECOND);
            powered.dock.lookedOver(Set.of());
            DockState state = powered.answer(SECOND);

            assertThat(state.answer().orElseThrow().route()).contains(Route.SHELF);
            assertThat(state.notice().orElseThrow().text())
                    .isEqualTo(Reason.of("dock-safety-test-due", SECOND.value(), "2026-05-20"));
        }
    }

    @Test
    void asksForTheNextSocketWhenThePersonMovesTheLead() throws InterruptedException {
        try (DockBench byHand = new DockBench(folder.resolve("by-hand"), false, Duration.ZERO, SmallHouse.fleet())) {
            byHand.gate.pass().pass();
            byHand.look(BIAMPED);
            byHand.dock.lookedOver(Set.of());
            DockState asked = byHand.await("the next socket", s -> s.phase() == Phase.PLUG);
            assertThat(asked.answer().orElseThrow().reason()).isEqualTo(Reason.of("dock-plug-next", "pair HF"));
            byHand.dock.plugged();
            assertThat(byHand.answer(BIAMPED).answer().orElseThrow().route()).contains(Route.SHELF);
        }
    }

    @Test
    void recordsNothingWhenTheGateItselfBreaks() throws InterruptedException {
        bench.gate.probe(SweepAnalysis.Load.PRESENT);
        bench.look(FIRST);
        bench.dock.lookedOver(Set.of());
        DockState state = bench.notice("dock-defect");
        assertThat(state.notice().orElseThrow().text().arguments().get(0)).contains("no further judgement");
        assertThat(bench.spool.checkIns()).isEmpty();
        bench.gate.pass();
        assertThat(bench.checkIn(FIRST).answer().orElseThrow().route()).contains(Route.SHELF);
    }

    private CheckInBody onlyCheckIn() {
        assertThat(bench.spool.checkIns()).hasSize(1);
        return bench.spool.checkIns().get(0);
    }
}
