package org.docksweep.rigcal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.hipparchus.stat.StatUtils;
import org.junit.jupiter.api.Test;

class RepeatabilityStudyTest {
    private static final String CHECK_STANDARD_140 = "nist_gauge_chkstd140_probe2362.csv";
    private static final String CHECK_STANDARDS = "nist_gauge_check_standards_probe2362.csv";
    /** Half a unit of the last published digit. */
    private static final double LAST_DIGIT = 0.5e-4;

    private static final long SEED = 20261124;

    /** NIST/SEMATECH e-Handbook 2.4.4 (mpc442): day-to-day standard deviations of two runs and their pool. */
    @Test
    void poolsTheDaysOfTheNistCheckStandardAsPublished() {
        double[] averages = CheckData.column(CHECK_STANDARD_140, 7);
        double one = Math.sqrt(StatUtils.variance(Arrays.copyOfRange(averages, 0, 6)));
        double two = Math.sqrt(StatUtils.variance(Arrays.copyOfRange(averages, 6, 12)));
        assertThat(one).isCloseTo(0.027280, within(0.5e-5));
        assertThat(two).isCloseTo(0.027560, within(0.5e-5));
        assertThat(RepeatabilityStudy.pooled(new double[] {one, two}, 5)).isCloseTo(0.02742, within(0.5e-5));
    }

    /** The case study of the handbook, 2.6: level-1 repeatability of probe 2362 from all repeats, 0.0729 with 300 df. */
    @Test
    void poolsTheRepeatsOfTheNistCaseStudyAsPublished() {
        double[] deviations = CheckData.column(CHECK_STANDARDS, 4);
        assertThat(deviations).hasSize(60);
        assertThat(RepeatabilityStudy.pooled(deviations, 5)).isCloseTo(0.0729, within(LAST_DIGIT));
    }

    /**
     * The same data as a study of 5 wafers, 2 runs, 6 days: with days as repeats the repeatability is the published level-2
     * standard deviation, 0.0362 with 50 df.
     */
    @Test
    void findsTheLevelTwoDeviationOfTheNistCaseStudyAsItsRepeatability() {
        double[] wafer = CheckData.column(CHECK_STANDARDS, 0);
        double[] run = CheckData.column(CHECK_STANDARDS, 1);
        double[] average = CheckData.column(CHECK_STANDARDS, 3);
        double[][][] readings = new double[5][2][6];
        int[][] filled = new int[5][2];
        for (int i = 0; i < average.length; i++) {
            int p = (int) wafer[i] - 138;
            int o = (int) run[i] - 1;
            readings[p][o][filled[p][o]++] = average[i];
        }
        RepeatabilityStudy study = RepeatabilityStudy.of(readings);
        assertThat(study.repeatability()).isCloseTo(0.0362, within(LAST_DIGIT));
        assertThat(study.repeatFreedom()).isEqualTo(50);
        assertThat(study.repeatabilityLow()).isLessThan(0.0362);
        assertThat(study.repeatabilityHigh()).isGreaterThan(0.0362);
        assertThat(study.partSpread()).isGreaterThan(study.gaugeSpread());
    }

    /** Worked by hand: cells 1,3 / 2,4 / 7,9 / 8,10 give MSe 2, MSpo 0, MSo 2, MSp 72. */
    @Test
    void followsTheExpectedMeanSquares() {
        RepeatabilityStudy study = RepeatabilityStudy.of(new double[][][] {{{1, 3}, {2, 4}}, {{7, 9}, {8, 10}}});
        assertThat(study.mean()).isCloseTo(5.5, within(1e-12));
        assertThat(study.repeatability()).isCloseTo(Math.sqrt(2), within(1e-12));
        assertThat(study.reproducibility()).isCloseTo(Math.sqrt(2.0 / 4), within(1e-12));
        assertThat(study.partSpread()).isCloseTo(Math.sqrt(72.0 / 4), within(1e-12));
        assertThat(study.gaugePercent()).isCloseTo(100 * Math.sqrt(2.5 / 20.5), within(1e-9));
        assertThat(study.guardUncertainty(2, 0.5)).isCloseTo(Math.sqrt(1 + 0.5 + 0.25), within(1e-12));
    }

    @Test
    void findsTheComponentsPutIn() {
        Random random = new Random(SEED);
        double[][][] readings = new double[200][40][3];
        double[] operators =
                random.doubles(40).map(u -> 0.3 * Math.sqrt(12) * (u - 0.5)).toArray();
        for (double[][] part : readings) {
            double level = 8 + random.nextGaussian();
            for (int o = 0; o < part.length; o++) {
                for (int r = 0; r < 3; r++) {
                    part[o][r] = level + operators[o] + 0.1 * random.nextGaussian();
                }
            }
        }
        RepeatabilityStudy study = RepeatabilityStudy.of(readings);
        assertThat(study.repeatability()).isCloseTo(0.1, within(0.002));
        // 40 operators know their own spread to 1/sqrt(78) = 11 %, three times that
        assertThat(study.reproducibility()).isCloseTo(0.3, within(0.1));
        assertThat(study.operatorSignificance()).isLessThan(1e-6);
    }

    @Test
    void refusesAStudyWithHoles() {
        assertThatThrownBy(() -> RepeatabilityStudy.of(new double[][][] {{{1, 2}, {1, 2}}, {{1, 2}, {1}}}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("part 2");
        assertThatThrownBy(() -> RepeatabilityStudy.of(new double[][][] {{{1, 2}}}))
                .hasMessageContaining("at least 2 parts");
        assertThatThrownBy(() -> RepeatabilityStudy.of(new double[][][] {{{1, 2}, {1, 2}}, {{1, 2}, {1, Double.NaN}}}))
                .hasMessageContaining("not a number");
    }
}
