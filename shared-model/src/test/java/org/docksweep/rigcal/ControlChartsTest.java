package org.docksweep.rigcal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Outside values: NIST/SEMATECH e-Handbook of Statistical Methods, sections named at each test. */
class ControlChartsTest {
    /** Half a unit of the last printed digit. */
    private static final double PRINTED_4 = 0.5e-4 * 1.01;

    @Test
    void individualsChartHasThePublishedLimits() { // 6.3.2.2, flow rate
        double[] readings = CheckData.column("nist_individuals_6322.csv", 1);
        IndividualsChart chart = IndividualsChart.of(readings);
        assertThat(chart.centre()).isCloseTo(50.81, within(PRINTED_4));
        assertThat(chart.meanMovingRange()).isCloseTo(1.8778, within(PRINTED_4));
        assertThat(chart.upperLimit()).isCloseTo(55.8041, within(PRINTED_4));
        assertThat(chart.lowerLimit()).isCloseTo(45.8159, within(PRINTED_4));
        assertThat(chart.movingRangeLimit()).isCloseTo(3.267 * 1.8778, within(2e-4));
        assertThat(Arrays.stream(readings).noneMatch(chart::signals)).isTrue();
        assertThat(chart.signals(55.9)).isTrue();
        assertThat(chart.signals(Double.NaN)).isTrue();
    }

    @Test
    void ewmaChartHasThePublishedAverages() { // 6.3.2.4
        double[] readings = CheckData.column("nist_ewma_6324.csv", 1);
        double[] printed = CheckData.column("nist_ewma_6324.csv", 2);
        EwmaChart chart = new EwmaChart(50, 2.0539, 0.3, 3);
        assertThat(chart.upperLimit()).isCloseTo(52.5884, within(PRINTED_4));
        // The page prints 47.4115; unrounded it is 47.411568.
        assertThat(chart.lowerLimit()).isCloseTo(47.411568, within(1e-6));
        double[] averages = chart.averages(readings);
        for (int i = 0; i < printed.length; i++) {
            assertThat(averages[i]).isCloseTo(printed[i], within(0.0051));
        }
        assertThat(Arrays.stream(averages).noneMatch(chart::signals)).isTrue();
    }

    @Test
    void ewmaSeesTheDriftOfTheKilogramCheckStandardThatSingleReadingsHardlyShow() { // mpc3511, mpc3521, mpc3522
        double[] years = CheckData.column("nist_mass_check_standard.csv", 0);
        double[] values = CheckData.column("nist_mass_check_standard.csv", 2);
        int baseline = (int) Arrays.stream(years).filter(y -> y < 85).count();
        assertThat(baseline).isEqualTo(99);
        EwmaChart chart = new EwmaChart(-19.4785099, 0.0306523, 0.2, 3);
        assertThat(chart.lowerLimit()).isCloseTo(-19.509162, within(1e-6));
        assertThat(chart.upperLimit()).isCloseTo(-19.447858, within(1e-6));
        double[] averages = chart.averages(Arrays.copyOfRange(values, baseline, values.length));
        int first = 0;
        while (!chart.signals(averages[first])) {
            first++;
        }
        assertThat(years[baseline + first]).isEqualTo(86.513);
        assertThat(Arrays.stream(averages).filter(chart::signals).count()).isEqualTo(47);
    }

    @Test
    void refusesChartsThatCannotBe() {
        assertThatIllegalArgumentException().isThrownBy(() -> IndividualsChart.of(new double[] {1}));
        assertThatIllegalArgumentException().isThrownBy(() -> new EwmaChart(0, Double.NaN, 0.2, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> new EwmaChart(0, 1, 0, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> new EwmaChart(0, 1, 1.1, 3));
    }
}
