package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.RecordingFiles;
import org.docksweep.sweep.WavFormat;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a command says of files it cannot use: one line with file and field, exit code 3, no stack trace. */
class BadInputTest {
    private static final int FMT = 20;
    private static final int RATE = FMT + 4;

    @TempDir
    Path folder;

    private Path wav;
    private Path sidecar;

    @BeforeEach
    void copyAGoodRecording() throws IOException {
        wav = folder.resolve("good.wav");
        sidecar = folder.resolve("good.json");
        Files.copy(ReplaySet.FOLDER.resolve("healthy.wav"), wav);
        Files.copy(ReplaySet.FOLDER.resolve("healthy.json"), sidecar);
    }

    @Test
    void readsTheGoodRecordingTheOthersAreMadeFrom() {
        assertThat(CommandRun.of("curve", wav).exitCode()).isZero();
    }

    @Test
    void refusesATruncatedFile() throws IOException {
        byte[] bytes = Files.readAllBytes(wav);
        Files.write(wav, Arrays.copyOf(bytes, bytes.length / 2));
        assertRefused("good.wav", "chunk \"data\"", "truncated");
    }

    @Test
    void refusesAFileOfNoLength() throws IOException {
        Files.write(wav, new byte[0]);
        assertRefused("good.wav", "header", "only 0 bytes");
    }

    @Test
    void refusesDataOfNoLength() throws IOException {
        byte[] bytes = Files.readAllBytes(wav);
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putInt(dataAt(bytes) + 4, 0);
        Files.write(wav, Arrays.copyOf(bytes, dataAt(bytes) + 8));
        assertRefused("good.wav", "data", "at least one");
    }

    @Test
    void refusesAnotherSampleRateThanTheSidecars() throws IOException {
        patch(RATE, 44100);
        assertRefused("good.wav", "sample rate", "48000", "44100");
    }

    @Test
    void refusesSamplesThatAreNotNumbers() throws IOException {
        Capture capture = RecordingFiles.read(wav);
        RecordingFiles.write(wav, capture, WavFormat.FLOAT_32);
        byte[] bytes = Files.readAllBytes(wav);
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putFloat(dataAt(bytes) + 8, Float.NaN);
        Files.write(wav, bytes);
        assertRefused("good.wav", "sample 0 of channel 0", "NaN");
    }

    @Test
    void refusesAHeaderThatClaimsFourGigabytes() throws IOException {
        byte[] bytes = Files.readAllBytes(wav);
        patch(dataAt(bytes) + 4, 0xFFFFFFFF);
        assertRefused("good.wav", "chunk \"data\"", "4294967295");
    }

    @Test
    void refusesAFileOfFourGigabytes() throws IOException {
        try (RandomAccessFile file = new RandomAccessFile(wav.toFile(), "rw")) {
            file.setLength(4L << 30);
        }
        assertRefused("good.wav", "file size", "4294967296");
    }

    @Test
    void refusesARecordingWithoutItsSidecar() throws IOException {
        Files.delete(sidecar);
        assertRefused("good.json", "file", "missing");
    }

    @Test
    void refusesASidecarThatNamesMoreChannels() throws IOException {
        replace(
                "\"role\" : \"CURRENT\"",
                "\"role\" : \"CURRENT\", \"unitsPerFullScale\" : 1.0 }, { \"role\" : \"MICROPHONE\"");
        assertRefused("good.wav", "channels", "3", "2");
    }

    @Test
    void refusesASidecarWithAFieldOfAnotherKind() throws IOException {
        replace("\"repeats\" : 1", "\"repeats\" : \"one\"");
        assertRefused("good.json", "repeats", "must be a number");
    }

    @Test
    void refusesASweepTooLongToAnalyse() throws IOException {
        String text = Files.readString(sidecar);
        Files.writeString(
                sidecar,
                text.replaceAll("\"rateConstantS\" : [0-9.]+", "\"rateConstantS\" : 8.5")
                        .replaceAll("\"sampleRateHz\" : 48000", "\"sampleRateHz\" : 96000"));
        patch(RATE, 96000);
        assertRefused("good.wav", "sweep", "frames");
    }

    @Test
    void saysThatChannelsAreExchanged() throws IOException {
        CaptureHeader header = RecordingFiles.read(wav).header();
        Capture good = RecordingFiles.read(wav);
        float[] volts = good.fullScale(ChannelRole.VOLTAGE);
        float[] amperes = good.fullScale(ChannelRole.CURRENT);
        RecordingFiles.write(wav, new Capture(header, new float[][] {amperes, volts}));
        CommandRun run = CommandRun.of("curve", wav);
        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains("exchanged");
        assertThat(run.out()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "not a zip", "PK\u0003\u0004 broken"})
    void refusesABrokenArchive(String content) throws IOException {
        Path zip = folder.resolve("broken.zip");
        Files.writeString(zip, content);
        assertRefused(CommandRun.of("curve", zip), "broken.zip");
    }

    @Test
    void refusesFilesThatAreNotThere() {
        assertRefused(CommandRun.of("curve", folder.resolve("none.wav")), "none.wav", "missing");
        assertRefused(CommandRun.of("curve", folder.resolve("none.zip")), "none.zip", "missing");
        assertRefused(CommandRun.of("curve", folder.resolve("none.s1p")), "none.s1p");
        assertRefused(CommandRun.of("judge", folder.resolve("none")), "fleet.json");
        assertRefused(CommandRun.of("curve", wav, "--calibration", folder.resolve("none.json")), "none.json");
        assertRefused(CommandRun.of("render", "MCH-999999", folder.resolve("x.wav")), "MCH-999999");
        assertRefused(CommandRun.of("render", "nonsense", folder.resolve("x.wav")), "nonsense");
    }

    @Test
    void refusesTheCalibrationOfAnotherRig() throws IOException {
        Path other = folder.resolve("other.json");
        String text = Files.readString(ReplaySet.FOLDER.resolve("calibration.json"));
        Files.writeString(other, text.replace("virtual-1", "virtual-2"));
        assertRefused(CommandRun.of("curve", wav, "--calibration", other), "good.wav", "rigId", "virtual-2");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "null", "[]", "{}", "{\"rigId\":\"r\",\"points\":[null]}", "{\"rigId\":7"})
    void refusesAnyOtherJsonAsACalibration(String json) throws IOException {
        Path file = folder.resolve("other.json");
        Files.writeString(file, json);
        assertRefused(CommandRun.of("curve", wav, "--calibration", file), "other.json");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "tag,file",
                "cabinet,model,test_point,file\nA,SPIN12,IN",
                "cabinet,model,test_point,file\nA,NONE,IN,good.wav",
                "cabinet,model,test_point,file\nA,SPIN12,NL4,good.wav",
                "cabinet,model,test_point,file\nA,SPIN12,IN,good.wav\nA,SPIN12,IN,good.wav",
                "cabinet,model,test_point,file\nA,SPIN12,IN,good.wav\nA,PEBL8,IN,good.wav"
            })
    void refusesAListThatDoesNotFit(String list) throws IOException {
        Files.writeString(folder.resolve("recordings.csv"), list);
        for (String command : List.of("judge", "teach")) {
            assertRefused(
                    CommandRun.of(command, folder, "-q", "--models", ReplaySet.FOLDER.resolve("models.json")),
                    "recordings.csv");
        }
    }

    @Test
    void refusesARecordingOfAnotherKindOfTestPoint() throws IOException {
        replace("TERMINALS", "LINE_INPUT");
        Files.writeString(folder.resolve("recordings.csv"), "cabinet,model,test_point,file\nA,SPIN12,IN,good.wav\n");
        assertRefused(
                CommandRun.of("judge", folder, "-q", "--models", ReplaySet.FOLDER.resolve("models.json")),
                "good.wav",
                "testPointKind",
                "LINE_INPUT");
    }

    private void assertRefused(String... parts) {
        assertRefused(CommandRun.of("curve", wav), parts);
    }

    private static void assertRefused(CommandRun run, String... parts) {
        assertThat(run.exitCode()).as(run.err()).isEqualTo(3);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().strip().lines()).hasSize(1);
        assertThat(run.err()).contains(parts).doesNotContain("Exception", "\tat ");
    }

    private void patch(int at, int value) throws IOException {
        byte[] bytes = Files.readAllBytes(wav);
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putInt(at, value);
        Files.write(wav, bytes);
    }

    private void replace(String good, String bad) throws IOException {
        String text = Files.readString(sidecar);
        assertThat(text).contains(good);
        Files.writeString(sidecar, text.replace(good, bad));
    }

    private static int dataAt(byte[] bytes) {
        return new String(bytes, 0, 200, StandardCharsets.ISO_8859_1).indexOf("data");
    }
}
