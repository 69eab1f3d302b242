package org.docksweep.kiosk.listening;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.docksweep.acoustic.ResidueSound;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ChannelRole;

/**
 * Plays and keeps what was heard besides the sweep. Asked for the same capture again it plays a step louder, up to the loudest,
 * then low again. Lives on one thread; only {@link #silence} does not.
 */
public final class Listening {
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss", Locale.ROOT).withZone(ZoneOffset.UTC);
    /** A file has room for what is this far below the sweep's peak, or for its loudest instant. */
    private static final double FILE_BELOW = 0.1;

    private static final double SCALE_24 = (1 << 23) - 1;

    private final Earphones ears;
    private final Path folder;
    private Capture at;
    private ResidueSound sound;
    private int step;

    /**
     * Makes a listening place.
     *
     * @param ears what is listened with
     * @param folder where files are kept; made with the first one
     */
    public Listening(Earphones ears, Path folder) {
        this.ears = ears;
        this.folder = folder;
    }

    /**
     * What is measured and listened to.
     *
     * @param tag cabinet
     * @param testPointCode test point
     * @param capture its capture
     */
    public record Sweep(AssetTag tag, String testPointCode, Capture capture) {}

    /**
     * What there is to say.
     *
     * @param state how it went
     * @param text sentence
     */
    public record Said(ReadingState state, Reason text) {}

    /**
     * Plays.
     *
     * @param sweep what to listen to
     * @return what is heard, or why nothing is
     */
    public Said listen(Sweep sweep) {
        boolean again = sweep.capture() == at;
        Optional<Said> not = render(sweep);
        if (not.isPresent()) {
            return not.get();
        }
        step = again ? (step + 1) % SafeLevel.STEPS : 0;
        Optional<Reason> refused = ears.play(SafeLevel.samples(sound, step), sound.sampleRateHz());
        if (refused.isPresent()) {
            step = SafeLevel.STEPS - 1;
            return new Said(ReadingState.WATCH, refused.get());
        }
        return new Said(
                ReadingState.OK,
                Reason.of(
                        "listen-plays",
                        sweep.testPointCode(),
                        Long.toString(Math.round(-sound.loudestDb())),
                        Integer.toString(step + 1),
                        Integer.toString(SafeLevel.STEPS)));
    }

    /**
     * Keeps the sound as a WAV file of 24 bit.
     *
     * @param sweep what to keep
     * @return where it lies, or why it does not
     */
    public Said keep(Sweep sweep) {
        Optional<Said> not = render(sweep);
        if (not.isPresent()) {
            return not.get();
        }
        String name = (sweep.tag() + "-" + sweep.testPointCode()).replaceAll("[^A-Za-z0-9-]", "_") + "-"
                + STAMP.format(sweep.capture().header().capturedAt()) + ".wav";
        double loudestPa = sound.sweepPeakPa() * Math.pow(10, sound.loudestDb() / 20);
        double fullScalePa = Math.max(FILE_BELOW * sound.sweepPeakPa(), loudestPa);
        try {
            write(name, fullScalePa);
        } catch (IOException e) {
            return new Said(ReadingState.FAULT, Reason.of("listen-not-kept", name, String.valueOf(e.getMessage())));
        }
        return new Said(
                ReadingState.OK,
                Reason.of(
                        "listen-kept",
                        folder.resolve(name).toString(),
                        String.format(Locale.ROOT, "%.3g", fullScalePa)));
    }

    /** Ends what plays; may be called from any thread. */
    public void silence() {
        ears.silence();
    }

    private Optional<Said> render(Sweep sweep) {
        if (sweep.capture() == at) {
            return Optional.empty();
        }
        at = null;
        if (!sweep.capture().has(ChannelRole.MICROPHONE)) {
            return Optional.of(new Said(ReadingState.WATCH, Reason.of("listen-no-microphone", sweep.testPointCode())));
        }
        Optional<ResidueSound> made = ResidueSound.of(sweep.capture());
        if (made.isEmpty()) {
            return Optional.of(new Said(ReadingState.WATCH, Reason.of("listen-spoiled", sweep.testPointCode())));
        }
        sound = made.get();
        at = sweep.capture();
        step = SafeLevel.STEPS - 1;
        return Optional.empty();
    }

    /** Whole or not at all: written beside, then moved. */
    private void write(String name, double fullScalePa) throws IOException {
        double[] pascals = sound.pascals();
        byte[] bytes = new byte[3 * pascals.length];
        for (int i = 0; i < pascals.length; i++) {
            int value = (int) Math.round(SCALE_24 * Math.max(-1, Math.min(1, pascals[i] / fullScalePa)));
            bytes[3 * i] = (byte) value;
            bytes[3 * i + 1] = (byte) (value >> 8);
            bytes[3 * i + 2] = (byte) (value >> 16);
        }
        AudioFormat format = new AudioFormat(sound.sampleRateHz(), 24, 1, true, false);
        Files.createDirectories(folder);
        Path beside = folder.resolve(name + ".part");
        try (AudioInputStream in = new AudioInputStream(new ByteArrayInputStream(bytes), format, pascals.length)) {
            AudioSystem.write(in, AudioFileFormat.Type.WAVE, beside.toFile());
            Files.move(beside, folder.resolve(name), StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(beside);
        }
    }
}
