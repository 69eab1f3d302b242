package org.docksweep.demo.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.ExecutionException;
import org.docksweep.gate.Quantity;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A small version of {@link AccuracyStudy}: the promises of accuracy at every noise level. */
class AccuracyStudyTest {
    private static final long SEED = 77;
    private static final int CABINETS_PER_LEVEL = 10;
    private static final Quantity.Kind[] PLACES = {
        Quantity.Kind.LOWER_PEAK, Quantity.Kind.DIP, Quantity.Kind.UPPER_PEAK, Quantity.Kind.PEAK, Quantity.Kind.TUNING
    };

    @ParameterizedTest
    @ValueSource(doubles = {-106, -80, -72})
    void keepsThePromisedAccuracyAndItsOwnIntervals(double noiseDbFs) throws ExecutionException, InterruptedException {
        StudyLevel level = new AccuracyStudy(new double[] {noiseDbFs}, null)
                .run(CABINETS_PER_LEVEL, SEED, 1)
                .get(0);
        // the highest level may ask to sweep again instead; the lower two must measure
        assertThat(level.measured).isGreaterThan(noiseDbFs < -75 ? CABINETS_PER_LEVEL - 1 : 0);
        assertThat(level.unfitted).isZero();
        double limitPercent = noiseDbFs < -75 ? 1 : 3;
        assertThat(level.percentile95(PLACES)).isLessThan(limitPercent);
        assertThat(level.percentile95(Quantity.Kind.TERMINAL_RESISTANCE)).isLessThan(limitPercent);
        // ten cabinets share their errors' causes: wide bounds; the study over 1,000 has the narrow ones
        assertThat(level.pointsHeld / (double) level.points).isBetween(0.88, 1.0);
        assertThat(level.held(PLACES) / (double) level.count(PLACES)).isGreaterThan(0.85);
        assertThat(level.worstShareOfLimit).isLessThan(3);
    }
}
