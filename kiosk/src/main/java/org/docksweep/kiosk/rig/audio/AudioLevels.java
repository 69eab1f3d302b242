package org.docksweep.kiosk.rig.audio;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.docksweep.fleet.Reason;
import org.docksweep.kiosk.rig.ChannelLevel;
import org.docksweep.kiosk.rig.LevelSource;
import org.docksweep.sweep.RigException;

/**
 * Live levels of all opened inputs of an audio interface, ten times a second, whatever they are connected to; with a
 * quiet tone at the output or without. The tone is silenced, and listening ends, when an input clips: then a channel is
 * not where it was thought to be, or somebody turned a knob.
 */
public final class AudioLevels implements LevelSource {
    static final double TONE_HZ = 1000;
    /** As loud as the quiet probe at most, by the volts entered. */
    static final double MOST_VOLTS_RMS = 0.1;
    /** And never louder than this, because what was entered may be wrong. */
    static final double MOST_FULL_SCALE = 0.01;

    private static final double FADE_S = 0.1;
    private static final int BLOCKS_PER_S = 100;
    private static final int BLOCKS_SHOWN = 10;

    private final AudioSettings settings;
    private final boolean tone;
    private final LineOpener opener;

    /**
     * Prepares.
     *
     * @param settings settings as {@link AudioSettings} says
     * @param tone whether a tone plays
     * @throws IllegalArgumentException if a setting is wrong; names it
     */
    public AudioLevels(Map<String, String> settings, boolean tone) {
        this(AudioSettings.of(settings), tone, new AudioLines());
    }

    AudioLevels(AudioSettings settings, boolean tone, LineOpener opener) {
        this.settings = settings;
        this.tone = tone;
        this.opener = opener;
    }

    @Override
    public void listen(BooleanSupplier stopped, Consumer<List<ChannelLevel>> hears) throws RigException {
        try (CaptureLine capture = opener.openCapture(settings)) {
            if (!tone) {
                capture.start();
                read(capture, stopped, hears, () -> {});
                return;
            }
            try (PlayLine play = opener.openPlay(settings)) {
                capture.start();
                Tone sounding = new Tone(play);
                try {
                    read(capture, stopped, hears, sounding::next);
                } finally {
                    play.silence();
                }
            }
        } catch (IllegalStateException e) {
            throw lost("audio-lost-input", e);
        }
    }

    private void read(CaptureLine line, BooleanSupplier stopped, Consumer<List<ChannelLevel>> hears, Step everyBlock)
            throws RigException {
        int block = settings.sampleRateHz() / BLOCKS_PER_S;
        int channels = line.channels();
        int sampleBytes = line.codec().bytesPerSample();
        byte[] bytes = new byte[block * channels * sampleBytes];
        float[][] samples = new float[channels][block * BLOCKS_SHOWN];
        for (int n = 0; !stopped.getAsBoolean(); n = (n + 1) % BLOCKS_SHOWN) {
            if (line.read(bytes) != bytes.length) {
                throw lost("audio-lost-input", null);
            }
            // After the first block has come, so that nothing plays that is not heard.
            everyBlock.take();
            for (int i = 0; i < block * channels; i++) {
                samples[i % channels][n * block + i / channels] = line.codec().read(bytes, i * sampleBytes);
            }
            if (n == BLOCKS_SHOWN - 1) {
                List<ChannelLevel> levels = levels(samples);
                hears.accept(levels);
                if (tone && levels.stream().anyMatch(ChannelLevel::clipped)) {
                    throw new RigException(RigException.Cause.REFUSED, Reason.of("rigpage-tone-clips"));
                }
            }
        }
    }

    private static List<ChannelLevel> levels(float[][] samples) {
        List<ChannelLevel> levels = new ArrayList<>();
        for (int c = 0; c < samples.length; c++) {
            levels.add(ChannelLevel.of(Integer.toString(c + 1), samples[c], 0, samples[c].length));
        }
        return levels;
    }

    private static RigException lost(String key, Exception cause) {
        RigException lost = new RigException(RigException.Cause.DEVICE_LOST, Reason.of(key));
        lost.initCause(cause);
        return lost;
    }

    /** Something done after every block. */
    private interface Step {
        void take() throws RigException;
    }

    /** Writes the tone block by block, most of a buffer ahead, so that the stream does not run dry. */
    private final class Tone {
        private final PlayLine line;
        private final double amplitude;
        private long frame;

        Tone(PlayLine line) {
            this.line = line;
            this.amplitude = Math.min(
                    MOST_FULL_SCALE,
                    MOST_VOLTS_RMS * Math.sqrt(2) / settings.output().voltsPerFullScale());
        }

        void next() throws RigException {
            int blocks = 1;
            if (frame == 0) {
                line.start();
                blocks = Math.max(1, settings.bufferMs() * BLOCKS_PER_S * 4 / 5 / 1000);
            }
            for (int i = 0; i < blocks; i++) {
                block();
            }
        }

        private void block() throws RigException {
            int block = settings.sampleRateHz() / BLOCKS_PER_S;
            int frameBytes = line.codec().bytesPerSample() * line.channels();
            byte[] bytes = new byte[block * frameBytes];
            for (int n = 0; n < block; n++, frame++) {
                double seconds = frame / (double) settings.sampleRateHz();
                double value = amplitude * Math.min(1, seconds / FADE_S) * Math.sin(2 * Math.PI * TONE_HZ * seconds);
                line.codec()
                        .write(
                                value,
                                bytes,
                                n * frameBytes
                                        + (settings.output().channel() - 1)
                                                * line.codec().bytesPerSample());
            }
            if (line.write(bytes) != bytes.length) {
                throw lost("audio-lost-output", null);
            }
        }
    }
}
