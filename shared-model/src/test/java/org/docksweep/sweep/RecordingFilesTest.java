package org.docksweep.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.TestPointKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RecordingFilesTest {
    private static final long SEED_SAMPLES = 20260501;
    private static final long SEED_FUZZ = 20260502;
    private static final int FUZZ_CASES = 20_000;

    @TempDir
    Path folder;

    @Test
    void readsBackTheSameFloatSamplesAndHeader() throws IOException {
        Capture capture = capture(1000);
        Path wav = folder.resolve("one.wav");
        RecordingFiles.write(wav, capture);
        Capture back = RecordingFiles.read(wav);
        assertThat(back.header()).isEqualTo(capture.header());
        for (CaptureChannel channel : capture.header().channels()) {
            assertThat(back.fullScale(channel.role())).isEqualTo(capture.fullScale(channel.role()));
        }
        assertThat(folder).isDirectoryNotContaining("glob:**.part");
    }

    @Test
    void readsBackIntegerSamplesToHalfAStep() throws IOException {
        Capture capture = capture(1000);
        Path wav = folder.resolve("one.wav");
        RecordingFiles.write(wav, capture, WavFormat.INT_24);
        float[] back = RecordingFiles.read(wav).fullScale(ChannelRole.CURRENT);
        float[] samples = capture.fullScale(ChannelRole.CURRENT);
        for (int i = 0; i < back.length; i++) {
            assertThat(back[i]).isCloseTo(samples[i], within((float) Math.scalb(1.0, -24)));
        }
    }

    @Test
    void hashesWavAndSidecarTogether() throws Exception {
        Path wav = folder.resolve("one.wav");
        RecordingFiles.write(wav, capture(10));
        ByteArrayOutputStream both = new ByteArrayOutputStream();
        both.write(Files.readAllBytes(wav));
        both.write(Files.readAllBytes(folder.resolve("one.json")));
        String expected =
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(both.toByteArray()));
        assertThat(RecordingFiles.contentSha256(wav)).isEqualTo(expected);
        RecordingFiles.Encoded encoded = RecordingFiles.encode("one.wav", capture(10), WavFormat.FLOAT_32);
        assertThat(RecordingFiles.contentSha256(encoded)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"1,8", "1,16", "1,24", "1,32", "3,32", "3,64"})
    void readsEverySampleFormatPlainAndExtensible(int tag, int bits) throws IOException {
        double[] values = {0, 0.5, -0.5, -1, 0.25};
        for (boolean extensible : new boolean[] {false, true}) {
            byte[] wav = join(fmt(tag, 1, 48000, bits, extensible), chunk("data", pcm(tag, bits, values)));
            Capture capture = RecordingFiles.decode("x.wav", wav, "x.json", sidecar(1));
            for (int i = 0; i < values.length; i++) {
                assertThat((double) capture.fullScale(ChannelRole.VOLTAGE)[i]).isEqualTo(values[i]);
            }
        }
    }

    @Test
    void readsChunksInAnyOrderAndSkipsOthers() throws IOException {
        byte[] odd = chunk("LIST", new byte[] {1, 2, 3});
        byte[] wav = join(odd, chunk("data", pcm(1, 16, new double[] {0.5})), odd, fmt(1, 1, 48000, 16, false));
        assertThat(RecordingFiles.decode("x.wav", wav, "x.json", sidecar(1)).fullScale(ChannelRole.VOLTAGE))
                .containsExactly(0.5f);
    }

    @Test
    void refusesChunksThatClaimMoreThanTheFileHas() {
        byte[] data = chunk("data", new byte[4]);
        ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN).putInt(4, -1);
        assertRefused(join(fmt(1, 1, 48000, 16, false), data), "data", "claims 4294967295 bytes", "truncated");
    }

    @Test
    void refusesTruncatedFiles() throws IOException {
        byte[] wav =
                RecordingFiles.encode("x.wav", capture(100), WavFormat.FLOAT_32).wav();
        byte[] cut = java.util.Arrays.copyOf(wav, wav.length - 10);
        assertThatThrownBy(() -> RecordingFiles.decode("x.wav", cut, "x.json", sidecar(3)))
                .isInstanceOf(RecordingException.class)
                .hasMessageContainingAll("x.wav", "data", "truncated");
    }

    @Test
    void refusesWhatIsNoWav() {
        assertRefused(new byte[0], "header", "RIFF");
        assertRefused("RF64....WAVE".getBytes(StandardCharsets.US_ASCII), "header", "RF64");
        assertRefused(join(chunk("data", new byte[4])), "fmt chunk", "missing");
        assertRefused(join(fmt(1, 1, 48000, 16, false)), "data chunk", "missing");
        byte[] fmt = fmt(1, 1, 48000, 16, false);
        assertRefused(join(fmt, fmt, chunk("data", new byte[4])), "fmt", "twice");
    }

    @Test
    void refusesEmptyAndBrokenData() {
        assertRefused(join(fmt(1, 1, 48000, 16, false), chunk("data", new byte[0])), "data", "at least one");
        assertRefused(join(fmt(1, 1, 48000, 24, false), chunk("data", new byte[4])), "data", "whole number of frames");
    }

    @Test
    void refusesRatesAndChannelsThatContradictTheSidecar() {
        assertRefused(join(fmt(1, 1, 44100, 16, false), chunk("data", new byte[4])), "sample rate", "48000", "44100");
        assertRefused(join(fmt(1, 2, 48000, 16, false), chunk("data", new byte[4])), "channels", "but is 2");
        assertRefused(join(fmt(1, 60000, 48000, 16, false), chunk("data", new byte[4])), "channels", "60000");
        assertRefused(join(fmt(1, 1, 0, 16, false), chunk("data", new byte[4])), "sample rate", "but is 0");
    }

    @Test
    void refusesOddFormats() {
        assertRefused(join(fmt(85, 1, 48000, 16, false), chunk("data", new byte[4])), "sample format", "tag 85");
        assertRefused(join(fmt(1, 1, 48000, 12, false), chunk("data", new byte[4])), "sample format", "12 bits");
        byte[] fmt = fmt(1, 1, 48000, 16, true);
        fmt[8 + 30] ^= 1;
        assertRefused(join(fmt, chunk("data", new byte[4])), "sub-format", "another");
    }

    @Test
    void refusesSamplesThatAreNoNumbers() {
        byte[] wav = join(fmt(3, 1, 48000, 32, false), chunk("data", pcm(3, 32, new double[] {0, Double.NaN})));
        assertRefused(wav, "sample 1 of channel 0", "NaN");
        byte[] tooBig = join(fmt(3, 1, 48000, 64, false), chunk("data", pcm(3, 64, new double[] {1e300})));
        assertRefused(tooBig, "sample 0 of channel 0", "Infinity");
        Capture capture = capture(10);
        capture.fullScale(ChannelRole.CURRENT)[3] = Float.NaN;
        assertThatThrownBy(() -> RecordingFiles.write(folder.resolve("nan.wav"), capture))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("sample 3 of channel 1");
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void refusesMissingFilesByName() throws IOException {
        Path wav = folder.resolve("alone.wav");
        assertThatThrownBy(() -> RecordingFiles.read(wav))
                .isInstanceOf(RecordingException.class)
                .hasMessageContainingAll("alone.wav", "missing");
        Files.write(wav, new byte[10]);
        assertThatThrownBy(() -> RecordingFiles.read(wav))
                .isInstanceOf(RecordingException.class)
                .hasMessageContainingAll("alone.json", "missing", "Put the sidecar");
        assertThatThrownBy(() -> RecordingFiles.read(folder.resolve("alone.flac")))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining(".wav");
    }

    @Test
    void refusesFilesThatAreTooLarge() throws IOException {
        Path wav = folder.resolve("big.wav");
        try (var file = new java.io.RandomAccessFile(wav.toFile(), "rw")) {
            file.setLength(5L << 30);
        }
        assertThatThrownBy(() -> RecordingFiles.read(wav))
                .isInstanceOf(RecordingException.class)
                .hasMessageContainingAll("big.wav", "5368709120");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "format" : "docksweep-recording" | "format" : "other"   | format
            "version" : 1                    | "version" : 2        | version
            "version" : 1                    | "version" : 1.5      | version
            2026-05-01T01:23:45Z             | yesterday            | capturedAt
            "rigId" : "rig-1"                | "rigId" : " "        | rigId
            TERMINALS                        | TERMINAL             | testPointKind
            "role" : "VOLTAGE"               | "role" : "VOLTS"     | channels[0].role
            "unitsPerFullScale" : 40.0       | "unitsPerFullScale" : -1 | channels[0].unitsPerFullScale
            "repeats" : 2                    | "repeats" : 9        | repeats
            "preRollS" : 0.5                 | "preRollS" : "half"  | preRollS
            "preRollS" : 0.5                 | "preroll" : 0.5      | preroll
            "startHz" : 20.0                 | "startHz" : 0        | startHz
            "stopHz" : 20000.0               | "stopHz" : 30000     | stopHz
            "stopHz" : 20000.0               | "stopHz" : NaN       | content
            "sampleRateHz" : 48000           | "sampleRateHz" : 4.8e13 | sampleRateHz
            "ambientCelsius" : 18.5          | "ambientCelsius" : 99 | ambientCelsius
            "tailS" : 0.6                    | "tailS" : 0.6, "tailS" : 0.7 | content
            """)
    void refusesSidecarsNamingTheField(String good, String bad, String field) {
        String text = new String(sidecar(1), StandardCharsets.UTF_8);
        assertThat(text).contains(good);
        byte[] json = text.replace(good, bad).getBytes(StandardCharsets.UTF_8);
        byte[] wav = join(fmt(1, 1, 48000, 16, false), chunk("data", new byte[4]));
        assertThatThrownBy(() -> RecordingFiles.decode("x.wav", wav, "x.json", json))
                .isInstanceOf(RecordingException.class)
                .hasMessageContainingAll("x.json", field, "docs/recording-format.md");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "[]", "null", "{", "{} {}", "3", "\"text\""})
    void refusesSidecarsThatAreNoObject(String json) {
        byte[] wav = join(fmt(1, 1, 48000, 16, false), chunk("data", new byte[4]));
        assertThatThrownBy(() -> RecordingFiles.decode("x.wav", wav, "x.json", json.getBytes(StandardCharsets.UTF_8)))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("x.json");
    }

    @Test
    void answersDamagedFilesWithARecordingExceptionOnly() throws IOException {
        RecordingFiles.Encoded good = RecordingFiles.encode("x.wav", capture(50), WavFormat.INT_24);
        Random random = new Random(SEED_FUZZ);
        int refused = 0;
        for (int n = 0; n < FUZZ_CASES; n++) {
            byte[] wav = n % 2 == 0 ? damaged(good.wav(), random) : good.wav();
            byte[] json = n % 2 == 1 ? damaged(good.sidecar(), random) : good.sidecar();
            try {
                Capture capture = RecordingFiles.decode("x.wav", wav, "x.json", json);
                assertThat(capture.frames()).isPositive();
            } catch (RecordingException e) {
                refused++;
                assertThat(e.file()).isIn("x.wav", "x.json");
            } catch (RuntimeException e) {
                fail("case " + n + " ended in " + e, e);
            }
        }
        System.out.println(
                "recordings: " + FUZZ_CASES + " damaged files read, " + refused + " refused, no other error");
        // Damage to sample bytes is not noticed by any header check; most damage to the text is.
        assertThat(refused).isBetween(FUZZ_CASES / 4, FUZZ_CASES);
    }

    private static byte[] damaged(byte[] bytes, Random random) {
        byte[] copy = bytes.clone();
        // Headers sit at the front: aim half of the damage at it.
        int reach = random.nextBoolean() ? Math.min(64, copy.length) : copy.length;
        for (int k = random.nextInt(4); k >= 0; k--) {
            int at = random.nextInt(reach);
            copy[at] = switch (random.nextInt(4)) {
                case 0 -> (byte) random.nextInt();
                case 1 -> (byte) 0xFF;
                case 2 -> 0;
                default -> (byte) (copy[at] ^ 1 << random.nextInt(8));
            };
        }
        return random.nextInt(4) == 0 ? java.util.Arrays.copyOf(copy, random.nextInt(copy.length)) : copy;
    }

    private static void assertRefused(byte[] wav, String... parts) {
        assertThatThrownBy(() -> RecordingFiles.decode("x.wav", wav, "x.json", sidecar(1)))
                .isInstanceOf(RecordingException.class)
                .hasMessageContaining("x.wav")
                .hasMessageContainingAll(parts);
    }

    private static byte[] sidecar(int channels) {
        return Sidecar.encode(header(channels));
    }

    private static CaptureHeader header(int channels) {
        LevelMask mask = new LevelMask(List.of(new LevelMask.Point(10, 1), new LevelMask.Point(22000, 2)));
        SweepPlan plan = new SweepPlan(SweepSignal.synchronised(20, 20000, 2, 48000, mask), 0.5, 0.6, 2);
        List<CaptureChannel> all = List.of(
                new CaptureChannel(ChannelRole.VOLTAGE, 40),
                new CaptureChannel(ChannelRole.CURRENT, 8),
                new CaptureChannel(ChannelRole.MICROPHONE, 20));
        return new CaptureHeader(
                Instant.parse("2026-05-01T01:23:45Z"),
                "rig-1",
                TestPointKind.TERMINALS,
                all.subList(0, channels),
                plan,
                18.5);
    }

    private static Capture capture(int frames) {
        Random random = new Random(SEED_SAMPLES);
        float[][] samples = new float[3][frames];
        for (float[] channel : samples) {
            for (int i = 0; i < frames; i++) {
                channel[i] = random.nextFloat() * 2 - 1;
            }
        }
        return new Capture(header(3), samples);
    }

    private static byte[] pcm(int tag, int bits, double[] values) {
        ByteBuffer out = ByteBuffer.allocate(values.length * bits / 8).order(ByteOrder.LITTLE_ENDIAN);
        for (double value : values) {
            long whole = (long) (value * Math.scalb(1.0, bits - 1)) + (bits == 8 ? 128 : 0);
            if (tag == 3 && bits == 32) {
                out.putFloat((float) value);
            } else if (tag == 3) {
                out.putDouble(value);
            } else {
                for (int shift = 0; shift < bits; shift += 8) {
                    out.put((byte) (whole >> shift));
                }
            }
        }
        return out.array();
    }

    private static byte[] fmt(int tag, int channels, int rate, int bits, boolean extensible) {
        ByteBuffer out = ByteBuffer.allocate(extensible ? 40 : 16).order(ByteOrder.LITTLE_ENDIAN);
        out.putShort((short) (extensible ? 0xFFFE : tag))
                .putShort((short) channels)
                .putInt(rate);
        out.putInt(rate * channels * bits / 8);
        out.putShort((short) (channels * bits / 8)).putShort((short) bits);
        if (extensible) {
            out.putShort((short) 22).putShort((short) bits).putInt(0).putShort((short) tag);
            out.put(HexFormat.of().parseHex("000000001000800000aa00389b71"));
        }
        return chunk("fmt ", out.array());
    }

    private static byte[] chunk(String id, byte[] content) {
        ByteBuffer out = ByteBuffer.allocate(8 + content.length + (content.length & 1));
        out.order(ByteOrder.LITTLE_ENDIAN).put(id.getBytes(StandardCharsets.US_ASCII));
        out.putInt(content.length).put(content);
        return out.array();
    }

    private static byte[] join(byte[]... chunks) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes("RIFF\0\0\0\0WAVE".getBytes(StandardCharsets.US_ASCII));
        for (byte[] chunk : chunks) {
            out.writeBytes(chunk);
        }
        return out.toByteArray();
    }
}
