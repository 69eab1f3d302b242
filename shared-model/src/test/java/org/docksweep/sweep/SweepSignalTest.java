package org.docksweep.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.docksweep.fleet.LevelMask;
import org.junit.jupiter.api.Test;

/** Outside values: Farina, AES 108 (2000); Novak, Lotton, Simon, JAES 63(10), 2015; see sweep_constants.csv. */
class SweepSignalTest {
    /** Half a unit of the last digit of the table. */
    private static final double PRINTED = 0.5e-9 * 1.01;

    private static SweepSignal sweep(double startHz, double stopHz, double durationS) {
        LevelMask mask = new LevelMask(List.of(new LevelMask.Point(startHz, 1), new LevelMask.Point(stopHz, 1)));
        return SweepSignal.synchronised(startHz, stopHz, durationS, 48000, mask);
    }

    @Test
    void hasThePublishedRateConstantDurationAndHarmonicLeads() {
        List<double[]> rows = CheckData.rows("sweep_constants.csv");
        assertThat(rows).hasSize(4);
        for (double[] row : rows) {
            SweepSignal signal = sweep(row[0], row[1], row[2]);
            assertThat(signal.rateConstantS() * row[0]).isCloseTo(row[8], within(1e-9));
            assertThat(signal.rateConstantS()).isCloseTo(row[9], within(PRINTED));
            assertThat(signal.durationS()).isCloseTo(row[10], within(PRINTED));
            for (int order = 2; order <= 5; order++) {
                assertThat(signal.harmonicLeadS(order)).isCloseTo(row[9 + order], within(PRINTED));
            }
        }
    }

    @Test
    void harmonicsOfADistortedSweepArriveEarlyByTheirPublishedLead() {
        SweepSignal signal = sweep(50, 5000, 2);
        double[] drive = signal.voltageSamples();
        Deconvolver deconvolver = Deconvolver.of(signal, drive.length);
        double[] bent = new double[drive.length];
        for (int i = 0; i < bent.length; i++) {
            // sin cos = sin(2 phi) / 2 and sin^3 = (3 sin phi - sin(3 phi)) / 4: orders 2 and 3 as plain sines.
            double second = drive[i] * deconvolver.quadrature()[i];
            bent[i] = drive[i] + 0.1 * second + 0.1 * drive[i] * drive[i] * drive[i];
        }
        double[] publishedLeadS = {0.304984759, 0.483389407};
        try (Workspace workspace = Workspace.open()) {
            double[] response = deconvolver.impulseResponse(bent, 0, bent.length, workspace);
            for (double leadS : publishedLeadS) {
                int expected = response.length - (int) Math.round(leadS * 48000);
                int found = PreparedCapture.peak(response, expected - 2000, expected + 2000);
                // A third of the shortest period: the peak is as wide as the band allows.
                assertThat(found).isCloseTo(expected, within(3));
            }
        }
    }

    @Test
    void fadesInFromAndOutToZero() {
        SweepSignal signal = sweep(50, 5000, 2);
        double[] drive = signal.voltageSamples();
        assertThat(drive).hasSize(signal.frames());
        assertThat(drive[0]).isZero();
        assertThat(Math.abs(drive[drive.length - 1])).isLessThan(1e-3);
    }
}
