package org.docksweep.kiosk.rig.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.HexFormat;
import java.util.SplittableRandom;
import javax.sound.sampled.AudioFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SampleCodecTest {
    private static final long SEED = 16;

    private static byte[] written(int bits, boolean bigEndian, double value) {
        byte[] bytes = new byte[bits / 8];
        new SampleCodec(bits, bigEndian).write(value, bytes, 0);
        return bytes;
    }

    private static byte[] hex(String text) {
        return HexFormat.of().parseHex(text);
    }

    /** Two's complement by hand. */
    @ParameterizedTest
    @CsvSource({
        "16, 0, 0000",
        "16, 0.5, 4000",
        "16, -0.5, c000",
        "16, -1, 8000",
        "16, 1, 7fff",
        "16, 3, 7fff",
        "16, -3, 8000",
        "16, 3.0517578125e-5, 0001",
        "16, -3.0517578125e-5, ffff",
        "16, 1.4e-5, 0000",
        "16, 0.99999, 7fff",
        "24, 0, 000000",
        "24, 0.5, 400000",
        "24, -0.5, c00000",
        "24, -1, 800000",
        "24, 1, 7fffff",
        "24, 1.1920928955078125e-7, 000001",
        "24, -1.1920928955078125e-7, ffffff",
        "24, 0.00787353515625, 010200",
        "32, 0, 00000000",
        "32, 0.5, 40000000",
        "32, -1, 80000000",
        "32, 1, 7fffffff",
        "32, -2, 80000000",
        "32, 4.656612873077393e-10, 00000001",
        "32, -4.656612873077393e-10, ffffffff",
        "16, NaN, 0000",
        "24, NaN, 000000",
        "32, NaN, 00000000",
        "16, Infinity, 7fff",
        "24, -Infinity, 800000"
    })
    void writesBothByteOrders(int bits, double value, String bigEndian) {
        byte[] expected = hex(bigEndian);
        assertThat(written(bits, true, value)).isEqualTo(expected);
        byte[] little = new byte[expected.length];
        for (int i = 0; i < little.length; i++) {
            little[i] = expected[expected.length - 1 - i];
        }
        assertThat(written(bits, false, value)).isEqualTo(little);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void readsEverySampleOf16BitsBack(boolean bigEndian) {
        SampleCodec codec = new SampleCodec(16, bigEndian);
        byte[] bytes = new byte[5];
        for (int step = Short.MIN_VALUE; step <= Short.MAX_VALUE; step++) {
            codec.write(step / 32768.0, bytes, 3);
            assertThat(codec.read(bytes, 3)).isEqualTo(step / 32768f);
        }
        assertThat(bytes).startsWith(0, 0, 0);
    }

    @ParameterizedTest
    @CsvSource({"24, false", "24, true", "32, false", "32, true"})
    void readsWiderSamplesBack(int bits, boolean bigEndian) {
        SampleCodec codec = new SampleCodec(bits, bigEndian);
        SplittableRandom random = new SplittableRandom(SEED);
        byte[] bytes = new byte[4];
        for (int i = 0; i < 100_000; i++) {
            // A float holds 24 bits, so both sizes must give it back exactly.
            float value = random.nextInt(-(1 << 23), 1 << 23) / (float) (1 << 23);
            codec.write(value, bytes, 0);
            assertThat(codec.read(bytes, 0)).isEqualTo(value);
        }
    }

    @Test
    void takesTheCodecOfAFormat() {
        assertThat(SampleCodec.of(new AudioFormat(48_000, 24, 4, true, true))).isEqualTo(new SampleCodec(24, true));
    }

    @Test
    void refusesWhatItCannotRead() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SampleCodec(20, false))
                .withMessageContaining("20");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SampleCodec.of(new AudioFormat(48_000, 16, 2, false, false)));
        AudioFormat padded = new AudioFormat(AudioFormat.Encoding.PCM_SIGNED, 48_000, 24, 2, 8, 48_000, false);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SampleCodec.of(padded))
                .withMessageContaining("filling bits");
    }
}
