package org.docksweep.kiosk.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.Reasons;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.rig.RigDeskState.Mode;
import org.docksweep.rigcal.RigStudy;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Walks on the virtual rig: real captures, with whatever plug a test puts in. */
class RigDeskTest {
    private static final long PATIENCE_S = 60;
    private static final StudyCabinet CABINET = new StudyCabinet(new AssetTag("MCH-000101"), point("IN", "1+ / 1-"));

    @TempDir
    private Path folder;

    private final SteppingClock clock = new SteppingClock();
    private final Deque<WalkStep> wrongPlugs = new ArrayDeque<>();
    private final LinkedBlockingQueue<RigDeskState> states = new LinkedBlockingQueue<>();
    private PracticeRig rig;
    private RigBook book;
    private RigDesk desk;

    @BeforeEach
    void opens() throws RigException, IOException {
        rig = (PracticeRig) Rigs.open("virtual", Map.of());
        start();
    }

    private void start() throws IOException {
        book = RigBook.open(folder, rig.id());
        StandardsHand right = StandardsHand.of(rig, StandardSet.practice());
        desk = new RigDesk(new RigDeskParts(
                rig,
                book,
                new RigStandings(book, clock, ZoneOffset.UTC),
                step -> right.plug(wrongPlugs.isEmpty() ? step : wrongPlugs.poll()),
                new RigSetUp(Map.of()),
                any -> StandardSet.practice(),
                null,
                (any, tone) -> LevelSource.ofProbes(rig),
                List::of,
                () -> "A. Person",
                clock,
                tag -> tag.value().equals("MCH-000101") ? Optional.of(CABINET) : Optional.empty()));
        desk.addListener(states::add);
    }

    private void stop() throws IOException {
        desk.close();
        book.close();
        states.clear();
    }

    @AfterEach
    void closes() throws IOException {
        stop();
        rig.close();
    }

    /** Does something and waits for the state that comes of it. */
    private RigDeskState after(Runnable action, Predicate<RigDeskState> wanted) {
        states.clear();
        action.run();
        List<RigDeskState> seen = new ArrayList<>();
        try {
            RigDeskState state = states.poll(PATIENCE_S, TimeUnit.SECONDS);
            while (state != null && !wanted.test(state)) {
                seen.add(state);
                state = states.poll(PATIENCE_S, TimeUnit.SECONDS);
            }
            assertThat(state).as("awaited state after %s", seen).isNotNull();
            return state;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private RigDeskState measured() {
        return after(desk::measure, s -> !s.sounding() && (s.message().isPresent()));
    }

    private RigDeskState calibrated() {
        after(desk::calibrate, s -> s.mode() == Mode.WALK);
        RigDeskState state = desk.state();
        while (!state.walk().orElseThrow().finished()) {
            int before = state.walk().orElseThrow().at();
            state = measured();
            assertThat(state.walk().orElseThrow().at())
                    .as("%s", state.message())
                    .isEqualTo(before + 1);
        }
        return state;
    }

    private static String key(RigDeskState state) {
        return state.message().orElseThrow().words().key();
    }

    @Test
    void isShutUntilCalibratedAndCheckedAndStaysOpenOverARestart() throws IOException {
        assertThat(desk.state().standingState()).isEqualTo(ReadingState.FAULT);

        RigDeskState done = calibrated();

        assertThat(done.standingState()).isEqualTo(ReadingState.OK);
        assertThat(done.walk().orElseThrow().steps())
                .extracting(RigDeskState.Step::step)
                .doesNotContain(WalkStep.COMMON_MODE);
        RigEntry.Checked check = book.newest(RigEntry.Checked.class).orElseThrow();
        assertThat(check.readings())
                .hasSize(2)
                .allSatisfy(r -> assertThat(r.worstShare()).isLessThan(RigDay.CHECK_LIMIT_SHARE));
        var kept = book.calibrationInForce().orElseThrow();
        stop();
        clock.pass(Duration.ofHours(2));
        start();
        assertThat(desk.state().standingState()).isEqualTo(ReadingState.OK);
        assertThat(desk.state().calibrated()).contains(kept);
    }

    @Test
    void saysWhatIsConnectedInsteadAndGoesOnWhenItIsPutRight() {
        after(desk::calibrate, s -> s.mode() == Mode.WALK);

        assertThat(keyWith(WalkStep.SHORT)).isEqualTo("rigpage-open-saw-short");
        assertThat(keyWith(WalkStep.LOAD)).isEqualTo("rigpage-open-saw-load");
        assertThat(key(measured())).isEqualTo("rigpage-open-good");
        assertThat(keyWith(WalkStep.OPEN)).isEqualTo("rigpage-short-saw-open");
        assertThat(keyWith(WalkStep.CHECK_RESISTOR)).isEqualTo("rigpage-short-saw-load");
        assertThat(key(measured())).isEqualTo("rigpage-short-good");
        assertThat(keyWith(WalkStep.OPEN)).isEqualTo("rigpage-load-saw-open");
        assertThat(keyWith(WalkStep.SHORT)).isEqualTo("rigpage-load-saw-short");
        assertThat(keyWith(WalkStep.CHECK_RESISTOR)).isEqualTo("rigpage-load-saw-other");
        assertThat(keyWith(WalkStep.CHECK_NETWORK)).isEqualTo("rigpage-load-saw-reactive");
        assertThat(book.entries()).isEmpty();
        assertThat(key(measured())).isEqualTo("rigpage-load-good");
        assertThat(keyWith(WalkStep.OPEN)).isEqualTo("rigpage-check-saw-open");
        assertThat(keyWith(WalkStep.SHORT)).isEqualTo("rigpage-check-saw-short");
        assertThat(keyWith(WalkStep.LOAD)).isEqualTo("rigpage-check-saw-load");
        assertThat(key(measured())).isEqualTo("rigpage-check-good");
        assertThat(keyWith(WalkStep.CHECK_RESISTOR)).isEqualTo("rigpage-check-saw-other");
        assertThat(desk.state().standingState()).isEqualTo(ReadingState.FAULT);
        assertThat(key(measured())).isEqualTo("rigpage-walk-passed");
    }

    private String keyWith(WalkStep plugged) {
        wrongPlugs.add(plugged);
        RigDeskState state = measured();
        int at = state.walk().orElseThrow().at();
        assertThat(state.walk().orElseThrow().steps().get(at).state()).isEqualTo(ReadingState.FAULT);
        for (Locale locale : new Locale[] {Locale.ENGLISH, Locale.GERMAN}) {
            assertThat(Reasons.text(state.message().orElseThrow().words(), locale))
                    .doesNotContain("{");
        }
        return key(state);
    }

    @Test
    void putsAFailedCheckOnRecordWhenTheStandardReadsFarOffTwice() {
        calibrated();
        after(desk::check, s -> s.mode() == Mode.WALK);
        measured();
        measured();
        wrongPlugs.addAll(List.of(WalkStep.CHECK_RESISTOR, WalkStep.CHECK_RESISTOR));

        assertThat(key(measured())).isEqualTo("rigpage-check-saw-other");
        RigDeskState state = measured();

        assertThat(key(state)).isEqualTo("rigpage-walk-failed");
        assertThat(state.standing().key()).isEqualTo("dock-rig-failed");
        assertThat(state.standingState()).isEqualTo(ReadingState.FAULT);
    }

    private static TestPoint point(String code, String contacts) {
        return new TestPoint(
                code,
                TestPointKind.TERMINALS,
                contacts,
                List.of("LF"),
                8,
                new LevelMask(List.of(new LevelMask.Point(40, 1), new LevelMask.Point(18_000, 1))),
                List.of(new NetworkElement.Resistor("R1", "in", "0", 8, 0.01)));
    }

    private RigDeskState studied() {
        RigDeskState state = desk.state();
        while (!state.walk().orElseThrow().finished()) {
            int before = state.walk().orElseThrow().at();
            state = measured();
            assertThat(state.walk().orElseThrow().at())
                    .as("%s", state.message())
                    .isEqualTo(before + 1);
        }
        return state;
    }

    @Test
    void studiesTheRepeatabilityWithTheCheckStandardsAndGivesItToTheGate() {
        assertThat(key(after(desk::study, s -> s.message().isPresent()))).isEqualTo("dock-rig-calibrate-first");
        calibrated();
        after(desk::study, s -> s.mode() == Mode.WALK);
        wrongPlugs.add(WalkStep.CHECK_NETWORK);
        assertThat(key(measured())).isEqualTo("rigpage-study-other-part");
        wrongPlugs.add(WalkStep.OPEN);
        assertThat(measured().walk().orElseThrow().at()).isZero();

        RigDeskState state = studied();

        assertThat(key(state)).isEqualTo("rigpage-study-good");
        RigEntry.Studied entry = book.newest(RigEntry.Studied.class).orElseThrow();
        assertThat(entry.parts()).containsExactly("4.7 \u03a9", "22 \u03a9 \u2016 4.7 \u00b5F");
        assertThat(state.studied()).contains(entry);
        RigStudy study = entry.study();
        assertThat(List.of(study.parts(), study.plugIns(), study.repeats())).containsExactly(2, 4, 2);
        // Contacts of the practice standards are always the same, so this is noise alone.
        assertThat(study.impedance().gaugeSpread()).isBetween(1e-7, 2e-4);
        assertThat(study.contact().gaugeSpread()).isLessThan(0.002);
        RigStanding standing = new RigStandings(book, clock, ZoneOffset.UTC).get();
        assertThat(standing.repeatability()).isEqualTo(study.summary());
        for (Locale locale : new Locale[] {Locale.ENGLISH, Locale.GERMAN}) {
            assertThat(Reasons.text(state.message().orElseThrow().words(), locale))
                    .contains("0.080 %")
                    .doesNotContain("{");
        }
    }

    @Test
    void takesACabinetForAPartAndHearsItsLevel() {
        calibrated();
        after(desk::study, s -> s.mode() == Mode.WALK);
        assertThat(key(after(
                        () -> desk.scanned(new AssetTag("MCH-999999")),
                        s -> s.message().isPresent())))
                .isEqualTo("rigpage-study-unknown");
        RigDeskState chosen =
                after(() -> desk.scanned(CABINET.tag()), s -> s.message().isPresent());
        assertThat(key(chosen)).isEqualTo("rigpage-study-cabinet");
        assertThat(chosen.walk().orElseThrow().checkNames().get(0)).isEqualTo("MCH-000101");
        assertThat(chosen.walk().orElseThrow().contacts()).isEqualTo("1+ / 1-");

        measured();
        measured();
        RigDeskState late =
                after(() -> desk.scanned(CABINET.tag()), s -> s.message().isPresent());
        assertThat(key(late)).isEqualTo("rigpage-study-too-late");
        RigDeskState state = studied();

        RigStudy study = state.studied().orElseThrow().study();
        // Plugs of cabinets have 0.03 to 0.15 ohm on this rig, standard deviation 0.035, four plug-ins.
        assertThat(study.contact().gaugeSpread()).isBetween(0.005, 0.1);
        assertThat(study.impedance().gaugeSpread()).isLessThan(8e-4);
        assertThat(study.summary().freedom()).isEqualTo(6);
    }

    @Test
    void saysThatAPoorRigIsPoorAndWidensWhatTheGateHolds() throws IOException {
        stop();
        rig = new WobblyRig(rig, 0.01);
        start();
        calibrated();
        after(desk::study, s -> s.mode() == Mode.WALK);
        ((WobblyRig) rig).wobble();

        RigDeskState state = studied();

        assertThat(key(state)).isEqualTo("rigpage-study-wide");
        RigStudy study = state.studied().orElseThrow().study();
        assertThat(study.impedance().reproducibility()).isBetween(0.004, 0.03);
        assertThat(study.impedance().repeatability()).isLessThan(5e-4);
        assertThat(study.summary().impedanceOf(2)).isGreaterThan(Knowledge.RIG_SHARE);
    }

    @Test
    void logsTheContactOfEveryPushOfThePlug() {
        calibrated();
        after(desk::check, s -> s.mode() == Mode.WALK);
        measured();
        after(desk::back, s -> s.walk().orElseThrow().at() == 0);
        after(desk::otherContacts, s -> s.walk().orElseThrow().contacts().equals("2+ / 2-"));
        RigDeskState state = measured();

        assertThat(state.contacts()).extracting(ContactTrend::contacts).containsExactly("1+ / 1-", "2+ / 2-");
        // The short of the virtual rig has the same contact every time.
        assertThat(state.contacts().get(0).ohms().get(0)).isCloseTo(0, within(0.001));
    }

    @Test
    void chartsEveryCheckAndShutsAfterAShift() {
        calibrated();
        for (int i = 0; i < 2; i++) {
            clock.pass(Duration.ofHours(10));
            after(desk::check, s -> s.mode() == Mode.WALK);
            measured();
            measured();
            measured();
        }
        assertThat(desk.state().charts())
                .hasSize(2)
                .allSatisfy(c -> assertThat(c.shares()).hasSize(3));

        clock.pass(Duration.ofHours(13));
        assertThat(after(desk::look, s -> true).standing().key()).isEqualTo("dock-rig-check-old");
    }

    @Test
    void refusesACheckWithoutACalibration() {
        RigDeskState state = after(desk::check, s -> s.message().isPresent());

        assertThat(state.mode()).isEqualTo(Mode.OVERVIEW);
        assertThat(key(state)).isEqualTo("dock-rig-calibrate-first");
    }

    @Test
    void takesAnotherLoadAndRefusesNonsense() {
        after(desk::calibrate, s -> s.mode() == Mode.WALK);
        assertThat(after(() -> desk.loadOhm(8.2), s -> true)
                        .walk()
                        .orElseThrow()
                        .loadOhm())
                .isEqualTo(8.2);
        RigDeskState refused = after(() -> desk.loadOhm(Double.NaN), s -> true);

        assertThat(refused.walk().orElseThrow().loadOhm()).isEqualTo(8.2);
        assertThat(key(refused)).isEqualTo("rigpage-number-range");
    }

    @Test
    void listensUntilStopped() {
        RigDeskState heard = after(
                () -> desk.listen(new RigSetUp(Map.of()), false),
                s -> !s.levels().isEmpty());
        assertThat(heard.sounding()).isTrue();
        assertThat(heard.levels()).extracting(ChannelLevel::name).contains("VOLTAGE", "CURRENT");
        assertThat(heard.levels().get(0).peakDbfs()).isBetween(-80.0, -10.0);

        RigDeskState silent = after(desk::stop, s -> !s.sounding());
        assertThat(silent.message()).isEmpty();
    }
}
