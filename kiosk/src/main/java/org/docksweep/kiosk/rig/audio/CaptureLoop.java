package org.docksweep.kiosk.rig.audio;

import java.util.List;
import org.docksweep.sweep.ChannelRole;

/** Reads a line block by block into samples of the roles. */
final class CaptureLoop {
    private final CaptureLine line;
    private final int blockFrames;
    private final int[] channels;
    private final float[][] samples;
    private final byte[] bytes;
    private int frames;

    /**
     * Prepares.
     *
     * @param line open line
     * @param settings channels of the roles
     * @param roles roles wanted, in this order
     * @param blockFrames frames read in one go
     * @param leastFrames frames to capture, rounded up to whole blocks
     */
    CaptureLoop(CaptureLine line, AudioSettings settings, List<ChannelRole> roles, int blockFrames, int leastFrames) {
        this.line = line;
        this.blockFrames = blockFrames;
        this.channels = roles.stream()
                .mapToInt(role -> settings.inputs().get(role).channel() - 1)
                .toArray();
        int blocks = (leastFrames + blockFrames - 1) / blockFrames;
        this.samples = new float[roles.size()][blocks * blockFrames];
        this.bytes = new byte[blockFrames * line.channels() * line.codec().bytesPerSample()];
    }

    /**
     * Reads the next block and waits for it.
     *
     * @return false when the line gave fewer bytes than asked: it is gone
     */
    boolean next() {
        if (line.read(bytes) != bytes.length) {
            return false;
        }
        SampleCodec codec = line.codec();
        for (int n = 0; n < blockFrames; n++) {
            for (int c = 0; c < channels.length; c++) {
                int at = (n * line.channels() + channels[c]) * codec.bytesPerSample();
                samples[c][frames + n] = codec.read(bytes, at);
            }
        }
        frames += blockFrames;
        return true;
    }

    boolean complete() {
        return frames == samples[0].length;
    }

    /** Share captured, 0 to 1. */
    double share() {
        return frames / (double) samples[0].length;
    }

    /** Frames captured so far. */
    int frames() {
        return frames;
    }

    /** Samples in digital full scale, by role; not a copy. */
    float[][] samples() {
        return samples;
    }
}
