package org.docksweep.sweep;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Writes samples as a RIFF/WAVE file image: fmt, fact (float only) and data chunks, little endian. */
final class WavWriter {
    private static final double INT_24_SCALE = 1 << 23;

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
        int blockBytes = channels * format.bytesPerSample();
        long dataBytes = (long) frames * blockBytes;
        if (dataBytes > WavReader.MAX_FILE_BYTES - 1024) {
            throw new RecordingException(
                    name,
                    "data",
                    "must be below " + WavReader.MAX_FILE_BYTES + " bytes, but would have " + dataBytes,
                    "Play a shorter plan or use fewer channels");
        }
        boolean isFloat = format == WavFormat.FLOAT_32;
        int padding = (int) (dataBytes & 1);
        int size = 12 + (8 + 18) + (isFloat ? 12 : 0) + 8 + (int) dataBytes + padding;
        ByteBuffer out = ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
        out.put(ascii("RIFF")).putInt(size - 8).put(ascii("WAVE"));
        out.put(ascii("fmt ")).putInt(18);
        out.putShort((short) format.tag()).putShort((short) channels).putInt(sampleRateHz);
        out.putInt(sampleRateHz * blockBytes).putShort((short) blockBytes);
        out.putShort((short) (8 * format.bytesPerSample())).putShort((short) 0);
        if (isFloat) {
            out.put(ascii("fact")).putInt(4).putInt(frames);
        }
        out.put(ascii("data")).putInt((int) dataBytes);
        for (int frame = 0; frame < frames; frame++) {
            for (int channel = 0; channel < channels; channel++) {
                put(out, checked(name, samples[channel][frame], channel, frame), isFloat);
            }
        }
        return out.array();
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
