package org.docksweep.kiosk.rig;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureChannel;

/**
 * Level of one input.
 *
 * @param name what it is called: its role as the settings name it, or its number
 * @param peakDbfs highest sample, in decibel against digital full scale; {@value #SILENT_DBFS} for silence
 * @param clipped whether a sample reached full scale
 */
public record ChannelLevel(String name, double peakDbfs, boolean clipped) {
    /** Lowest level shown. */
    public static final double SILENT_DBFS = -120;

    /** One step below full scale of 16 bits, with a little room for dither. */
    private static final double FULL = 0.9999;

    /**
     * Level of samples.
     *
     * @param name name of the channel
     * @param samples in digital full scale
     * @param from first sample
     * @param to after the last one
     * @return the level
     */
    public static ChannelLevel of(String name, float[] samples, int from, int to) {
        double peak = 0;
        for (int i = from; i < to; i++) {
            peak = Math.max(peak, Math.abs(samples[i]));
        }
        double db = Math.max(SILENT_DBFS, 20 * Math.log10(Math.max(peak, 1e-12)));
        return new ChannelLevel(name, db, peak >= FULL);
    }

    /**
     * Levels of a capture.
     *
     * @param capture the capture
     * @return one per channel
     */
    public static List<ChannelLevel> of(Capture capture) {
        List<ChannelLevel> levels = new ArrayList<>();
        for (CaptureChannel channel : capture.header().channels()) {
            float[] samples = capture.fullScale(channel.role());
            levels.add(of(channel.role().name(), samples, 0, samples.length));
        }
        return levels;
    }
}
