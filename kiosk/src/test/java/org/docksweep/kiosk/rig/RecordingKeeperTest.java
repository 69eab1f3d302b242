package org.docksweep.kiosk.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureChannel;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.RecordingFiles;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepSignal;
import org.docksweep.sweep.WavFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordingKeeperTest {
    /** More than one piece of what is written at once, and not whole pieces. */
    private static final int FRAMES = 10_001;

    @TempDir
    private Path folder;

    @Test
    void keepsWhatCanBeReadAgainUnderTheHashOfItsBytes() throws Exception {
        RecordingKeeper keeper = new RecordingKeeper(folder);
        Capture capture = capture();
        String sha256 = keeper.keep(capture);
        byte[] archive = keeper.bytes(sha256);
        assertThat(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(archive)))
                .isEqualTo(sha256);
        assertThat(keeper.checked(sha256)).isEqualTo(keeper.file(sha256));
        Capture read = RecordingKeeper.read(keeper.file(sha256));
        assertThat(read.header()).isEqualTo(capture.header());
        for (ChannelRole role : List.of(ChannelRole.VOLTAGE, ChannelRole.CURRENT)) {
            assertThat(read.fullScale(role)).containsExactly(capture.fullScale(role));
        }
    }

    @Test
    void writesInPiecesTheBytesThatItMakesAtOnce() throws Exception {
        Capture capture = capture();
        for (WavFormat format : WavFormat.values()) {
            ByteArrayOutputStream pieces = new ByteArrayOutputStream();
            int bytes = RecordingFiles.writeWav("a.wav", capture, format, pieces);
            byte[] whole = RecordingFiles.encode("a.wav", capture, format).wav();
            assertThat(pieces.toByteArray()).hasSize(bytes).isEqualTo(whole);
        }
    }

    @Test
    void keepsTheSameOnceAndLeavesNothingHalf() throws Exception {
        RecordingKeeper keeper = new RecordingKeeper(folder);
        String sha256 = keeper.keep(capture());
        assertThat(keeper.keep(capture())).isEqualTo(sha256);
        try (Stream<Path> files = Files.walk(folder)) {
            assertThat(files.filter(Files::isRegularFile)).containsExactly(keeper.file(sha256));
        }
    }

    @Test
    void refusesWhatIsGoneOrWasChanged() throws Exception {
        RecordingKeeper keeper = new RecordingKeeper(folder);
        String sha256 = keeper.keep(capture());
        Files.write(keeper.file(sha256), new byte[] {1}, StandardOpenOption.APPEND);
        assertThatThrownBy(() -> keeper.checked(sha256))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("was changed");
        Files.delete(keeper.file(sha256));
        assertThatThrownBy(() -> keeper.checked(sha256))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("is not in the folder");
    }

    private static Capture capture() {
        LevelMask mask = new LevelMask(List.of(new LevelMask.Point(100, 1), new LevelMask.Point(10_000, 1)));
        SweepPlan plan = new SweepPlan(SweepSignal.synchronised(100, 10_000, 0.1, 48_000, mask), 0.05, 0.05, 1);
        List<CaptureChannel> channels =
                List.of(new CaptureChannel(ChannelRole.VOLTAGE, 20), new CaptureChannel(ChannelRole.CURRENT, 3));
        SplittableRandom random = new SplittableRandom(7);
        float[][] samples = new float[channels.size()][FRAMES];
        for (float[] channel : samples) {
            for (int i = 0; i < FRAMES; i++) {
                channel[i] = (float) random.nextDouble(-0.9, 0.9);
            }
        }
        return new Capture(
                new CaptureHeader(
                        Instant.parse("2026-05-08T19:10:00Z"), "test", TestPointKind.TERMINALS, channels, plan, null),
                samples);
    }
}
