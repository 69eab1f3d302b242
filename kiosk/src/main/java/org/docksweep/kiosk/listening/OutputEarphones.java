package org.docksweep.kiosk.listening;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.Clip;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import org.docksweep.fleet.Reason;

/**
 * An output of this computer, by the name a person gave it; the usual one may be the rig's. It is opened when something is to be heard, so
 * that headphones may be plugged in later, and closed before the next sound.
 */
public final class OutputEarphones implements Earphones, AutoCloseable {
    private final String name;
    private final Predicate<String> playsRig;
    private Clip clip;

    /**
     * Names an output.
     *
     * @param name its whole name; null for none
     * @param playsRig asked before each sound whether the rig plays through an output, with an amplifier and a cabinet behind it
     */
    public OutputEarphones(String name, Predicate<String> playsRig) {
        this.name = name;
        this.playsRig = playsRig;
    }

    @Override
    public synchronized Optional<Reason> play(double[] samples, int sampleRateHz) {
        silence();
        if (name == null) {
            return Optional.of(Reason.of("listen-no-output"));
        }
        if (playsRig.test(name)) {
            return Optional.of(Reason.of("listen-output-is-the-rigs", name));
        }
        List<String> known = new ArrayList<>();
        for (int channels = 1; channels <= 2; channels++) {
            AudioFormat format = new AudioFormat(sampleRateHz, 16, channels, true, false);
            DataLine.Info line = new DataLine.Info(Clip.class, format);
            for (Mixer.Info info : AudioSystem.getMixerInfo()) {
                Mixer mixer = AudioSystem.getMixer(info);
                if (mixer.isLineSupported(line)) {
                    if (info.getName().equals(name)) {
                        return play(mixer, line, format, samples);
                    }
                    known.add(info.getName());
                }
            }
        }
        String others = String.join(", ", known.stream().distinct().toList());
        return Optional.of(Reason.of("listen-output-missing", name, others.isEmpty() ? "-" : others));
    }

    private Optional<Reason> play(Mixer mixer, DataLine.Info line, AudioFormat format, double[] samples) {
        byte[] bytes = bytes(samples, format.getChannels());
        try {
            clip = (Clip) mixer.getLine(line);
            clip.open(format, bytes, 0, bytes.length);
            clip.start();
            return Optional.empty();
        } catch (LineUnavailableException | IllegalArgumentException e) {
            // The second: the device went between being asked and being opened.
            silence();
            return Optional.of(Reason.of("listen-output-closed", name, String.valueOf(e.getMessage())));
        }
    }

    private static byte[] bytes(double[] samples, int channels) {
        byte[] bytes = new byte[2 * channels * samples.length];
        for (int i = 0; i < samples.length * channels; i++) {
            double within = Math.max(-1, Math.min(1, samples[i / channels]));
            int value = (int) Math.round(within * Short.MAX_VALUE);
            bytes[2 * i] = (byte) value;
            bytes[2 * i + 1] = (byte) (value >> 8);
        }
        return bytes;
    }

    @Override
    public synchronized void silence() {
        if (clip != null) {
            clip.stop();
            clip.close();
            clip = null;
        }
    }

    @Override
    public void close() {
        silence();
    }
}
