package org.docksweep.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.docksweep.sweep.ImpedanceCurve;
import org.junit.jupiter.api.Test;

/** What is believed of a curve: where the circuit strays, and where the rig does. */
class CurveDataTest {
    private static final int POINTS = 40;
    private static final double GRAIN = 0.0003;
    private static final double NOISE = 0.0002;
    private static final double SIGMA = 0.002;

    private final double[] hz = new double[POINTS];
    private final ImpedanceCurve curve;

    CurveDataTest() {
        Arrays.setAll(hz, i -> 30 * Math.pow(2, i / 8.0));
        double[] re = new double[POINTS];
        double[] noise = new double[POINTS];
        Arrays.fill(re, 8);
        Arrays.fill(noise, 8 * NOISE);
        this.curve = new ImpedanceCurve(hz, re, new double[POINTS], noise);
    }

    /** A rig's gain moves whole bands together: what differs from point to point stays noise and grain. */
    @Test
    void whatTheRigStraysByIsSmooth() {
        CurveData data = CurveData.of(curve, ModelOffsets.none(0, GRAIN).widenedBy(SIGMA), 1);

        double grain = NOISE * NOISE + GRAIN * GRAIN;
        Discrepancy discrepancy = data.discrepancy();
        for (int i = 0; i < POINTS; i++) {
            assertThat(1 / discrepancy.weight(i)).isCloseTo(grain, within(1e-12));
            assertThat(discrepancy.covariance(i, i)).isCloseTo(grain + SIGMA * SIGMA, within(1e-12));
        }
        assertThat(discrepancy.covariance(10, 11)).isGreaterThan(0.8 * SIGMA * SIGMA);
    }

    /** A circuit that strays does so from point to point as well, by half as much. */
    @Test
    void whatTheCircuitStraysByIsRoughToo() {
        CurveData data = CurveData.of(curve, ModelOffsets.none(SIGMA, GRAIN), 1);

        double grain = NOISE * NOISE + GRAIN * GRAIN + 0.25 * SIGMA * SIGMA;
        for (int i = 0; i < POINTS; i++) {
            assertThat(1 / data.discrepancy().weight(i)).isCloseTo(grain, within(1e-12));
        }
    }

    @Test
    void twoStraysOfARigAddAsSquares() {
        ModelOffsets twice = ModelOffsets.none(0, GRAIN).widenedBy(0.6 * SIGMA).widenedBy(0.8 * SIGMA);

        assertThat(twice.rigSigma()).isCloseTo(SIGMA, within(1e-15));
    }
}
