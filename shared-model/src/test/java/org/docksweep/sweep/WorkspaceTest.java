package org.docksweep.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

/** Arrays that are handed on from one analysis to the next, and that nobody notices. */
class WorkspaceTest {
    private static final int LARGE = 1 << 14;
    private static final long MOST_MADE_ANEW_BYTES = 12L << 20;

    @Test
    void handsOutZerosWhateverWasWrittenBefore() {
        double[] before;
        try (Workspace workspace = Workspace.open()) {
            before = workspace.zeros(LARGE);
            Arrays.fill(before, 7);
        }
        try (Workspace workspace = Workspace.open()) {
            double[] after = workspace.zeros(LARGE);
            assertThat(after).isSameAs(before).containsOnly(0.0).hasSize(LARGE);
            assertThat(workspace.zeros(LARGE)).isNotSameAs(after);
        }
    }

    @Test
    void handsOutAgainWhatWasGivenBackEarlyAndLeavesOthersAlone() {
        try (Workspace workspace = Workspace.open()) {
            double[] one = workspace.zeros(LARGE);
            double[] other = workspace.zeros(LARGE);
            double[] foreign = new double[LARGE];
            workspace.giveBack(foreign);
            workspace.giveBack(one);
            workspace.giveBack(one);
            assertThat(workspace.zeros(LARGE)).isSameAs(one);
            assertThat(workspace.zeros(LARGE))
                    .isNotSameAs(one)
                    .isNotSameAs(other)
                    .isNotSameAs(foreign);
        }
    }

    @Test
    void keepsTablesThatWereGivenUpFromAnAnalysisThatRuns() {
        double[] table = Workspace.table(LARGE);
        try (Workspace running = Workspace.open()) {
            Workspace.giveUp(table, null);
            List<double[]> seen = new ArrayList<>();
            for (int i = 0; i < 20; i++) {
                seen.add(running.zeros(LARGE));
            }
            assertThat(seen).noneMatch(array -> array == table);
        }
    }

    /** What is made anew lives long enough to have to be collected with everything else: 40 MB and more before. */
    @Test
    void analysesAgainWithoutMakingItsLargeArraysAnew() {
        Capture capture = new CaptureMaker()
                .plan(CaptureMaker.plan(20, 20000, 2.2, 1, 2))
                .noise(1e-4)
                .make();
        SweepAnalyser analyser = new SweepAnalyser();
        analyser.analyse(capture);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        SweepAnalysis second = analyser.analyse(capture);
        long made = threads.getCurrentThreadAllocatedBytes() - before;
        assertThat(second.load()).isEqualTo(SweepAnalysis.Load.PRESENT);
        assertThat(made).isLessThan(MOST_MADE_ANEW_BYTES);
    }

    /** More plans than tables are kept for, from two threads at once. */
    @Test
    void givesTheSameDigitsWhenAnalysesRunAtOnce() throws Exception {
        List<Capture> captures = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            captures.add(new CaptureMaker()
                    .plan(CaptureMaker.plan(60 + 10 * i, 8000, 0.5 + 0.1 * i, 1, 1))
                    .noise(1e-4)
                    .make());
        }
        List<ImpedanceCurve> alone = new ArrayList<>();
        for (Capture capture : captures) {
            alone.add(new SweepAnalyser().analyse(capture).impedance());
        }
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<ImpedanceCurve>> together = new ArrayList<>();
            for (int i = 0; i < 3 * captures.size(); i++) {
                Capture capture = captures.get(i % captures.size());
                together.add(
                        two.submit(() -> new SweepAnalyser().analyse(capture).impedance()));
            }
            for (int i = 0; i < together.size(); i++) {
                ImpedanceCurve expected = alone.get(i % captures.size());
                ImpedanceCurve found = together.get(i).get();
                assertThat(found.resistanceOhm()).containsExactly(expected.resistanceOhm());
                assertThat(found.reactanceOhm()).containsExactly(expected.reactanceOhm());
                assertThat(found.standardUncertaintyOhm()).containsExactly(expected.standardUncertaintyOhm());
            }
        } finally {
            two.shutdownNow();
        }
    }
}
