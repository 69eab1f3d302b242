package org.docksweep.sweep;

import java.util.Objects;
import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * A capture: a header and the samples of its channels, in digital full scale (-1 to 1). A value: the samples are not
 * copied for speed, and nobody may change them.
 */
public final class Capture {
    private final CaptureHeader header;
    private final float[][] samples;
    private final AtomicReferenceArray<RawCheck.Extent> extents;

    /**
     * Makes a capture.
     *
     * @param header the header
     * @param samples one array per channel of the header, all of the same length, in digital full scale
     * @throws IllegalArgumentException if the number or the lengths of the arrays do not fit
     */
    public Capture(CaptureHeader header, float[][] samples) {
        this.header = Objects.requireNonNull(header, "header");
        this.samples = Objects.requireNonNull(samples, "samples");
        this.extents = new AtomicReferenceArray<>(samples.length);
        if (samples.length != header.channels().size()) {
            throw new IllegalArgumentException("capture has " + samples.length + " channels of samples, but its header"
                    + " names " + header.channels().size());
        }
        for (float[] channel : samples) {
            if (channel.length != samples[0].length) {
                throw new IllegalArgumentException("capture channels differ in length: " + channel.length + " and "
                        + samples[0].length + " samples");
            }
        }
    }

    /**
     * The header.
     *
     * @return the header
     */
    public CaptureHeader header() {
        return header;
    }

    /**
     * Number of samples per channel.
     *
     * @return frames
     */
    public int frames() {
        return samples[0].length;
    }

    /**
     * Whether a channel with this role was captured.
     *
     * @param role the role
     * @return true if so
     */
    public boolean has(ChannelRole role) {
        return header.indexOf(role) >= 0;
    }

    /**
     * Samples of a channel in digital full scale; not a copy, must not be changed.
     *
     * @param role the role
     * @return the samples
     * @throws IllegalArgumentException if there is no such channel
     */
    public float[] fullScale(ChannelRole role) {
        int index = header.indexOf(role);
        if (index < 0) {
            throw new IllegalArgumentException("the capture has no " + role + " channel");
        }
        return samples[index];
    }

    /** Lowest and highest sample of a channel, and whether it is clipped; found once. */
    RawCheck.Extent extent(ChannelRole role) {
        int index = header.indexOf(role);
        RawCheck.Extent known = extents.get(index);
        if (known == null) {
            known = RawCheck.extent(fullScale(role));
            extents.set(index, known);
        }
        return known;
    }

    /**
     * Factor from full scale to the SI unit of a channel.
     *
     * @param role the role
     * @return volts, amperes or pascals per full scale
     */
    public double unitsPerFullScale(ChannelRole role) {
        return header.channels().get(header.indexOf(role)).unitsPerFullScale();
    }
}
