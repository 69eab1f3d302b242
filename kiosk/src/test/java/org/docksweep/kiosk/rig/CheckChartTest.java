package org.docksweep.kiosk.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class CheckChartTest {
    private static CheckChart chart(List<Double> shares) {
        return CheckChart.of("4.7 \u03a9", Collections.nCopies(shares.size(), Instant.EPOCH), shares);
    }

    private static List<Double> alternating(int count, double half) {
        List<Double> shares = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            shares.add(i % 2 == 0 ? half : -half);
        }
        return shares;
    }

    @Test
    void hasNoLimitsOfItsOwnForTheFirstEightReadings() {
        assertThat(chart(alternating(8, 0.001)).limits()).isEmpty();
        assertThat(chart(alternating(8, 0.001)).signalsNow()).isFalse();
    }

    @Test
    void setsLimitsByTheMovingRange() {
        // Moving range 0.002 throughout: centre +- 3 x 0.002 / 1.128 (NIST/SEMATECH e-Handbook 6.3.2.2).
        CheckChart.Limits limits = chart(alternating(9, 0.001)).limits().orElseThrow();

        assertThat(limits.centre()).isZero();
        assertThat(limits.upper()).isCloseTo(3 * 0.002 / 1.128, within(1e-12));
        assertThat(limits.lower()).isEqualTo(-limits.upper());
    }

    @Test
    void callsNothingASignalThatIsATenthOfTheLimitOrLess() {
        List<Double> steady = new ArrayList<>(Collections.nCopies(12, 0.0));
        steady.add(0.00049);

        assertThat(chart(steady).jumps(12)).isFalse();
        steady.set(12, 0.00051);
        assertThat(chart(steady).jumps(12)).isTrue();
    }

    @Test
    void seesASlowDriftBeforeAnySingleReadingIsOut() {
        List<Double> shares = alternating(20, 0.0005);
        for (int i = 0; i < 10; i++) {
            shares.add(0.0012);
        }
        CheckChart chart = chart(shares);

        assertThat(chart.jumps(29)).isFalse();
        assertThat(chart.drifts(29)).isTrue();
    }

    @Test
    void keepsItsLimitsWhenLaterReadingsStray() {
        List<Double> shares = alternating(21, 0.0005);
        CheckChart.Limits before = chart(shares).limits().orElseThrow();
        shares.addAll(Collections.nCopies(30, 0.004));

        assertThat(chart(shares).limits()).contains(before);
    }

    @Test
    void callsAPlugWornByMedianNotByOneDirtyPush() {
        List<Double> ohms = new ArrayList<>(List.of(0.001, 0.002, 0.001, 0.002, 0.060, 0.003));
        assertThat(trend(ohms).worn()).isFalse();

        ohms.addAll(List.of(0.022, 0.024, 0.023));
        assertThat(trend(ohms).riseOhm()).isCloseTo(0.022, within(1e-12));
        assertThat(trend(ohms).worn()).isTrue();
        assertThat(trend(ohms).words().key()).isEqualTo("rigpage-contact-worn");
    }

    private static ContactTrend trend(List<Double> ohms) {
        return new ContactTrend("1+ / 1-", Collections.nCopies(ohms.size(), Instant.EPOCH), ohms);
    }
}
