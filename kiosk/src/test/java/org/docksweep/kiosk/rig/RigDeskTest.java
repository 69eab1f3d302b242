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
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.docksweep.fleet.Reasons;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.rig.RigDeskState.Mode;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Walks on the virtual rig: real captures, with whatever plug a test puts in. */
class RigDeskTest {
    private static final long PATIENCE_S = 60;

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
                "A. Person",
                clock));
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
