package org.docksweep.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FourierTest {
    private static final long SEED = 20260503;

    /** Rounding of sums of a few thousand terms of order one. */
    private static final double ROUNDING = 1e-10;

    @ParameterizedTest
    @ValueSource(ints = {2, 4, 8, 64, 1024})
    void agreesWithTheNaiveTransform(int size) {
        Random random = new Random(SEED);
        double[] samples = random.doubles(size, -1, 1).toArray();
        double[] packed = samples.clone();
        Fourier.forward(packed);
        for (int k = 0; k <= size / 2; k++) {
            double re = 0;
            double im = 0;
            for (int n = 0; n < size; n++) {
                double angle = -2 * Math.PI * k * n / size;
                re += samples[n] * Math.cos(angle);
                im += samples[n] * Math.sin(angle);
            }
            assertThat(k == size / 2 ? packed[1] : packed[2 * k]).isCloseTo(re, within(ROUNDING));
            assertThat(k == 0 || k == size / 2 ? 0 : packed[2 * k + 1]).isCloseTo(im, within(ROUNDING));
        }
        Fourier.inverse(packed);
        assertThat(packed).containsExactly(samples, within(ROUNDING));
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 5, 1000, 1024, 1025})
    void findsTheNextPowerOfTwo(int samples) {
        int size = Fourier.sizeFor(samples);
        assertThat(Integer.bitCount(size)).isOne();
        assertThat(size).isGreaterThanOrEqualTo(samples).isLessThan(2 * samples);
    }
}
