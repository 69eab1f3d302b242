package org.docksweep.demo.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PointJudgement;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.RigException;
import org.junit.jupiter.api.Test;

/** The two peaks of a vented box are of nearly equal height: which is the higher differs from unit to unit. */
class PeakReadingTest {
    private static final int UNITS = 8;
    private static final double LOW_BELOW_HZ = 250;

    @Test
    void holdsLikePeaksAgainstEachOther() throws RigException {
        MicrophoneScene scene = new MicrophoneScene("DUNE15B", "LF", 31);
        List<Double> highest = new ArrayList<>();
        for (int n = 0; n < UNITS; n++) {
            PointJudgement judged = scene.judge(scene.capture("now-" + n, scene.unit(n), "45", 0), null)
                    .points()
                    .get(0);
            Reading peak = judged.readings().stream()
                    .filter(r -> r.kind() == ReadingKind.PEAK_FREQUENCY)
                    .findFirst()
                    .orElseThrow();

            assertThat(peak.state()).isEqualTo(ReadingState.OK);
            assertThat(peak.value() / peak.reference()).isCloseTo(1, within(0.12));
            highest.add(highestHz(judged.impedance()) / peak.reference());
        }

        assertThat(highest).as("the higher one is not always the same").anyMatch(r -> r > 1.5 || r < 0.67);
    }

    private static double highestHz(ImpedanceCurve curve) {
        int best = 0;
        for (int i = 0; i < curve.frequencyHz().length && curve.frequencyHz()[i] < LOW_BELOW_HZ; i++) {
            best = magnitudeOhm(curve, i) > magnitudeOhm(curve, best) ? i : best;
        }
        return curve.frequencyHz()[best];
    }

    private static double magnitudeOhm(ImpedanceCurve curve, int i) {
        return Math.hypot(curve.resistanceOhm()[i], curve.reactanceOhm()[i]);
    }
}
