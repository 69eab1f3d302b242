package org.docksweep.sweep;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.Require;
import org.docksweep.fleet.TestPoint;

/**
 * The plans the dock plays to a test point. Both stay below the point's level mask at every instant; levels, times and
 * bands are common practice, no source.
 */
public final class SweepPlans {
    /** Highest frequency played by the dock, in hertz. */
    public static final double HIGHEST_HZ = 20000;

    /** Highest share of the sample rate played. */
    private static final double HIGHEST_SHARE = 0.45;

    /** Rounding of logarithms may lift a level by parts in 1e15; this keeps it under the mask. */
    private static final double BELOW_MASK = 0.999999;

    /** Points per octave at which a level is drawn under a mask. */
    private static final int LEVEL_POINTS_PER_OCTAVE = 12;

    private static final double PROBE_S = 0.4;
    /** Silence around the probe: longer than any delay of a capture. */
    private static final double PROBE_SILENCE_S = 0.4;

    private static final double PROBE_BELOW = 0.1;
    private static final double PROBE_HIGHEST_VRMS = 0.1;
    private static final double PROBE_LOWEST_HZ = 200;
    private static final double PROBE_HIGHEST_HZ = 2000;

    /** The probe keeps this far from both ends of the mask. */
    private static final double PROBE_MARGIN = 1.2;

    private static final double PRE_ROLL_S = 0.5;
    private static final double TAIL_S = 0.6;

    /** Seconds per octave of a dock sweep: two seconds for ten octaves. */
    private static final double SECONDS_PER_OCTAVE = 0.2;

    private static final double SHORTEST_S = 0.8;
    private static final double LONGEST_S = 2.2;

    /** Seconds per octave of a sweep for the ear: time to hear a buzz and to press stop. */
    private static final double SLOW_SECONDS_PER_OCTAVE = 2;

    private static final double SLOWEST_S = 20;

    /** A slow sweep heats a coil ten times as long; half the voltage is a quarter of the power. */
    private static final double SLOW_SHARE = 0.5;

    private static final double SLOW_PRE_ROLL_S = 0.5;
    private static final double SLOW_TAIL_S = 0.2;

    /** Least width of a band worth sweeping. */
    private static final double NARROWEST = 2;

    private SweepPlans() {}

    /**
     * A short, quiet mid-band sweep that shows gain, short, open and the kind of load before any level is raised: 20 dB
     * below the mask and at most 0.1 V rms.
     *
     * @param testPoint what is connected
     * @param sampleRateHz samples per second, 8000 to 384000
     * @return the plan
     * @throws IllegalArgumentException if the mask leaves no band at this sample rate
     */
    public static SweepPlan probe(TestPoint testPoint, int sampleRateHz) {
        LevelMask mask = testPoint.levelMask();
        double bottomHz = mask.lowestHz() * PROBE_MARGIN;
        double topHz = highest(testPoint, sampleRateHz) / PROBE_MARGIN;
        double startHz = Math.max(bottomHz, Math.min(PROBE_LOWEST_HZ, topHz / NARROWEST));
        double stopHz = Math.min(topHz, Math.max(PROBE_HIGHEST_HZ, startHz * NARROWEST));
        checkBand(testPoint, startHz, stopHz);
        LevelMask level = under(mask, startHz, stopHz, PROBE_BELOW, PROBE_HIGHEST_VRMS);
        return new SweepPlan(
                SweepSignal.synchronised(startHz, stopHz, PROBE_S, sampleRateHz, level),
                PROBE_SILENCE_S,
                PROBE_SILENCE_S,
                1);
    }

    /**
     * The sweep of the dock: half a second of silence, two sweeps over the mask's band (at most to 20 kHz and 0.45 of the
     * sample rate) of 0.2 s per octave, each with 0.6 s to ring out.
     *
     * @param testPoint what is connected
     * @param sampleRateHz samples per second, 8000 to 384000
     * @return the plan
     * @throws IllegalArgumentException if the mask leaves no band at this sample rate
     */
    public static SweepPlan dock(TestPoint testPoint, int sampleRateHz) {
        LevelMask mask = testPoint.levelMask();
        double startHz = mask.lowestHz();
        double stopHz = highest(testPoint, sampleRateHz);
        checkBand(testPoint, startHz, stopHz);
        double octaves = StrictMath.log(stopHz / startHz) / StrictMath.log(2);
        double durationS = Math.min(LONGEST_S, Math.max(SHORTEST_S, SECONDS_PER_OCTAVE * octaves));
        LevelMask level = under(mask, startHz, stopHz, BELOW_MASK, Double.MAX_VALUE);
        SweepSignal signal = SweepSignal.synchronised(startHz, stopHz, durationS, sampleRateHz, level);
        return new SweepPlan(signal, PRE_ROLL_S, TAIL_S, 2);
    }

    /**
     * A slow sweep for the ear of a person: the band of the dock's sweep, or a part of it, at half the mask's voltage, 2 s per octave and at
     * most 20 s, once. Nothing is judged by it.
     *
     * @param testPoint what is connected
     * @param sampleRateHz samples per second, 8000 to 384000
     * @param fromHz where to begin; below the mask's band its lowest frequency is taken
     * @param toHz where to end; above the band of the dock its highest frequency is taken. Less than an octave is widened to one
     * @return the plan
     * @throws IllegalArgumentException if the mask leaves no band at this sample rate
     */
    public static SweepPlan slow(TestPoint testPoint, int sampleRateHz, double fromHz, double toHz) {
        LevelMask mask = testPoint.levelMask();
        double highestHz = highest(testPoint, sampleRateHz);
        checkBand(testPoint, mask.lowestHz(), highestHz);
        double startHz = Math.max(mask.lowestHz(), Math.min(fromHz, highestHz / NARROWEST));
        double stopHz = Math.min(highestHz, Math.max(toHz, NARROWEST * startHz));
        double octaves = StrictMath.log(stopHz / startHz) / StrictMath.log(2);
        LevelMask level = under(mask, startHz, stopHz, SLOW_SHARE, Double.MAX_VALUE);
        double durationS = Math.min(SLOWEST_S, SLOW_SECONDS_PER_OCTAVE * octaves);
        SweepSignal signal = SweepSignal.synchronised(startHz, stopHz, durationS, sampleRateHz, level);
        return new SweepPlan(signal, SLOW_PRE_ROLL_S, SLOW_TAIL_S, 1);
    }

    private static double highest(TestPoint testPoint, int sampleRateHz) {
        Require.inRange("sampleRateHz", sampleRateHz, 8000, 384000);
        return Math.min(testPoint.levelMask().highestHz(), Math.min(HIGHEST_HZ, HIGHEST_SHARE * sampleRateHz));
    }

    private static void checkBand(TestPoint testPoint, double startHz, double stopHz) {
        if (!(stopHz >= NARROWEST * startHz * 0.999)) {
            throw new IllegalArgumentException("test point " + testPoint.code() + ": the level mask leaves " + startHz
                    + " to " + stopHz + " Hz, but a sweep needs at least an octave; widen the mask or raise the sample"
                    + " rate");
        }
    }

    /**
     * A level under a mask. The mask's own corners are kept, because between two drawn points a straight line would cut
     * across a corner that points down.
     */
    private static LevelMask under(LevelMask mask, double startHz, double stopHz, double share, double highestVrms) {
        List<Double> frequencies = new ArrayList<>(List.of(startHz, stopHz));
        mask.points().forEach(corner -> frequencies.add(corner.frequencyHz()));
        int octaveSteps =
                (int) Math.ceil(LEVEL_POINTS_PER_OCTAVE * StrictMath.log(stopHz / startHz) / StrictMath.log(2));
        if (highestVrms < Double.MAX_VALUE) {
            // A ceiling makes corners of its own.
            for (int i = 1; i < octaveSteps; i++) {
                frequencies.add(startHz * StrictMath.pow(stopHz / startHz, i / (double) octaveSteps));
            }
        }
        List<LevelMask.Point> points = new ArrayList<>();
        double last = 0;
        for (double frequencyHz : frequencies.stream().sorted().toList()) {
            if (frequencyHz >= startHz && frequencyHz <= stopHz && frequencyHz > last * (1 + 1e-9)) {
                double allowed = share * mask.voltageVrmsAt(frequencyHz);
                points.add(new LevelMask.Point(frequencyHz, Math.min(allowed, highestVrms)));
                last = frequencyHz;
            }
        }
        // The end must be there to the last bit even when a corner lies a hair below it.
        if (points.get(points.size() - 1).frequencyHz() < stopHz) {
            points.remove(points.size() - 1);
            points.add(new LevelMask.Point(stopHz, Math.min(share * mask.voltageVrmsAt(stopHz), highestVrms)));
        }
        return new LevelMask(points);
    }
}
