package org.docksweep.kiosk.tones;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.Clip;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;

/**
 * An output of this computer. A person names it: the usual output may be the rig's, with an amplifier and a cabinet behind it, and
 * no tone may ever come out there.
 */
public final class SoundOutput implements Loudspeaker, AutoCloseable {
    private static final int SAMPLE_RATE_HZ = 44_100;
    private static final AudioFormat FORMAT = new AudioFormat(SAMPLE_RATE_HZ, 16, 1, true, false);

    private final Map<AnswerTone, Clip> clips = new EnumMap<>(AnswerTone.class);

    private SoundOutput() {}

    /**
     * Opens an output.
     *
     * @param name its whole name
     * @return the open output
     * @throws IllegalArgumentException if there is none of that name, or it does not open
     */
    public static SoundOutput open(String name) {
        List<String> known = new ArrayList<>();
        for (Mixer.Info info : AudioSystem.getMixerInfo()) {
            Mixer mixer = AudioSystem.getMixer(info);
            if (mixer.isLineSupported(new DataLine.Info(Clip.class, FORMAT))) {
                known.add(info.getName());
                if (info.getName().equals(name)) {
                    return open(name, mixer);
                }
            }
        }
        throw new IllegalArgumentException("there is no output \"" + name + "\" for tones; this computer has "
                + (known.isEmpty() ? "none" : String.join(", ", known)));
    }

    private static SoundOutput open(String name, Mixer mixer) {
        SoundOutput output = new SoundOutput();
        try {
            for (AnswerTone tone : AnswerTone.values()) {
                Clip clip = (Clip) mixer.getLine(new DataLine.Info(Clip.class, FORMAT));
                output.clips.put(tone, clip);
                byte[] bytes = bytes(tone.samples(SAMPLE_RATE_HZ));
                clip.open(FORMAT, bytes, 0, bytes.length);
            }
            return output;
        } catch (LineUnavailableException e) {
            output.close();
            throw new IllegalArgumentException(
                    "the output \"" + name + "\" for tones does not open: " + e.getMessage(), e);
        }
    }

    private static byte[] bytes(double[] samples) {
        byte[] bytes = new byte[2 * samples.length];
        for (int i = 0; i < samples.length; i++) {
            int value = (int) Math.round(samples[i] * Short.MAX_VALUE);
            bytes[2 * i] = (byte) value;
            bytes[2 * i + 1] = (byte) (value >> 8);
        }
        return bytes;
    }

    @Override
    public void play(AnswerTone tone) {
        silence();
        Clip clip = clips.get(tone);
        clip.setFramePosition(0);
        clip.start();
    }

    @Override
    public void silence() {
        for (Clip clip : clips.values()) {
            clip.stop();
            clip.flush();
        }
    }

    @Override
    public void close() {
        clips.values().forEach(Clip::close);
        clips.clear();
    }
}
