package org.docksweep.acoustic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.docksweep.acoustic.MicrophoneCheck.Fault;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SoundPrint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MicrophoneCheckTest {
    private static final int POINTS = 24 * 10;
    private static final double WAY_S = 0.003;

    private static double[] hz() {
        double[] hz = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            hz[i] = 20 * Math.pow(2, i / 24.0);
        }
        return hz;
    }

    private static AcousticCurve heard(
            DoubleUnaryOperator levelDb, double noiseDb, double arrivalS, SoundPrint.Mark... marks) {
        double[] hz = hz();
        double[] level = new double[POINTS];
        double[] noise = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            level[i] = levelDb.applyAsDouble(hz[i]);
            noise[i] = noiseDb;
        }
        SoundPrint print = new SoundPrint(arrivalS, new double[POINTS], 1, 10, List.of(), null, Set.of(marks));
        return new AcousticCurve(hz, level, noise, print);
    }

    private static ImpedanceCurve ohm(double ohm) {
        double[] hz = hz();
        double[] re = new double[POINTS];
        java.util.Arrays.fill(re, ohm);
        return new ImpedanceCurve(hz, re, new double[POINTS], new double[POINTS]);
    }

    private static MicrophoneReading reading(DoubleUnaryOperator levelDb, double noiseDb, double arrivalS) {
        return MicrophoneReading.of(heard(levelDb, noiseDb, arrivalS), ohm(8)).orElseThrow();
    }

    private static final MicrophoneReading ACCEPTED = reading(f -> -5, -50, WAY_S);

    @Test
    void readsThirdOctavesFrom125HertzAsPressureOverCurrent() {
        assertThat(ACCEPTED.bands()).hasSize(21);
        assertThat(ACCEPTED.bands().get(0).centreHz()).isCloseTo(125.9, within(0.05));
        assertThat(ACCEPTED.bands().get(20).centreHz()).isCloseTo(12589.3, within(0.05));
        // 8 ohm are 18.06 dB re 1 ohm.
        assertThat(ACCEPTED.bands())
                .allSatisfy(b -> assertThat(b.levelDb()).isCloseTo(-5 + 18.06, within(0.01)))
                .allSatisfy(b -> assertThat(b.ohm()).isCloseTo(8, within(1e-3)));
    }

    @Test
    void aWarmCoilIsNoOtherGain() {
        // 10 % more resistance: 0.83 dB less sound at the same voltage.
        double less = 20 * Math.log10(1 / 1.1);
        MicrophoneReading warm = MicrophoneReading.of(heard(f -> -5 + less, -50, WAY_S), ohm(8.8))
                .orElseThrow();

        MicrophoneCheck check = MicrophoneCheck.of(ACCEPTED, warm).orElseThrow();

        assertThat(check.gainDb()).isCloseTo(0, within(0.011));
        assertThat(check.passed()).isTrue();
        assertThat(MicrophoneCheck.sameCabinet(ACCEPTED, warm)).isTrue();
        assertThat(MicrophoneCheck.sameCabinet(
                        ACCEPTED,
                        MicrophoneReading.of(heard(f -> -5, -50, WAY_S), ohm(4)).orElseThrow()))
                .isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        "0.9, 0, 0, 0, NONE",
        "1.1, 0, 0, 0, GAIN",
        "-3, 0, 0, 0, GAIN",
        "0, -3, 0, 0, CAPSULE",
        "0, 1.4, 0, 0, NONE",
        "0, 0, 0.04, 0, NONE",
        "0, 0, 0.3, 0, MOVED",
        "-2.3, 0, 0.3, 0, MOVED",
        "0, 0, -0.3, 0, MOVED",
        "0, 0, 0, 19, NONE",
        "0, 0, 0, 21, NOISE"
    })
    void tellsWhatHasChanged(double gainDb, double highDb, double movedM, double noiseDb, Fault fault) {
        MicrophoneReading now = reading(
                f -> -5 + gainDb + (f > 4000 ? highDb : 0),
                -50 + noiseDb,
                WAY_S + movedM / MicrophoneCheck.SOUND_M_PER_S);

        MicrophoneCheck check = MicrophoneCheck.of(ACCEPTED, now).orElseThrow();

        assertThat(check.fault()).isEqualTo(fault);
        assertThat(check.gainDb()).isCloseTo(gainDb, within(0.02));
        assertThat(check.shapeDb()).isCloseTo(highDb, within(0.05));
        assertThat(check.movedM()).isCloseTo(movedM, within(1e-3));
        assertThat(check.noiseDb()).isCloseTo(noiseDb, within(0.02));
        assertThat(check.passed()).isEqualTo(fault == Fault.NONE);
    }

    @Test
    void saysNothingInNoiseAndHearsNothingWhereNothingIs() {
        MicrophoneReading drowned = reading(f -> -5, -15, WAY_S);
        assertThat(MicrophoneCheck.clear(ACCEPTED)).isTrue();
        assertThat(MicrophoneCheck.clear(drowned)).isFalse();
        assertThat(MicrophoneCheck.of(ACCEPTED, drowned)).isEmpty();

        assertThat(MicrophoneReading.of(heard(f -> -80, -80, 0, SoundPrint.Mark.UNHEARD), ohm(8)))
                .isEmpty();
        assertThat(MicrophoneReading.of(null, ohm(8))).isEmpty();
        assertThat(MicrophoneCheck.unheard().passed()).isFalse();
    }

    @Test
    void aTrebleThatFellIntoTheNoiseIsTheCapsulesLoss() {
        MicrophoneReading deaf = reading(f -> f > 5000 ? -49 : -5, -50, WAY_S);

        MicrophoneCheck check = MicrophoneCheck.of(ACCEPTED, deaf).orElseThrow();

        assertThat(check.fault()).isEqualTo(Fault.CAPSULE);
        assertThat(check.shapeDb()).isCloseTo(-44, within(0.05));
    }
}
