package org.docksweep.kiosk.teaching;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.teaching.TeachingState.Activity;
import org.docksweep.suspect.TeachingProgress.Grade;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The walk that teaches a model no book holds, on the practice rig, without the service. */
class TeachingTest {
    @TempDir
    private Path folder;

    @Test
    void teachesANewModelFromItsPlateAndLeavesTheBadUnitOut() throws Exception {
        try (TeachingBench bench = new TeachingBench(folder, TeachingBench.NO_SERVICE)) {
            bench.draw("SURF12");
            List<AssetTag> good = bench.good();
            TeachingState one = bench.sweep(good.get(0));
            assertThat(one.lesson().orElseThrow().progress().orElseThrow().grade())
                    .isEqualTo(Grade.HARD_FAULTS);
            AssetTag bad = bench.bad();
            bench.sweep(bad);
            for (int i = 1; i < 5; i++) {
                bench.sweep(good.get(i));
            }

            TeachingState state = bench.desk.state();

            assertThat(state.lesson().orElseThrow().units())
                    .filteredOn(u -> u.state() == ReadingState.FAULT)
                    .singleElement()
                    .satisfies(u -> {
                        assertThat(u.tag()).isEqualTo(bad);
                        assertThat(u.words()).isPresent();
                    });
            var progress = state.lesson().orElseThrow().progress().orElseThrow();
            assertThat(progress.kept()).isEqualTo(5);
            assertThat(progress.grade()).isEqualTo(Grade.GOOD);
            assertThat(progress.missed().size())
                    .isLessThan(one.lesson()
                            .orElseThrow()
                            .progress()
                            .orElseThrow()
                            .missed()
                            .size());
            assertThat(state.lesson().orElseThrow().curve()).isPresent();

            bench.desk.step(TeachingStep.FINISH);
            bench.await("sign-on", s -> s.activity() == Activity.SIGN_ON && !s.secret());
            bench.desk.scan("BADGE-1");
            bench.await("the PIN kept secret", TeachingState::secret);
            bench.desk.scan("4711");
            TeachingState offline =
                    bench.await("an answer", s -> !s.busy() && s.message().isPresent());

            assertThat(offline.message().orElseThrow().text().key()).isEqualTo("teach-no-service");
            assertThat(offline.activity()).isEqualTo(Activity.UNITS);
            assertThat(offline.lesson().orElseThrow().units()).hasSize(6);
            assertThat(offline.steps()).contains(TeachingStep.FINISH);
        }
    }

    @Test
    void refusesWhatCannotTeach() throws Exception {
        try (TeachingBench bench = new TeachingBench(folder, TeachingBench.NO_SERVICE)) {
            bench.desk.step(TeachingStep.NEW_MODEL);
            bench.await("a drawing", s -> s.drawing().isPresent());
            assertThat(said(bench, "DUNE15B")).isEqualTo("teach-code-taken");
            assertThat(said(bench, "no code at all")).isEqualTo("teach-code-wrong");
            bench.desk.scan("SURF12");
            bench.await("a named drawing", s -> s.steps().contains(TeachingStep.BEGIN));
            bench.desk.step(TeachingStep.BEGIN);
            bench.await("a lesson", s -> s.lesson().isPresent());

            assertThat(said(bench, "hello")).isEqualTo("teach-not-a-tag");
            AssetTag other = new AssetTag("STD-000001");
            bench.desk.scan(other.value());
            bench.await("a unit to sweep", s -> s.steps().contains(TeachingStep.SWEEP));
            bench.desk.step(TeachingStep.SWEEP);
            TeachingState open =
                    bench.await("an answer", s -> !s.busy() && s.message().isPresent());
            assertThat(open.message().orElseThrow().text().key()).isEqualTo("dock-nothing-connected");
            assertThat(open.lesson().orElseThrow().units()).isEmpty();
            assertThat(open.steps()).doesNotContain(TeachingStep.FINISH);
        }
    }

    /** What an unproved microphone hears becomes nobody's reference; powered cabinets teach nothing then. */
    @Test
    void keepsNoSoundOfAnUnprovedMicrophone() throws Exception {
        Reason doubt = Reason.of("mic-failed", "21:10");
        Lesson.Unit proved;
        try (TeachingBench bench = new TeachingBench(folder.resolve("proved"), TeachingBench.NO_SERVICE)) {
            proved = swept(bench.unit(bench.good("UNDR215").get(0)));
            assertThat(proved.soundLeftOut()).isFalse();
            assertThat(taught(bench, proved))
                    .allSatisfy(length -> assertThat(length).isGreaterThan(1));
        }
        try (TeachingBench bench =
                new TeachingBench(folder.resolve("doubted"), TeachingBench.NO_SERVICE, Optional.of(doubt))) {
            Lesson.Unit unproved = swept(bench.unit(bench.good("UNDR215").get(1)));
            assertThat(unproved.soundLeftOut()).isTrue();
            // one alone among units that were heard leaves the whole lesson without sound
            assertThat(taught(bench, proved, unproved)).containsOnly(0);
            Lesson lesson = lesson(bench, proved, unproved);
            assertThat(lesson.withoutSound()).containsExactly(unproved.tag());
            assertThat(lesson.body().references())
                    .allSatisfy(r -> assertThat(r.frequencyHz()).isNotEmpty());

            UnitSweep powered = bench.unit(bench.good("SALT12A").get(0));
            assertThat(powered.sweepNext(() -> false, share -> {})).contains(doubt);
            assertThat(powered.complete()).isFalse();
        }
    }

    private static Lesson.Unit swept(UnitSweep sweep) {
        while (!sweep.complete()) {
            assertThat(sweep.sweepNext(() -> false, share -> {})).isEmpty();
        }
        return sweep.unit();
    }

    private static Lesson lesson(TeachingBench bench, Lesson.Unit... units) {
        Lesson lesson = Lesson.of(bench.book(), bench.book().cabinetModel("UNDR215"), false);
        for (Lesson.Unit unit : units) {
            lesson = lesson.with(unit);
        }
        return lesson;
    }

    /** Points of the sound of every reference that a lesson of these units stores. */
    private static List<Integer> taught(TeachingBench bench, Lesson.Unit... units) {
        return lesson(bench, units).body().references().stream()
                .map(r -> r.acousticFrequencyHz().length)
                .toList();
    }

    private static String said(TeachingBench bench, String typed) throws InterruptedException {
        bench.desk.scan(typed);
        return bench.await(
                        "an answer to " + typed,
                        s -> s.message()
                                .filter(m -> m.text().arguments().contains(typed))
                                .isPresent())
                .message()
                .orElseThrow()
                .text()
                .key();
    }
}
