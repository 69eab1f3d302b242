package org.docksweep.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.CRC32;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Five simulated years with a known truth, 200 seeds; beside them the likelihood intervals of another tool. */
class RecoveryStudyTest {
    private static final int SEEDS = 200;
    private static final double WANTED_COVERAGE = 0.93;
    private static final double WIDEST_RATIO = 1.2;
    /** The other tool's optimiser stops about here. */
    private static final double AGREEMENT = 2e-4;

    private static List<RecoveryStudy.Run> runs;
    private static List<String[]> other;

    @BeforeAll
    static void fitsAllSeeds() {
        runs = RecoveryStudy.run(RecoveryStudy.TRUTH, RecoveryStudy.POSITIONS, SEEDS);
        other = LifeData.rows("weibull_scipy.csv");
    }

    @ParameterizedTest
    @EnumSource(RecoveryStudy.Figure.class)
    void holdsTheTruthAsOftenAsItSays(RecoveryStudy.Figure figure) {
        assertThat(figure.covered(runs, RecoveryStudy.TRUTH)).isGreaterThanOrEqualTo((int) (WANTED_COVERAGE * SEEDS));
    }

    @ParameterizedTest
    @EnumSource(RecoveryStudy.Figure.class)
    void isNotMuchWiderThanTheOtherTool(RecoveryStudy.Figure figure) {
        double[] widths = other.stream()
                .mapToDouble(row -> value(row, column(figure) + 1) - value(row, column(figure)))
                .sorted()
                .toArray();

        double ratio = figure.medianWidth(runs, RecoveryStudy.Run::fit) / widths[widths.length / 2];

        assertThat(ratio).isLessThanOrEqualTo(WIDEST_RATIO).isGreaterThan(1);
    }

    @Test
    void agreesWithTheOtherToolOnEverySeed() {
        assertThat(other).hasSize(SEEDS);
        for (int i = 0; i < SEEDS; i++) {
            String[] row = other.get(i);
            RecoveryStudy.Run run = runs.get(i);
            assertThat(crc(RecoveryStudy.text(run.lives())))
                    .as("lives of seed %s", row[0])
                    .isEqualTo(Long.parseLong(row[1]));
            close(run.plain().weibull().shape(), value(row, 2), row[0]);
            close(run.plain().weibull().scale(), value(row, 3), row[0]);
            for (RecoveryStudy.Figure figure : RecoveryStudy.Figure.values()) {
                close(figure.of(run.plain()).lower(), value(row, column(figure)), row[0]);
                close(figure.of(run.plain()).upper(), value(row, column(figure) + 1), row[0]);
            }
        }
    }

    private static void close(double ours, double theirs, String seed) {
        assertThat(ours).as("seed %s", seed).isCloseTo(theirs, within(AGREEMENT * theirs));
    }

    private static int column(RecoveryStudy.Figure figure) {
        return 4 + 2 * figure.ordinal();
    }

    private static double value(String[] row, int column) {
        return Double.parseDouble(row[column]);
    }

    private static long crc(String text) {
        CRC32 crc = new CRC32();
        crc.update(text.getBytes(StandardCharsets.UTF_8));
        return crc.getValue();
    }
}
