package org.docksweep.sweep;

/** How samples are written into a WAV file. */
public enum WavFormat {
    /** 32-bit IEEE float: keeps every sample as it is. */
    FLOAT_32(3, 4),
    /** 24-bit integer: rounds to 2^-23 and limits to full scale. */
    INT_24(1, 3);

    private final int tag;
    private final int bytesPerSample;

    WavFormat(int tag, int bytesPerSample) {
        this.tag = tag;
        this.bytesPerSample = bytesPerSample;
    }

    int tag() {
        return tag;
    }

    int bytesPerSample() {
        return bytesPerSample;
    }
}
