package org.docksweep.kiosk.rig.audio;

import java.util.Locale;
import java.util.Optional;
import org.docksweep.fleet.Reason;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepSignal;

/**
 * Keeps a cabinet from more than its plan. Before playing it refuses a plan that the output cannot make or that leaves
 * its own level mask. While capturing it compares measured volts, amperes and watts with what the plan lets expect, in
 * blocks of 10 ms:
 *
 * <ul>
 *   <li>volts rms: {@link #MARGIN} times the highest block rms played within the last {@link #LONGEST_DELAY_S} (the
 *       delay of the loop is not known yet), but at least {@link #FLOOR_V} for hum and noise: call it U
 *   <li>amperes rms: U over the lowest load, and at most what the rig bears
 *   <li>watts (mean of voltage times current): U squared over the lowest load, and at most what the rig bears
 * </ul>
 *
 * <p>Two blocks in a row must be too high, so that a single torn sample is no alarm. Margins are common practice, no
 * source. Not thread-safe: one capture, one thread.
 */
final class LevelGuard {
    /** What is played arrives at most this much later, in seconds. */
    static final double LONGEST_DELAY_S = 1.25;

    /** 3.5 dB: well above gain errors and a ringing filter, well below what harms. */
    static final double MARGIN = 1.5;

    /** Voltage that says nothing, in volts rms. */
    static final double FLOOR_V = 0.05;

    private static final int BLOCKS_PER_SECOND = 100;
    private static final int BLOCKS_TOO_HIGH = 2;
    /** Rounding of a level by parts in 1e12 is not a breach of the mask. */
    private static final double ROUNDING = 1 + 1e-9;

    private final AudioSettings settings;
    private final double[] allowedVolts;
    private int tooHigh;

    /**
     * Prepares for a capture that begins no later than the playback.
     *
     * @param settings scales and limits
     * @param playedVolts all that will be played, from the first frame of the lead-in
     */
    LevelGuard(AudioSettings settings, double[] playedVolts) {
        this.settings = settings;
        this.allowedVolts = allowed(playedVolts, blockFrames(settings.sampleRateHz()));
    }

    /** Frames of a block. */
    static int blockFrames(int sampleRateHz) {
        return sampleRateHz / BLOCKS_PER_SECOND;
    }

    /**
     * Refuses what must not be played.
     *
     * @param plan the plan
     * @param volts its samples in volts
     * @param output the output
     * @throws RigException if a sample is above the output's full scale or above the plan's own level mask
     */
    static void check(SweepPlan plan, double[] volts, AudioSettings.Output output) throws RigException {
        SweepSignal signal = plan.signal();
        double peakVolts = 0;
        for (int n = 0; n < volts.length; n++) {
            double allowed = peakAllowed(plan, n);
            // Written so that NaN is refused.
            if (!(Math.abs(volts[n]) <= allowed * ROUNDING)) {
                throw refused(
                        "audio-above-mask",
                        volts[n],
                        allowed,
                        String.format(Locale.ROOT, "%.3f", n / (double) signal.sampleRateHz()));
            }
            peakVolts = Math.max(peakVolts, Math.abs(volts[n]));
        }
        if (!(peakVolts < output.voltsPerFullScale())) {
            throw refused("audio-output-too-small", peakVolts, output.voltsPerFullScale(), "");
        }
    }

    /** Highest magnitude at a frame of the plan, in volts: 0 outside the sweeps. */
    private static double peakAllowed(SweepPlan plan, int frame) {
        SweepSignal signal = plan.signal();
        int inPlan = frame - plan.preRollFrames();
        int period = signal.frames() + plan.tailFrames();
        if (inPlan < 0 || inPlan % period >= signal.frames()) {
            return 0;
        }
        double frequencyHz = signal.frequencyHzAt((inPlan % period) / (double) signal.sampleRateHz());
        double lowest = signal.level().lowestHz();
        double highest = signal.level().highestHz();
        return Math.sqrt(2) * signal.level().voltageVrmsAt(Math.max(lowest, Math.min(highest, frequencyHz)));
    }

    private static double[] allowed(double[] playedVolts, int blockFrames) {
        int blocks = (playedVolts.length + blockFrames - 1) / blockFrames;
        double[] rms = new double[blocks];
        for (int b = 0; b < blocks; b++) {
            int from = b * blockFrames;
            int to = Math.min(playedVolts.length, from + blockFrames);
            double sum = 0;
            for (int n = from; n < to; n++) {
                sum += playedVolts[n] * playedVolts[n];
            }
            rms[b] = Math.sqrt(sum / (to - from));
        }
        int delayBlocks = (int) Math.ceil(LONGEST_DELAY_S * BLOCKS_PER_SECOND) + 1;
        double[] allowed = new double[blocks];
        for (int b = 0; b < blocks; b++) {
            double highest = 0;
            for (int played = Math.max(0, b - delayBlocks); played <= b; played++) {
                highest = Math.max(highest, rms[played]);
            }
            allowed[b] = Math.max(FLOOR_V, MARGIN * highest);
        }
        return allowed;
    }

    /**
     * Looks at the next block.
     *
     * @param block number of the block in the capture, from 0
     * @param voltage its voltage samples in digital full scale
     * @param current its current samples in digital full scale
     * @param from first frame of the block in both arrays
     * @return why playback must stop at once; empty when all is well
     */
    Optional<Reason> look(int block, float[] voltage, float[] current, int from) {
        double voltScale = settings.inputs().get(ChannelRole.VOLTAGE).unitsPerFullScale();
        double ampereScale = settings.inputs().get(ChannelRole.CURRENT).unitsPerFullScale();
        int frames = Math.min(blockFrames(settings.sampleRateHz()), voltage.length - from);
        double voltSquares = 0;
        double ampereSquares = 0;
        double products = 0;
        for (int n = from; n < from + frames; n++) {
            double volts = voltage[n] * voltScale;
            double amperes = current[n] * ampereScale;
            voltSquares += volts * volts;
            ampereSquares += amperes * amperes;
            products += volts * amperes;
        }
        double allowed = allowedVolts[Math.min(block, allowedVolts.length - 1)];
        double allowedAmperes = Math.min(settings.mostAmperes(), allowed / settings.leastLoadOhm());
        double allowedWatts = Math.min(settings.mostWatts(), allowed * allowed / settings.leastLoadOhm());
        double volts = Math.sqrt(voltSquares / frames);
        double amperes = Math.sqrt(ampereSquares / frames);
        // Current wired the other way round is found elsewhere; power it is.
        double watts = Math.abs(products / frames);
        boolean high = volts > allowed || amperes > allowedAmperes || watts > allowedWatts;
        tooHigh = high ? tooHigh + 1 : 0;
        if (tooHigh < BLOCKS_TOO_HIGH) {
            return Optional.empty();
        }
        if (volts > allowed) {
            return Optional.of(reason("audio-too-many-volts", volts, allowed));
        }
        return Optional.of(
                amperes > allowedAmperes
                        ? reason("audio-too-many-amperes", amperes, allowedAmperes)
                        : reason("audio-too-many-watts", watts, allowedWatts));
    }

    private static Reason reason(String key, double measured, double allowed) {
        return Reason.of(key, number(measured), number(allowed));
    }

    private static RigException refused(String key, double asked, double allowed, String where) {
        return new RigException(
                RigException.Cause.REFUSED, Reason.of(key, number(Math.abs(asked)), number(allowed), where));
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.3g", value);
    }
}
