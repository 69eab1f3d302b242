package org.docksweep.kiosk.rig.audio;

import java.util.Arrays;
import java.util.function.BooleanSupplier;

/** Writes a playback and then silence to a line until told to end, so that the stream never runs dry in between. */
final class Playback {
    private final PlayLine line;
    private final double[] volts;
    private final AudioSettings.Output output;
    private final int blockFrames;

    /**
     * Prepares.
     *
     * @param line open line
     * @param volts all that is played, in volts
     * @param output channel and scale
     * @param blockFrames frames written in one go
     */
    Playback(PlayLine line, double[] volts, AudioSettings.Output output, int blockFrames) {
        this.line = line;
        this.volts = volts;
        this.output = output;
        this.blockFrames = blockFrames;
    }

    /**
     * Plays until told to end.
     *
     * @param ended asked before every block
     * @return false when the line took fewer bytes than given: it is gone, or it was silenced
     */
    boolean run(BooleanSupplier ended) {
        SampleCodec codec = line.codec();
        int frameBytes = codec.bytesPerSample() * line.channels();
        byte[] bytes = new byte[blockFrames * frameBytes];
        for (long from = 0; !ended.getAsBoolean(); from += blockFrames) {
            Arrays.fill(bytes, (byte) 0);
            int count = (int) Math.max(0, Math.min(blockFrames, volts.length - from));
            for (int n = 0; n < count; n++) {
                int at = n * frameBytes + (output.channel() - 1) * codec.bytesPerSample();
                codec.write(volts[(int) from + n] / output.voltsPerFullScale(), bytes, at);
            }
            if (line.write(bytes) != bytes.length) {
                return false;
            }
        }
        return true;
    }
}
