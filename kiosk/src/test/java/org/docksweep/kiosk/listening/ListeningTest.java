package org.docksweep.kiosk.listening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureChannel;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepSignal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Levels, sentences and files of what a person listens to. */
class ListeningTest {
    private static final int RATE = 48_000;
    private static final double SWEEP_PA = 0.2;
    private static final AssetTag TAG = new AssetTag("MCH-000117");

    private final List<double[]> played = new ArrayList<>();
    private Reason refusal;

    @TempDir
    private Path folder;

    private Listening listening(Path place) {
        return new Listening(
                new Earphones() {
                    @Override
                    public Optional<Reason> play(double[] samples, int sampleRateHz) {
                        played.add(samples);
                        return Optional.ofNullable(refusal);
                    }

                    @Override
                    public void silence() {
                        played.clear();
                    }
                },
                place);
    }

    /** A line input of 0.1 V whose sound has a click in it of a given level re the sweep; null for no microphone. */
    private static Listening.Sweep sweep(Double clickDb) {
        LevelMask level = new LevelMask(List.of(new LevelMask.Point(20, 0.1), new LevelMask.Point(20000, 0.1)));
        SweepPlan plan = new SweepPlan(SweepSignal.synchronised(20, 20000, 1, RATE, level), 0.5, 0.5, 2);
        double[] drive = plan.driveVolts();
        int latency = 2400;
        float[] volts = new float[drive.length + 2 * latency];
        float[] pascals = new float[volts.length];
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < drive.length; i++) {
            volts[i + latency] = (float) drive[i];
            pascals[i + latency] = (float) (SWEEP_PA * drive[i] / 0.1 / Math.sqrt(2) + 1e-7 * random.nextDouble());
        }
        if (clickDb != null) {
            int at = plan.startFrame(0) + latency + RATE / 5;
            for (int i = -12; i <= 12; i++) {
                pascals[at + i] += (float) (SWEEP_PA
                        * Math.pow(10, clickDb / 20)
                        * (0.5 + 0.5 * Math.cos(Math.PI * i / 12.0))
                        * Math.cos(2 * Math.PI * 6000.0 * i / RATE));
            }
        }
        List<CaptureChannel> channels = new ArrayList<>(List.of(new CaptureChannel(ChannelRole.VOLTAGE, 1)));
        List<float[]> samples = new ArrayList<>(List.of(volts));
        if (clickDb != null) {
            channels.add(new CaptureChannel(ChannelRole.MICROPHONE, 1));
            samples.add(pascals);
        }
        CaptureHeader header = new CaptureHeader(
                Instant.parse("2026-05-01T01:23:45Z"), "test rig", TestPointKind.LINE_INPUT, channels, plan, null);
        return new Listening.Sweep(TAG, "LINE", new Capture(header, samples.toArray(float[][]::new)));
    }

    private static double loudestDb(double[] samples) {
        double most = 0;
        for (double sample : samples) {
            most = Math.max(most, Math.abs(sample));
        }
        return 20 * Math.log10(most);
    }

    @Test
    void beginsLowAndGetsLouderInThreeSteps() {
        Listening listening = listening(folder);
        Listening.Sweep sweep = sweep(-50.0);
        for (int press = 0; press < 4; press++) {
            Listening.Said said = listening.listen(sweep);
            assertThat(said.text().key()).isEqualTo("listen-plays");
            assertThat(said.text().arguments()).containsExactly("LINE", "50", Integer.toString(press % 3 + 1), "3");
        }
        // 50 dB below the sweep is 20 dB below the ceiling of -26, -20 and -14 dB
        double[] wanted = {-46, -40, -34, -46};
        for (int i = 0; i < wanted.length; i++) {
            assertThat(loudestDb(played.get(i))).isCloseTo(wanted[i], within(1.0));
        }
        // another sweep begins low again
        listening.listen(sweep);
        listening.listen(sweep(-50.0));
        assertThat(loudestDb(played.get(5))).isCloseTo(-46, within(1.0));
    }

    @Test
    void nothingPassesTheCeilingHoweverLoudAKnockWas() {
        listening(folder).listen(sweep(0.0));
        assertThat(loudestDb(played.get(0))).isBetween(-27.0, -26.0);
    }

    @Test
    void saysWhyNothingIsHeard() {
        Listening listening = listening(folder);
        Listening.Said mute = listening.listen(sweep(null));
        assertThat(mute.text().key()).isEqualTo("listen-no-microphone");
        assertThat(mute.state()).isEqualTo(ReadingState.WATCH);
        assertThat(played).isEmpty();

        refusal = Reason.of("listen-no-output");
        Listening.Sweep sweep = sweep(-50.0);
        assertThat(listening.listen(sweep).text().key()).isEqualTo("listen-no-output");
        refusal = null;
        assertThat(listening.listen(sweep).text().arguments())
                .as("still the lowest step")
                .contains("1");
    }

    @Test
    void anOutputThatIsNotThereIsNamedWithThoseThatAre() {
        try (OutputEarphones none = new OutputEarphones(null, name -> false);
                OutputEarphones rigs = new OutputEarphones("Interface 1", name -> true);
                OutputEarphones gone = new OutputEarphones("No such output", name -> false)) {
            assertThat(none.play(new double[10], RATE).orElseThrow().key()).isEqualTo("listen-no-output");
            assertThat(rigs.play(new double[10], RATE).orElseThrow())
                    .isEqualTo(Reason.of("listen-output-is-the-rigs", "Interface 1"));
            Reason missing = gone.play(new double[10], RATE).orElseThrow();
            assertThat(missing.key()).isEqualTo("listen-output-missing");
            assertThat(missing.arguments()).hasSize(2).startsWith("No such output");
        }
    }

    @Test
    void keepsAFileWhoseFullScaleItNames() throws Exception {
        Listening listening = listening(folder.resolve("sounds"));
        Listening.Said said = listening.keep(sweep(-50.0));

        assertThat(said.text().key()).isEqualTo("listen-kept");
        Path file = Path.of(said.text().arguments().get(0));
        assertThat(file.getFileName()).hasToString("MCH-000117-LINE-20260501-012345.wav");
        double fullScalePa = Double.parseDouble(said.text().arguments().get(1));
        assertThat(20 * Math.log10(fullScalePa / SWEEP_PA)).isCloseTo(-20, within(1.0));
        try (AudioInputStream sound = AudioSystem.getAudioInputStream(file.toFile())) {
            assertThat(sound.getFormat().getSampleSizeInBits()).isEqualTo(24);
            byte[] bytes = sound.readAllBytes();
            double[] samples = new double[bytes.length / 3];
            for (int i = 0; i < samples.length; i++) {
                int value = bytes[3 * i + 2] << 16 | (bytes[3 * i + 1] & 0xff) << 8 | bytes[3 * i] & 0xff;
                samples[i] = value / (double) (1 << 23);
            }
            assertThat(loudestDb(samples)).isCloseTo(-30, within(1.0));
        }
        try (var files = Files.list(file.getParent())) {
            assertThat(files).hasSize(1);
        }
    }

    @Test
    void saysThatAFileCannotBeKept() throws IOException {
        Path blocked = Files.writeString(folder.resolve("sounds"), "a file where the folder should be");

        Listening.Said said = listening(blocked).keep(sweep(-50.0));

        assertThat(said.state()).isEqualTo(ReadingState.FAULT);
        assertThat(said.text().key()).isEqualTo("listen-not-kept");
    }
}
