package org.docksweep.kiosk.rig.audio;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;

/**
 * A software device under test, run as a process of its own: takes what the rig plays, steps a {@link SoftLoad}, and
 * sends voltage, current, microphone and far microphone back. Ends when its input ends or a line is lost.
 *
 * <p>Arguments: load, sample rate, amplifier gain against its mark, extra delay in frames, and the order of the four
 * channels as letters of {@code VIMF}.
 */
final class DutBridge {
    static final double VOLTS_FULL_SCALE = 4;
    static final double AMPERES_FULL_SCALE = 1;
    static final double MICROPHONE_SHARE = 0.25;
    static final double FAR_SHARE = 0.0625;
    static final String READY = "ready";

    private static final int CHANNELS = 4;
    /** A fifth of a second in hand, for cores that are busy with other things. */
    private static final int SILENCE_BLOCKS = 20;

    private DutBridge() {}

    public static void main(String[] arguments) throws LineUnavailableException {
        int rateHz = Integer.parseInt(arguments[1]);
        double gain = Double.parseDouble(arguments[2]);
        int delay = Integer.parseInt(arguments[3]);
        List<Integer> places =
                "VIMF".chars().mapToObj(c -> arguments[4].indexOf(c)).toList();
        SoftLoad.Stepper load = new SoftLoad.Stepper(SoftLoad.valueOf(arguments[0]), rateHz);
        endWithInput();
        SampleCodec codec = new SampleCodec(32, false);
        int block = rateHz / 100;
        int buffer = 2 * rateHz / 5;
        AudioFormat in = new AudioFormat(rateHz, 32, 2, true, false);
        AudioFormat out = new AudioFormat(rateHz, 32, CHANNELS, true, false);
        try (TargetDataLine capture = AudioSystem.getTargetDataLine(in);
                SourceDataLine play = AudioSystem.getSourceDataLine(out)) {
            capture.open(in, buffer * in.getFrameSize());
            play.open(out, buffer * out.getFrameSize());
            play.start();
            capture.start();
            byte[] taken = new byte[block * in.getFrameSize()];
            byte[] given = new byte[block * out.getFrameSize()];
            for (int i = 0; i < SILENCE_BLOCKS; i++) {
                play.write(given, 0, given.length);
            }
            ArrayDeque<Double> late = new ArrayDeque<>();
            for (int i = 0; i < delay; i++) {
                late.add(0.0);
            }
            System.out.println(READY);
            while (capture.read(taken, 0, taken.length) == taken.length) {
                for (int n = 0; n < block; n++) {
                    late.add(codec.read(taken, n * in.getFrameSize()) * VOLTS_FULL_SCALE * gain);
                    double source = late.remove();
                    double amperes = load.step(source);
                    double volts = source - SoftLoad.SOURCE_OHM * amperes;
                    double[] sent = {
                        volts / VOLTS_FULL_SCALE,
                        amperes / AMPERES_FULL_SCALE,
                        volts / VOLTS_FULL_SCALE * MICROPHONE_SHARE,
                        volts / VOLTS_FULL_SCALE * FAR_SHARE
                    };
                    for (int c = 0; c < CHANNELS; c++) {
                        codec.write(sent[c], given, (n * CHANNELS + places.get(c)) * codec.bytesPerSample());
                    }
                }
                if (play.write(given, 0, given.length) != given.length) {
                    return;
                }
            }
        }
    }

    private static void endWithInput() {
        Thread watching = new Thread(() -> {
            try {
                while (System.in.read() >= 0) {
                    // Nothing is said, only the end matters.
                }
            } catch (IOException e) {
                // The other end is gone: the same.
            }
            Runtime.getRuntime().halt(0);
        });
        watching.setDaemon(true);
        watching.start();
    }
}
