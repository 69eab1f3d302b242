package org.docksweep.sweep;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Reads a RIFF/WAVE file image. Believes nothing a header says before it has been held against the bytes that are
 * really there; memory taken is bounded by the size of the image. Integer samples of 8 (unsigned), 16, 24 and 32 bits,
 * float samples of 32 and 64 bits, plain or as WAVE_FORMAT_EXTENSIBLE, chunks in any order.
 */
final class WavReader {
    /** Largest file accepted: some minutes of a usual capture, and a bound for the memory of a reader. */
    static final int MAX_FILE_BYTES = 64 << 20;

    private static final int TAG_INT = 1;
    private static final int TAG_FLOAT = 3;
    private static final int TAG_EXTENSIBLE = 0xFFFE;

    /** Bytes 2 to 15 of the sub-format GUID that carries an ordinary format tag in its first two bytes. */
    private static final byte[] GUID_TAIL = {
        0, 0, 0, 0, 0x10, 0, (byte) 0x80, 0, 0, (byte) 0xAA, 0, 0x38, (byte) 0x9B, 0x71
    };

    private final String name;
    private final ByteBuffer bytes;
    private ByteBuffer format;
    private ByteBuffer data;

    private WavReader(String name, byte[] image) {
        this.name = name;
        this.bytes = ByteBuffer.wrap(image).order(ByteOrder.LITTLE_ENDIAN);
    }

    /**
     * What a WAV file holds.
     *
     * @param sampleRateHz samples per second as the header says
     * @param samples samples per channel in full scale
     */
    record Content(int sampleRateHz, float[][] samples) {}

    /**
     * Reads a file image.
     *
     * @param name file name for error messages
     * @param image the bytes of the file
     * @return its content, all samples finite
     * @throws RecordingException if it is not such a file
     */
    static Content read(String name, byte[] image) throws RecordingException {
        return new WavReader(name, image).read();
    }

    private Content read() throws RecordingException {
        findChunks();
        int tag = Short.toUnsignedInt(format.getShort(0));
        int channels = Short.toUnsignedInt(format.getShort(2));
        int sampleRateHz = format.getInt(4);
        int blockBytes = Short.toUnsignedInt(format.getShort(12));
        int bits = Short.toUnsignedInt(format.getShort(14));
        if (tag == TAG_EXTENSIBLE) {
            tag = extensibleTag(bits);
        }
        boolean known = tag == TAG_INT && (bits == 8 || bits == 16 || bits == 24 || bits == 32)
                || tag == TAG_FLOAT && (bits == 32 || bits == 64);
        if (!known) {
            throw wrong(
                    "fmt sample format",
                    "must be integer of 8, 16, 24 or 32 bits or float of 32 or 64 bits, but has tag " + tag + " and "
                            + bits + " bits",
                    "Save it again as 24-bit integer or 32-bit float");
        }
        if (channels < 1 || channels > ChannelRole.values().length) {
            throw wrong(
                    "fmt channels",
                    "must be from 1 to " + ChannelRole.values().length + ", but is " + channels,
                    "Keep only the channels the sidecar names");
        }
        if (sampleRateHz < 8000 || sampleRateHz > 384000) {
            throw wrong(
                    "fmt sample rate",
                    "must be from 8000 to 384000 Hz, but is " + Integer.toUnsignedString(sampleRateHz),
                    "Save it again with the true sample rate");
        }
        if (blockBytes != channels * bits / 8) {
            throw wrong(
                    "fmt block align",
                    "must be channels x bytes per sample = " + channels * bits / 8 + ", but is " + blockBytes,
                    "Save it again with a correct header");
        }
        if (data.limit() == 0 || data.limit() % blockBytes != 0) {
            throw wrong(
                    "data",
                    "must hold a whole number of frames of " + blockBytes + " bytes and at least one, but has "
                            + data.limit() + " bytes",
                    "Copy or capture it again");
        }
        return new Content(sampleRateHz, samples(tag, channels, bits, data.limit() / blockBytes));
    }

    private void findChunks() throws RecordingException {
        if (bytes.limit() < 12 || !"RIFF".equals(letters(0)) || !"WAVE".equals(letters(8))) {
            throw wrong(
                    "header",
                    "must begin with RIFF ... WAVE, but "
                            + (bytes.limit() < 12 ? "has only " + bytes.limit() + " bytes" : "begins otherwise"),
                    "Give a WAV file (not RF64, not big endian)");
        }
        int position = 12;
        while (position + 8 <= bytes.limit()) {
            String id = letters(position);
            long size = Integer.toUnsignedLong(bytes.getInt(position + 4));
            if (size > bytes.limit() - position - 8L) {
                throw wrong(
                        "chunk \"" + id + "\"",
                        "claims " + size + " bytes, but only " + (bytes.limit() - position - 8)
                                + " are left in the file",
                        "The file is truncated or its header is wrong: copy or capture it again");
            }
            ByteBuffer chunk = bytes.slice(position + 8, (int) size).order(ByteOrder.LITTLE_ENDIAN);
            if ("fmt ".equals(id)) {
                format = once(format, chunk, "fmt ");
            } else if ("data".equals(id)) {
                data = once(data, chunk, "data");
            }
            // Chunks are padded to even length; the padding is not counted in their size.
            position += 8 + (int) size + (int) (size & 1);
        }
        if (format == null || format.limit() < 16) {
            throw wrong("fmt chunk", "must have at least 16 bytes, but is missing or shorter", "Save it again as WAV");
        }
        if (data == null) {
            throw wrong("data chunk", "is missing", "The file is truncated: copy or capture it again");
        }
    }

    private ByteBuffer once(ByteBuffer before, ByteBuffer chunk, String id) throws RecordingException {
        if (before != null) {
            throw wrong("chunk \"" + id + "\"", "must be there once, but is there twice", "Save it again as WAV");
        }
        return chunk;
    }

    private int extensibleTag(int bits) throws RecordingException {
        if (format.limit() < 40) {
            throw wrong(
                    "fmt chunk",
                    "must have 40 bytes for an extensible format, but has " + format.limit(),
                    "Save it again as WAV");
        }
        int validBits = Short.toUnsignedInt(format.getShort(18));
        byte[] tail = new byte[GUID_TAIL.length];
        format.get(26, tail);
        if (validBits > bits || !java.util.Arrays.equals(tail, GUID_TAIL)) {
            throw wrong(
                    "fmt sub-format",
                    "must be integer or float with at most " + bits + " valid bits, but is another",
                    "Save it again as 24-bit integer or 32-bit float");
        }
        return Short.toUnsignedInt(format.getShort(24));
    }

    private float[][] samples(int tag, int channels, int bits, int frames) throws RecordingException {
        float[][] samples = new float[channels][frames];
        int step = bits / 8;
        int position = 0;
        for (int frame = 0; frame < frames; frame++) {
            for (int channel = 0; channel < channels; channel++) {
                float sample = tag == TAG_FLOAT ? floatAt(position, bits) : intAt(position, bits);
                if (!Float.isFinite(sample)) {
                    throw wrong(
                            "sample " + frame + " of channel " + channel,
                            "must be a finite number, but is " + sample,
                            "The file is damaged: capture it again");
                }
                samples[channel][frame] = sample;
                position += step;
            }
        }
        return samples;
    }

    private float floatAt(int position, int bits) {
        return bits == 32 ? data.getFloat(position) : (float) data.getDouble(position);
    }

    private float intAt(int position, int bits) {
        return switch (bits) {
            case 8 -> (Byte.toUnsignedInt(data.get(position)) - 128) / 128f;
            case 16 -> data.getShort(position) / 32768f;
            case 24 ->
                (data.get(position + 2) << 16
                                | Byte.toUnsignedInt(data.get(position + 1)) << 8
                                | Byte.toUnsignedInt(data.get(position)))
                        / 8388608f;
            default -> (float) (data.getInt(position) / 2147483648.0);
        };
    }

    private String letters(int position) {
        byte[] four = new byte[4];
        bytes.get(position, four);
        return new String(four, StandardCharsets.ISO_8859_1).replaceAll("[^ -~]", "?");
    }

    private RecordingException wrong(String field, String problem, String remedy) {
        return new RecordingException(name, field, problem, remedy);
    }
}
