package org.docksweep.gate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.docksweep.fleet.AssetTag;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;
import org.junit.jupiter.api.Test;

/** The mismatch against its definition, worked by hand, and against units drawn from the spread it divides by. */
class LikenessTest {
    private static final double[] HZ = {100, 200, 400, 800};
    private static final double SPREAD_LOG = 0.02;
    private static final double SPREAD_DB = 0.5;

    private static Baseline unit(double[] ohm, double[] levelDb) {
        double[] none = new double[ohm.length];
        return new Baseline(
                new AssetTag("MCH-000001"),
                "IN",
                Instant.parse("2026-03-01T08:00:00Z"),
                20.0,
                new ImpedanceCurve(HZ, ohm, none, none),
                levelDb == null ? null : new AcousticCurve(HZ, levelDb, filled(-120)));
    }

    private static double[] filled(double value) {
        double[] all = new double[HZ.length];
        Arrays.fill(all, value);
        return all;
    }

    private static PointReference reference() {
        return new PointReference(
                "M",
                "IN",
                5,
                HZ,
                filled(Math.log(8)),
                filled(0),
                filled(SPREAD_LOG),
                HZ,
                filled(0),
                filled(SPREAD_DB),
                null);
    }

    private static Likeness.Difference between(Baseline one, Baseline other) {
        return Likeness.between(List.of(one), List.of(other), List.of(reference()))
                .orElseThrow();
    }

    @Test
    void isNothingForEqualCurves() {
        Likeness.Difference difference = between(unit(filled(8), filled(1)), unit(filled(8), filled(1)));

        assertThat(difference.mismatch()).isZero();
        assertThat(difference.levelDb()).isZero();
    }

    /** By hand: ln ratio 0.04 over 0.02 sqrt 2, squared: 2; 1 dB over 0.5 sqrt 2, squared: 2; mean of both halves 2. */
    @Test
    void weighsImpedanceAndSoundHalfEachBySpread() {
        Likeness.Difference difference =
                between(unit(filled(8 * Math.exp(0.04)), filled(1)), unit(filled(8), filled(0)));

        assertThat(difference.mismatch()).isCloseTo(Math.sqrt(2), within(1e-12));
        assertThat(difference.levelDb()).isCloseTo(1, within(1e-12));
    }

    @Test
    void namesTheFrequencyAtWhichTwoSoundMostDifferent() {
        Likeness.Difference difference =
                between(unit(filled(8), new double[] {0, 0, -3, 0.5}), unit(filled(8), filled(0)));

        assertThat(difference.worstDb()).isEqualTo(-3);
        assertThat(difference.worstHz()).isEqualTo(400);
    }

    @Test
    void comparesByTheCurrentAloneWithoutAMicrophone() {
        Likeness.Difference difference = between(unit(filled(8.4), null), unit(filled(8), filled(0)));

        assertThat(difference.mismatch()).isCloseTo(Math.log(1.05) / (Math.sqrt(2) * SPREAD_LOG), within(1e-12));
        assertThat(difference.levelDb()).isNull();
    }

    @Test
    void saysNothingOfUnitsThatShareNoTestPoint() {
        assertThat(Likeness.between(List.of(), List.of(unit(filled(8), null)), List.of(reference())))
                .isEmpty();
    }

    /** Mean square over 400 pairs of 8 independent normal values each: 1, with standard error sqrt(2 / 3200) = 0.025. */
    @Test
    void isOneInTheMeanForHealthyUnitsTakenAtRandom() {
        Random random = new Random(11);
        int pairs = 400;
        double squares = 0;
        for (int i = 0; i < pairs; i++) {
            double m = between(drawn(random), drawn(random)).mismatch();
            squares += m * m / pairs;
        }
        assertThat(squares).isCloseTo(1, within(0.1));
    }

    private static Baseline drawn(Random random) {
        double[] ohm = new double[HZ.length];
        double[] db = new double[HZ.length];
        for (int i = 0; i < HZ.length; i++) {
            ohm[i] = 8 * Math.exp(SPREAD_LOG * random.nextGaussian());
            db[i] = SPREAD_DB * random.nextGaussian();
        }
        return unit(ohm, db);
    }

    @Test
    void choosesTheSetWhoseWidestPairIsNarrowest() {
        Random random = new Random(5);
        for (int round = 0; round < 60; round++) {
            int n = 5 + random.nextInt(6);
            int count = 2 + random.nextInt(Math.min(4, n - 2));
            double[][] distance = symmetric(n, random);

            ClosestSet.Choice choice = ClosestSet.of(distance, count);

            assertThat(choice.exact()).isTrue();
            assertThat(choice.members()).hasSize(count).doesNotHaveDuplicates();
            assertThat(width(distance, choice.members())).isEqualTo(choice.widest());
            assertThat(choice.widest()).isEqualTo(byTryingAll(distance, count, 0, new ArrayList<>()));
        }
    }

    private static double[][] symmetric(int n, Random random) {
        double[][] distance = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) {
                distance[i][k] = random.nextDouble();
                distance[k][i] = distance[i][k];
            }
        }
        return distance;
    }

    private static double width(double[][] distance, List<Integer> set) {
        return set.stream()
                .flatMapToDouble(i -> set.stream().mapToDouble(k -> distance[i][k]))
                .max()
                .orElseThrow();
    }

    private static double byTryingAll(double[][] distance, int count, int from, List<Integer> chosen) {
        if (chosen.size() == count) {
            return width(distance, chosen);
        }
        double best = Double.POSITIVE_INFINITY;
        for (int i = from; i < distance.length; i++) {
            List<Integer> more = new ArrayList<>(chosen);
            more.add(i);
            best = Math.min(best, byTryingAll(distance, count, i + 1, more));
        }
        return best;
    }
}
