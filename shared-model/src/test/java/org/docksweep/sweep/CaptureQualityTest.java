package org.docksweep.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.DoubleFunction;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.Reasons;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CaptureQualityTest {
    private static final long SEED = 20260504;
    private static final int RATE = 48000;

    private final SweepAnalyser analyser = new SweepAnalyser();

    @Test
    void seesClippedChannels() {
        Capture capture = new CaptureMaker().make();
        float[] voltage = capture.fullScale(ChannelRole.VOLTAGE);
        for (int i = 0; i < voltage.length; i++) {
            voltage[i] = Math.max(-1, Math.min(1, 10 * voltage[i]));
        }
        assertSpoiled(capture, QualityIssue.CLIPPED, "voltage input was overdriven");
    }

    @Test
    void seesSilence() {
        Capture capture = new CaptureMaker().make();
        Arrays.fill(capture.fullScale(ChannelRole.VOLTAGE), 0);
        Arrays.fill(capture.fullScale(ChannelRole.CURRENT), 0);
        assertSpoiled(capture, QualityIssue.SILENT, "amplifier is on");
    }

    @Test
    void seesNoiseOnlyAsSilence() {
        Capture capture = new CaptureMaker().make();
        fillWithNoise(capture.fullScale(ChannelRole.VOLTAGE), 1e-5);
        fillWithNoise(capture.fullScale(ChannelRole.CURRENT), 1e-5);
        assertSpoiled(capture, QualityIssue.SILENT, "amplifier is on");
    }

    @Test
    void seesADeadChannelAmongLiveOnes() {
        for (ChannelRole role : List.of(ChannelRole.VOLTAGE, ChannelRole.CURRENT)) {
            Capture capture = new CaptureMaker().make();
            Arrays.fill(capture.fullScale(role), 0.001f);
            assertSpoiled(capture, QualityIssue.CHANNEL_DEAD, role.name().toLowerCase(Locale.ROOT));
        }
        Capture noise = new CaptureMaker().make();
        fillWithNoise(noise.fullScale(ChannelRole.VOLTAGE), 1e-5);
        assertSpoiled(noise, QualityIssue.CHANNEL_DEAD, "voltage");
    }

    @Test
    void seesCapturesThatStopTooEarly() {
        Capture capture = new CaptureMaker().make();
        assertSpoiled(cut(capture, 200_000), QualityIssue.TOO_SHORT, "stopped before");
        assertSpoiled(cut(capture, 10), QualityIssue.TOO_SHORT, "stopped before");
    }

    @Test
    void seesThatTooLittleVoltageArrives() {
        Capture capture = new CaptureMaker().make();
        scale(capture, ChannelRole.VOLTAGE, 0.2f);
        scale(capture, ChannelRole.CURRENT, 0.2f);
        assertSpoiled(capture, QualityIssue.TOO_QUIET, "Only 19 %");
    }

    @Test
    void seesHumThatIsTooStrong() {
        Capture capture = new CaptureMaker().make();
        float[] voltage = capture.fullScale(ChannelRole.VOLTAGE);
        for (int i = 0; i < voltage.length; i++) {
            // A grid that wanders by 0.04 Hz in five seconds: what was fitted in the silence no longer fits later.
            double timeS = i / (double) RATE;
            double phase = 2 * Math.PI * timeS * (50 + 0.004 * timeS);
            voltage[i] += (float) (0.3 / CaptureMaker.VOLTS_FULL_SCALE * Math.sin(phase));
        }
        assertSpoiled(capture, QualityIssue.HUM, "50 Hz mains hum");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.3, 5.0})
    void takesNoKnockForHum(double atS) {
        Capture capture = new CaptureMaker()
                .lineInput()
                .microphone(f -> Complex.valueOf(0.1), 1e-4)
                .make();
        float[] sound = capture.fullScale(ChannelRole.MICROPHONE);
        for (int i = (int) (atS * RATE); i < sound.length; i++) {
            double t = i / (double) RATE - atS;
            double thump = Math.exp(-t / 0.03) * Math.sin(2 * Math.PI * 200 * t);
            sound[i] += (float) (1.0 / CaptureMaker.PASCALS_FULL_SCALE * thump);
        }
        assertThat(analyser.analyse(capture).issues()).noneMatch(i -> i.kind() == QualityIssue.HUM);
    }

    @Test
    void takesOffEvenStrongHumThatIsSteady() {
        SweepAnalysis analysis = analyser.analyse(
                new CaptureMaker().load(Loads::ventedDriver).hum(0.5, 50.1).make());
        assertThat(analysis.issues()).isEmpty();
        SweepAnalyserTest.assertClose(analysis.impedance(), Loads::ventedDriver);
    }

    @Test
    void seesNoiseThatIsTooStrong() {
        assertSpoiled(new CaptureMaker().noise(0.01).make(), QualityIssue.NOISE, "too noisy");
    }

    @Test
    void setsAKnockedSweepAside() {
        Capture capture = new CaptureMaker().load(Loads::ventedDriver).make();
        knock(capture, ChannelRole.CURRENT, 1.2, 0.02f);
        SweepAnalysis analysis = analyser.analyse(capture);
        assertThat(analysis.issues()).isEmpty();
        SweepAnalyserTest.assertClose(analysis.impedance(), Loads::ventedDriver);
    }

    @Test
    void seesAKnockInEverySweep() {
        Capture capture = new CaptureMaker().load(Loads::ventedDriver).make();
        knock(capture, ChannelRole.CURRENT, 1.2, 0.02f);
        knock(capture, ChannelRole.CURRENT, 4.0, 0.02f);
        assertSpoiled(capture, QualityIssue.KNOCK, "Keep hands off");
    }

    @Test
    void aKnockOnTheMicrophoneSpoilsOnlyTheAcousticCurve() {
        DoubleFunction<Complex> sound = f -> Complex.valueOf(0.5);
        Capture once = new CaptureMaker().microphone(sound, 1e-3).make();
        knock(once, ChannelRole.MICROPHONE, 1.2, 0.2f);
        assertThat(analyser.analyse(once).issues()).isEmpty();
        assertThat(analyser.analyse(once).acoustic()).isNotNull();
        knock(once, ChannelRole.MICROPHONE, 4.0, 0.2f);
        SweepAnalysis twice = analyser.analyse(once);
        assertThat(twice.issues()).isEmpty();
        assertThat(twice.impedance()).isNotNull();
        assertThat(twice.acoustic()).isNull();
    }

    @Test
    void aKnockOnTheMicrophoneOfAPoweredCabinetSpoilsTheCapture() {
        Capture capture = new CaptureMaker()
                .lineInput()
                .microphone(f -> Complex.valueOf(0.5), 1e-3)
                .make();
        knock(capture, ChannelRole.MICROPHONE, 1.2, 0.2f);
        knock(capture, ChannelRole.MICROPHONE, 4.0, 0.2f);
        assertSpoiled(capture, QualityIssue.KNOCK, "Wait until it is quieter");
    }

    @ParameterizedTest
    @ValueSource(ints = {48, 600, 4800})
    void seesSamplesMissingWithinASweep(int missing) {
        for (double atS : new double[] {0.9, 1.0, 1.1, 1.3, 2.2, 4.1}) {
            Capture capture = new CaptureMaker().load(Loads::ventedDriver).make();
            for (CaptureChannel channel : capture.header().channels()) {
                float[] samples = capture.fullScale(channel.role());
                int at = (int) (atS * RATE);
                System.arraycopy(samples, at + missing, samples, at, samples.length - at - missing);
            }
            assertSpoiled(capture, QualityIssue.TORN, "Pieces of the recording");
        }
    }

    @Test
    void seesABufferThatNeverCame() {
        Capture capture = new CaptureMaker().load(Loads::ventedDriver).make();
        for (CaptureChannel channel : capture.header().channels()) {
            Arrays.fill(capture.fullScale(channel.role()), 90_000, 90_512, 0);
        }
        assertSpoiled(capture, QualityIssue.TORN, "Pieces of the recording");
    }

    @Test
    void seesExchangedChannels() {
        for (DoubleFunction<Complex> load :
                List.<DoubleFunction<Complex>>of(Loads::ventedDriver, Loads::hornOpen, Loads::lossyDriver)) {
            Capture capture = new CaptureMaker().load(load).make();
            float[] voltage = capture.fullScale(ChannelRole.VOLTAGE);
            float[] current = capture.fullScale(ChannelRole.CURRENT);
            for (int i = 0; i < voltage.length; i++) {
                float v = voltage[i];
                voltage[i] = current[i];
                current[i] = v;
            }
            assertSpoiled(capture, QualityIssue.CHANNELS_SWAPPED, "exchanged");
        }
    }

    @Test
    void seesThatSweepsDiffer() {
        Capture six = new CaptureMaker().resistor(6).make();
        Capture seven = new CaptureMaker().resistor(7).make();
        int from = six.header().plan().startFrame(1);
        for (ChannelRole role : List.of(ChannelRole.VOLTAGE, ChannelRole.CURRENT)) {
            System.arraycopy(seven.fullScale(role), from, six.fullScale(role), from, six.frames() - from);
        }
        assertSpoiled(six, QualityIssue.REPEATS_DIFFER, "do not agree");
    }

    @Test
    void seesLoadsThatAreNotPassive() {
        Capture capture = new CaptureMaker().load(Loads::ventedDriver).make();
        scale(capture, ChannelRole.CURRENT, -1);
        assertSpoiled(capture, QualityIssue.NOT_PASSIVE, "cannot come from a loudspeaker");
    }

    @Test
    void callsAnOpenTerminalOpenWithoutComplaint() {
        LevelMask mask = new LevelMask(List.of(new LevelMask.Point(250, 0.3), new LevelMask.Point(20000, 0.3)));
        SweepPlan plan = new SweepPlan(SweepSignal.synchronised(250, 20000, 1, RATE, mask), 0.5, 0.6, 2);
        for (double noise : new double[] {1e-6, 2e-5}) {
            SweepAnalysis analysis = analyser.analyse(
                    new CaptureMaker().plan(plan).resistor(100_000).noise(noise).make());
            assertThat(analysis.load()).isEqualTo(SweepAnalysis.Load.OPEN);
            assertThat(analysis.issues()).isEmpty();
            assertThat(Arrays.stream(analysis.impedance().magnitudesOhm()).min().orElseThrow())
                    .as("what is left of an open is kept for the calibration")
                    .isGreaterThan(1000);
            assertThat(analysis.currentDropouts()).isEmpty();
            assertThat(analysis.meanVoltageVrms()).isCloseTo(0.3, within(0.03));
        }
    }

    @Test
    void callsAShortShortWithoutComplaint() {
        SweepAnalysis analysis = analyser.analyse(new CaptureMaker()
                .load(f -> new Complex(0.15, 2 * Math.PI * f * 6e-6))
                .make());
        assertThat(analysis.load()).isEqualTo(SweepAnalysis.Load.SHORT);
        assertThat(analysis.issues()).isEmpty();
    }

    @Test
    void doesNotCallTheDipOfAnOpenHornAShort() {
        SweepAnalysis analysis =
                analyser.analyse(new CaptureMaker().load(Loads::hornOpen).make());
        assertThat(Arrays.stream(analysis.impedance().magnitudesOhm()).min().orElseThrow())
                .isLessThan(0.4);
        assertThat(analysis.load()).isEqualTo(SweepAnalysis.Load.PRESENT);
        assertThat(analysis.issues()).isEmpty();
    }

    @Test
    void reportsDropoutsOfTheCurrentAsEvidence() {
        Capture capture = new CaptureMaker().load(Loads::ventedDriver).make();
        float[] current = capture.fullScale(ChannelRole.CURRENT);
        fillWithNoise(current, 1.5 * RATE, 1.53 * RATE);
        SweepAnalysis analysis = analyser.analyse(capture);
        assertThat(analysis.currentDropouts()).hasSize(1);
        assertThat(analysis.currentDropouts().get(0)).isCloseTo(1.5, within(0.02));
        assertThat(analysis.issues()).isEmpty();
        SweepAnalyserTest.assertClose(analysis.impedance(), Loads::ventedDriver);
    }

    /** With one sweep there is no other to compare with; voltage without current tells by itself. */
    @ParameterizedTest
    @ValueSource(doubles = {0.8, 1.2, 1.5, 2.0, 2.3})
    void reportsADropoutOfASingleSweep(double atS) {
        Capture capture = new CaptureMaker()
                .plan(CaptureMaker.plan(20, 20000, 2, 1, 1))
                .load(Loads::ventedDriver)
                .make();
        fillWithNoise(capture.fullScale(ChannelRole.CURRENT), atS * RATE, (atS + 0.06) * RATE);
        SweepAnalysis analysis = analyser.analyse(capture);
        assertThat(analysis.currentDropouts()).isNotEmpty();
        assertThat(analysis.currentDropouts().get(0)).isCloseTo(atS, within(0.08));
        assertThat(analysis.issues()).isEmpty();
    }

    @Test
    void seesALoadThatChangedDuringTheSweep() {
        Capture capture = new CaptureMaker().load(Loads::lossyDriver).make();
        SweepPlan plan = capture.header().plan();
        float[] current = capture.fullScale(ChannelRole.CURRENT);
        for (int k = 0; k < 2; k++) {
            int from = plan.startFrame(k) + RATE;
            for (int i = from; i < plan.startFrame(k) + plan.signal().frames() + plan.tailFrames() / 2; i++) {
                current[i] *= 0.85f;
            }
        }
        assertSpoiled(capture, QualityIssue.INCONSISTENT, "load changed");
    }

    @Test
    void reportsADropoutInEverySweep() {
        Capture capture = new CaptureMaker().load(Loads::ventedDriver).make();
        float[] current = capture.fullScale(ChannelRole.CURRENT);
        fillWithNoise(current, 1.5 * RATE, 1.6 * RATE);
        fillWithNoise(current, 4.9 * RATE, 5.0 * RATE);
        SweepAnalysis analysis = analyser.analyse(capture);
        assertThat(analysis.currentDropouts()).hasSize(2);
        assertThat(analysis.issues()).isEmpty();
    }

    /** A woofer open behind its crossover: a capacitor of 3.3 uF and the horn driver stay across the terminals. */
    @Test
    void doesNotCallACapacitorADropout() {
        DoubleFunction<Complex> load = f -> new Complex(8, -1 / (2 * Math.PI * f * 3.3e-6));
        SweepAnalysis analysis = analyser.analyse(new CaptureMaker().load(load).make());
        assertThat(analysis.load()).isEqualTo(SweepAnalysis.Load.PRESENT);
        assertThat(analysis.currentDropouts()).isEmpty();
        assertThat(analysis.issues()).isEmpty();
    }

    @Test
    void doesNotCallAShortedCoilExchangedChannels() {
        // 0.6 ohm and 0.1 mH on a rig that reads 2.5 V and 1 A per drive at 2.5 ohm of source.
        SweepAnalysis analysis = analyser.analyse(new CaptureMaker()
                .senseOhm(2.5)
                .load(f -> new Complex(0.6, 2 * Math.PI * f * 5e-6))
                .make());
        assertThat(analysis.issues())
                .extracting(SweepAnalysis.Issue::kind)
                .doesNotContain(QualityIssue.CHANNELS_SWAPPED);
    }

    @Test
    void seesALoadThatIsLostHalfWay() {
        Capture capture = new CaptureMaker().load(Loads::ventedDriver).make();
        fillWithNoise(capture.fullScale(ChannelRole.CURRENT), 1.8 * RATE, capture.frames());
        SweepAnalysis analysis = analyser.analyse(capture);
        assertThat(analysis.currentDropouts()).isNotEmpty();
        assertThat(analysis.currentDropouts().get(0)).isCloseTo(1.8, within(0.02));
        assertThat(analysis.issues()).isEmpty();
    }

    @Test
    void takesAHealthyPeakOfTwoHundredOhmForWhatItIs() {
        DoubleFunction<Complex> peaky =
                f -> Loads.freeDriver(f).add(-6).multiply(4).add(6);
        SweepAnalysis analysis = analyser.analyse(new CaptureMaker().load(peaky).make());
        assertThat(analysis.currentDropouts()).isEmpty();
        assertThat(analysis.issues()).isEmpty();
        assertThat(analysis.load()).isEqualTo(SweepAnalysis.Load.PRESENT);
    }

    private void assertSpoiled(Capture capture, QualityIssue kind, String words) {
        SweepAnalysis analysis = analyser.analyse(capture);
        assertThat(analysis.issues())
                .as("issues")
                .first()
                .extracting(SweepAnalysis.Issue::kind)
                .isEqualTo(kind);
        assertThat(Reasons.text(analysis.issues().get(0).reason(), Locale.ENGLISH))
                .contains(words)
                .contains("weep again");
        assertThat(Reasons.text(analysis.issues().get(0).reason(), Locale.GERMAN))
                .containsIgnoringCase("noch einmal messen");
        assertThat(analysis.impedance()).isNull();
        assertThat(analysis.load()).isEqualTo(SweepAnalysis.Load.UNKNOWN);
        assertThat(analysis.clean()).isFalse();
    }

    /** A decaying burst of noise, as of something hit. */
    private static void knock(Capture capture, ChannelRole role, double atS, float level) {
        float[] samples = capture.fullScale(role);
        Random random = new Random(SEED);
        for (int i = 0; i < RATE / 20; i++) {
            samples[(int) (atS * RATE) + i] += (float) (level * random.nextGaussian() * Math.exp(-i / 500.0));
        }
    }

    private static void scale(Capture capture, ChannelRole role, float factor) {
        float[] samples = capture.fullScale(role);
        for (int i = 0; i < samples.length; i++) {
            samples[i] *= factor;
        }
    }

    private static void fillWithNoise(float[] samples, double rms) {
        Random random = new Random(SEED);
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) (rms * random.nextGaussian());
        }
    }

    private static void fillWithNoise(float[] samples, double from, double to) {
        Random random = new Random(SEED);
        for (int i = (int) from; i < (int) to; i++) {
            samples[i] = (float) (2e-6 * random.nextGaussian());
        }
    }

    private static Capture cut(Capture capture, int frames) {
        float[][] samples = capture.header().channels().stream()
                .map(c -> Arrays.copyOf(capture.fullScale(c.role()), frames))
                .toArray(float[][]::new);
        return new Capture(capture.header(), samples);
    }
}
