package org.docksweep.kiosk.teaching;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.docksweep.fleet.AssetTag;
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
