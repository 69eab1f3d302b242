package org.docksweep.sweep;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Writes samples as a RIFF/WAVE file image: fmt, fact (float only) and data chunks, little endian. */
final class WavWriter {
    private static final double INT_24_SCALE = 1 << 23;
    private static final int HEADER_BYTES = 64;
    /** Frames handed to a stream at once. */
    private static final int PART_FRAMES = 4096;

    private WavWriter() {}

    /**
     * Makes the file image.
     *
     * @param name file name for error messages
     * @param samples samples per channel in full scale, equally long
     * @param sampleRateHz samples per second
     * @param format sample format
     * @return the bytes of the file
     * @throws RecordingException if a sample is not a number or the image would be larger than a reader accepts
     */
    static byte[] encode(String name, float[][] samples, int sampleRateHz, WavFormat format) throws RecordingException {
        int channels = samples.length;
        int frames = samples[0].length;
        boolean isFloat = format == WavFormat.FLOAT_32;
        int size = size(name, samples, format);
        ByteBuffer out = ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
        header(out, samples, sampleRateHz, format, size);
        for (int frame = 0; frame < frames; frame++) {
            for (int channel = 0; channel < channels; channel++) {
                put(out, checked(name, samples[channel][frame], channel, frame), isFloat);
            }
        }
        return out.array();
    }

    private static int size(String name, float[][] samples, WavFormat format) throws RecordingException {
        long dataBytes = (long) samples[0].length * samples.length * format.bytesPerSample();
        if (dataBytes > WavReader.MAX_FILE_BYTES - 1024) {
            throw new RecordingException(
                    name,
                    "data",
                    "must be below " + WavReader.MAX_FILE_BYTES + " bytes, but would have " + dataBytes,
                    "Play a shorter plan or use fewer channels");
        }
        int padding = (int) (dataBytes & 1);
        return 12 + (8 + 18) + (format == WavFormat.FLOAT_32 ? 12 : 0) + 8 + (int) dataBytes + padding;
    }

    private static void header(ByteBuffer out, float[][] samples, int sampleRateHz, WavFormat format, int size) {
        int channels = samples.length;
        int frames = samples[0].length;
        int blockBytes = channels * format.bytesPerSample();
        out.put(ascii("RIFF")).putInt(size - 8).put(ascii("WAVE"));
        out.put(ascii("fmt ")).putInt(18);
        out.putShort((short) format.tag()).putShort((short) channels).putInt(sampleRateHz);
        out.putInt(sampleRateHz * blockBytes).putShort((short) blockBytes);
        out.putShort((short) (8 * format.bytesPerSample())).putShort((short) 0);
        if (format == WavFormat.FLOAT_32) {
            out.put(ascii("fact")).putInt(4).putInt(frames);
        }
        out.put(ascii("data")).putInt(frames * blockBytes);
    }

    /**
     * Writes a file piece by piece, as {@link #encode} makes it, into a stream.
     *
     * @param name file name for error messages
     * @param samples one array per channel
     * @param sampleRateHz samples per second
     * @param format how samples are written
     * @param out where to
     * @return bytes written
     * @throws RecordingException if a sample is not a number or the image would be larger than a reader accepts
     * @throws IOException if the stream refuses
     */
    static int write(String name, float[][] samples, int sampleRateHz, WavFormat format, OutputStream out)
            throws IOException {
        int frames = samples[0].length;
        int blockBytes = samples.length * format.bytesPerSample();
        int size = size(name, samples, format);
        ByteBuffer part =
                ByteBuffer.allocate(HEADER_BYTES + PART_FRAMES * blockBytes).order(ByteOrder.LITTLE_ENDIAN);
        header(part, samples, sampleRateHz, format, size);
        for (int frame = 0; frame < frames; frame++) {
            for (int channel = 0; channel < samples.length; channel++) {
                put(part, checked(name, samples[channel][frame], channel, frame), format == WavFormat.FLOAT_32);
            }
            if (part.remaining() < blockBytes || frame == frames - 1) {
                out.write(part.array(), 0, part.position());
                part.clear();
            }
        }
        out.write(new byte[frames * blockBytes & 1]);
        return size;
    }

    private static void put(ByteBuffer out, float sample, boolean isFloat) {
        if (isFloat) {
            out.putFloat(sample);
            return;
        }
        int value = (int) Math.max(-INT_24_SCALE, Math.min(INT_24_SCALE - 1, Math.rint(sample * INT_24_SCALE)));
        out.put((byte) value).put((byte) (value >> 8)).put((byte) (value >> 16));
    }

    private static float checked(String name, float sample, int channel, int frame) throws RecordingException {
        if (!Float.isFinite(sample)) {
            throw new RecordingException(
                    name,
                    "sample " + frame + " of channel " + channel,
                    "must be a finite number, but is " + sample,
                    "Capture again; nothing was written");
        }
        return sample;
    }

    private static byte[] ascii(String fourLetters) {
        return fourLetters.getBytes(StandardCharsets.US_ASCII);
    }
}
