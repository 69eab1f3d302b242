package org.docksweep.kiosk.rig.audio;

import javax.sound.sampled.AudioFormat;

/**
 * Signed integer samples of 16, 24 or 32 bit in either byte order, to and from digital full scale: an integer n of b
 * bits is {@code n / 2^(b-1)}, so that -1 is reached and +1 is missed by one step. A value is rounded to the nearest
 * step; what lies outside is held at the end of the scale, and NaN becomes 0, because it must never reach an amplifier.
 *
 * @param bits bits per sample, 16, 24 or 32, packed
 * @param bigEndian whether the highest byte comes first
 */
record SampleCodec(int bits, boolean bigEndian) {

    SampleCodec {
        if (bits != 16 && bits != 24 && bits != 32) {
            throw new IllegalArgumentException("samples must have 16, 24 or 32 bits, but have " + bits);
        }
    }

    /**
     * The codec of a format.
     *
     * @param format signed integer format
     * @return its codec
     * @throws IllegalArgumentException if the format is another kind, or has filling bits
     */
    static SampleCodec of(AudioFormat format) {
        boolean packed = format.getFrameSize() * 8 == format.getSampleSizeInBits() * format.getChannels();
        if (format.getEncoding() != AudioFormat.Encoding.PCM_SIGNED || !packed) {
            throw new IllegalArgumentException(
                    "the format must be signed integers without filling bits, but is " + format);
        }
        return new SampleCodec(format.getSampleSizeInBits(), format.isBigEndian());
    }

    int bytesPerSample() {
        return bits / 8;
    }

    /**
     * Writes a sample.
     *
     * @param value digital full scale
     * @param bytes written to
     * @param at first byte
     */
    void write(double value, byte[] bytes, int at) {
        double full = 1L << (bits - 1);
        // Math.round makes 0 of NaN.
        long step = Math.max((long) -full, Math.min((long) full - 1, Math.round(value * full)));
        int size = bytesPerSample();
        for (int i = 0; i < size; i++) {
            int place = bigEndian ? size - 1 - i : i;
            bytes[at + place] = (byte) (step >> (8 * i));
        }
    }

    /**
     * Reads a sample. 32 bits keep 24 of them, as a float does.
     *
     * @param bytes read from
     * @param at first byte
     * @return digital full scale, -1 to 1
     */
    float read(byte[] bytes, int at) {
        int size = bytesPerSample();
        // The highest byte carries the sign, the others do not.
        int step = bytes[at + (bigEndian ? 0 : size - 1)];
        for (int i = size - 2; i >= 0; i--) {
            int place = bigEndian ? size - 1 - i : i;
            step = step << 8 | bytes[at + place] & 0xFF;
        }
        return (float) (step / (double) (1L << (bits - 1)));
    }
}
