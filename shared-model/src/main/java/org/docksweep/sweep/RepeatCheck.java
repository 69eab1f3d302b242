package org.docksweep.sweep;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Holds the sweeps of a capture against each other. They are equal, so whatever differs beyond the noise was not the
 * sweep: a knock when the difference does not follow the drive, a dropout when current is missing while voltage stays.
 * The idea of comparing repeats in pairs: Prawda, Schlecht, Valimaki, JASA 151, 2117 (2022). A single sweep cannot be
 * checked for knocks.
 */
final class RepeatCheck {
    /** Energy of a difference over that of the noise from which it counts. */
    private static final double OVER_NOISE = 10;

    /** A knock smaller than this share of the signal does no harm: electrical channels, microphones. */
    private static final double ELECTRICAL_SHARE = 0.02;

    private static final double MICROPHONE_SHARE = 0.1;

    private static final int CALM_BLOCKS = 4;

    /** Share of the difference that must show up as stray energy of one sweep to blame that one alone. */
    private static final double CLEAR_SHARE = 0.3;

    private static final double DROPOUT_BLOCK_S = 0.004;
    private static final double DROPOUT_ENERGY = 0.1;

    /** Dropouts closer than this are one. */
    private static final double MERGE_S = 0.05;

    /** Share of a channel's energy that an undisturbed voltage has at least following the drive. */
    private static final double TORN_COHERENCE = 0.7;

    private static final int TORN_BLOCKS = 3;

    /** No load turns voltage and current alike by so much from one block to the next, in radians. */
    private static final double TORN_PHASE = 0.6;

    /** Relative change of a gain between sweeps that counts as a slip when voltage and current share it. */
    private static final double TORN_CHANGE = 0.15;

    /** How alike the two changes must be, as a share of them. */
    private static final double TORN_LIKENESS = 0.4;

    private final PreparedCapture capture;
    private final AnalysisSettings settings;
    private final int[] blocks;
    private final DriveTrack[][] tracks;
    private final int repeats;

    RepeatCheck(PreparedCapture capture, AnalysisSettings settings) {
        this.capture = capture;
        this.settings = settings;
        this.repeats = capture.plan.repeats();
        this.blocks = DriveTrack.blocks(capture.signal);
        this.tracks = new DriveTrack[repeats][capture.channels.length];
        for (int k = 0; k < repeats; k++) {
            for (int c = 0; c < capture.channels.length; c++) {
                tracks[k][c] = DriveTrack.of(capture.channels[c], capture.start(k), blocks, capture.deconvolver);
            }
        }
    }

    /**
     * Dropouts of the current.
     *
     * @param spoiled set to true for every sweep that has one
     * @return seconds into the capture, rising
     */
    List<Double> dropouts(boolean[] spoiled) {
        int v = capture.channel(ChannelRole.VOLTAGE);
        int i = capture.channel(ChannelRole.CURRENT);
        List<Double> times = new ArrayList<>();
        int frames = capture.sweepFrames;
        for (int at = 0; at < frames; ) {
            double frequencyHz = capture.signal.frequencyHzAt(at / (double) capture.sampleRateHz);
            int block = (int) (Math.max(DROPOUT_BLOCK_S, 0.5 / frequencyHz) * capture.sampleRateHz);
            int fine = (int) (DROPOUT_BLOCK_S * capture.sampleRateHz);
            for (int from = at; from < Math.min(frames, at + block); from += fine) {
                comparePairs(v, i, from, Math.min(fine, frames - from), spoiled, times);
            }
            for (int k = 0; k < repeats; k++) {
                int length = Math.min(block, frames - at);
                int start = capture.start(k) + at;
                // A capacitor may be as high in impedance as an open, but it does not become so at once.
                boolean abrupt = conducts(v, i, start - 2 * block, block)
                        || at + 3 * block < frames && conducts(v, i, start + 2 * block, block);
                if (openWithin(v, i, start, length) && abrupt) {
                    spoiled[k] = true;
                    times.add(start / (double) capture.sampleRateHz);
                }
            }
            at += block;
        }
        return merged(times);
    }

    private void comparePairs(int v, int i, int at, int length, boolean[] spoiled, List<Double> times) {
        int strongest = 0;
        double most = -1;
        for (int k = 0; k < repeats; k++) {
            double e = energy(i, capture.start(k) + at, length);
            if (e > most) {
                most = e;
                strongest = k;
            }
        }
        double voltage = energy(v, capture.start(strongest) + at, length);
        boolean clear = most > 2 * OVER_NOISE * capture.noiseVariance[i] * length
                && voltage > 2 * OVER_NOISE * capture.noiseVariance[v] * length;
        for (int k = 0; clear && k < repeats; k++) {
            double share = energy(v, capture.start(k) + at, length) / voltage;
            if (energy(i, capture.start(k) + at, length) < DROPOUT_ENERGY * most && share > 0.3 && share < 4) {
                spoiled[k] = true;
                times.add((capture.start(k) + at) / (double) capture.sampleRateHz);
            }
        }
    }

    /** Whether a stretch looks open although a quarter of that impedance would have been seen in the noise. */
    private boolean openWithin(int v, int i, int from, int length) {
        double voltage = energy(v, from, length);
        double current = energy(i, from, length);
        double floor = capture.noiseVariance[i] * length;
        double openSquare = settings.openOhm() * settings.openOhm();
        return voltage > OVER_NOISE * capture.noiseVariance[v] * length
                && 16 * voltage / openSquare > 2 * OVER_NOISE * floor
                && current < voltage / openSquare + 2 * floor;
    }

    private boolean conducts(int v, int i, int from, int length) {
        double quarterOpen = settings.openOhm() / 4;
        double current = energy(i, from, length);
        return current > 2 * OVER_NOISE * capture.noiseVariance[i] * length
                && current * quarterOpen * quarterOpen > energy(v, from, length);
    }

    /**
     * Knocks on a channel.
     *
     * @param role the channel
     * @param quiet sweeps with dropouts: their differences are no knocks
     * @return per sweep whether it was disturbed; all false for a single sweep
     */
    boolean[] knocked(ChannelRole role, boolean[] quiet) {
        boolean[] knocked = new boolean[repeats];
        int c = capture.channel(role);
        double share = role == ChannelRole.MICROPHONE ? MICROPHONE_SHARE : ELECTRICAL_SHARE;
        int first = -1;
        int last = -1;
        for (int b = 0; c >= 0 && b < blocks.length - 1; b++) {
            if (anyDiffer(c, b, share, quiet)) {
                first = first < 0 ? b : first;
                last = b;
            }
            // One event ends when it has been calm for a while; its parts are judged together.
            if (first >= 0 && (b - last >= CALM_BLOCKS || b == blocks.length - 2)) {
                blame(c, first, last, quiet, knocked);
                first = -1;
            }
        }
        return knocked;
    }

    private boolean anyDiffer(int c, int b, double share, boolean[] quiet) {
        int calm = calmest(c, b, b, quiet);
        for (int k = 0; calm >= 0 && k < repeats; k++) {
            if (k != calm && !quiet[k] && difference(c, b, k, calm, share) > 0) {
                return true;
            }
        }
        return false;
    }

    /** A knock adds its own energy to what does not follow the drive; where that is not clear, both are blamed. */
    private void blame(int c, int first, int last, boolean[] quiet, boolean[] knocked) {
        int calm = calmest(c, first, last, quiet);
        for (int k = 0; k < repeats; k++) {
            double difference = 0;
            double excess = 0;
            for (int b = first; k != calm && !quiet[k] && b <= last; b++) {
                difference += Math.max(0, difference(c, b, k, calm, 0));
                excess += stray(k, c, b) - stray(calm, c, b);
            }
            if (difference > 0) {
                knocked[k] = true;
                knocked[calm] |= excess < CLEAR_SHARE * difference;
            }
        }
    }

    private int calmest(int c, int first, int last, boolean[] quiet) {
        int calm = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < repeats; k++) {
            double sum = 0;
            for (int b = first; b <= last; b++) {
                sum += stray(k, c, b);
            }
            if (!quiet[k] && sum < least) {
                least = sum;
                calm = k;
            }
        }
        return calm;
    }

    private double stray(int repeat, int channel, int block) {
        return tracks[repeat][channel].energy()[block] - tracks[repeat][channel].following()[block];
    }

    /** Energy by which two sweeps differ in a block, or -1 when that is noise, or little, or follows the drive. */
    private double difference(int c, int b, int one, int two, double share) {
        int length = blocks[b + 1] - blocks[b];
        double[] samples = capture.channels[c];
        double energy =
                Sums.differenceEnergy(samples, capture.start(one) + blocks[b], capture.start(two) + blocks[b], length);
        DriveTrack a = tracks[one][c];
        DriveTrack z = tracks[two][c];
        double gain = square(a.re()[b] - z.re()[b]) + square(a.im()[b] - z.im()[b]);
        double own = square(z.re()[b]) + square(z.im()[b]);
        double following = own > 0 ? z.following()[b] * gain / own : 0;
        boolean counts = energy > OVER_NOISE * 2 * capture.noiseVariance[c] * length
                && energy > share * share * z.energy()[b]
                && following < 0.5 * energy;
        return counts ? energy : -1;
    }

    private static double square(double value) {
        return value * value;
    }

    /**
     * Whether samples are missing somewhere.
     *
     * @param raw the samples as captured
     * @return true if so
     */
    boolean torn(Capture raw) {
        for (int k = 0; k < repeats; k++) {
            if (RawCheck.frozen(raw, capture.start(k)) || jumps(k) || k > 0 && (shifted(k) || slipped(k))) {
                return true;
            }
        }
        return false;
    }

    private boolean jumps(int k) {
        int c = capture.channel(ChannelRole.VOLTAGE);
        if (c < 0) {
            // Sound from a cabinet in a hall follows no drive closely enough to tell.
            return false;
        }
        int other = capture.channel(ChannelRole.CURRENT);
        DriveTrack track = tracks[k][c];
        int stray = 0;
        for (int b = 1; b < blocks.length - 2; b++) {
            double floor = 4 * OVER_NOISE * capture.noiseVariance[c] * (blocks[b + 1] - blocks[b]);
            boolean clear = track.energy()[b] > floor && track.energy()[b + 1] > floor;
            stray = clear && track.coherence(b) < TORN_COHERENCE && (other < 0 || strayToo(k, other, b))
                    ? stray + 1
                    : 0;
            if (stray >= TORN_BLOCKS || clear && turns(k, c, other, b)) {
                return true;
            }
        }
        return false;
    }

    /** Voltage and current changed alike against the first sweep: no load does that, a lost piece of time does. */
    private boolean slipped(int k) {
        int v = capture.channel(ChannelRole.VOLTAGE);
        int i = capture.channel(ChannelRole.CURRENT);
        int count = 0;
        for (int b = 1; v >= 0 && b < blocks.length - 2; b++) {
            double[] voltage = change(tracks[0][v], tracks[k][v], b);
            boolean slipped = clear(v, tracks[0][v], b) && Math.hypot(voltage[0], voltage[1]) > TORN_CHANGE;
            if (slipped && i >= 0 && clear(i, tracks[0][i], b)) {
                double[] current = change(tracks[0][i], tracks[k][i], b);
                slipped = Math.hypot(voltage[0] - current[0], voltage[1] - current[1])
                        < TORN_LIKENESS * Math.hypot(voltage[0], voltage[1]);
            }
            count = slipped ? count + 1 : 0;
            if (count >= TORN_BLOCKS) {
                return true;
            }
        }
        return false;
    }

    /** Relative change of the gain from the first sweep to another. */
    private static double[] change(DriveTrack first, DriveTrack other, int b) {
        double re = other.re()[b] - first.re()[b];
        double im = other.im()[b] - first.im()[b];
        double own = square(first.re()[b]) + square(first.im()[b]);
        return new double[] {
            (re * first.re()[b] + im * first.im()[b]) / own, (im * first.re()[b] - re * first.im()[b]) / own
        };
    }

    private boolean clear(int channel, DriveTrack track, int b) {
        double floor = 4 * OVER_NOISE * capture.noiseVariance[channel] * (blocks[b + 1] - blocks[b]);
        return track.energy()[b] > floor;
    }

    private boolean strayToo(int k, int c, int b) {
        double floor = 4 * OVER_NOISE * capture.noiseVariance[c] * (blocks[b + 1] - blocks[b]);
        return tracks[k][c].energy()[b] < floor || tracks[k][c].coherence(b) < TORN_COHERENCE;
    }

    private boolean turns(int k, int c, int other, int b) {
        if (tracks[k][c].phaseStep(b) < TORN_PHASE) {
            return false;
        }
        if (other < 0) {
            return true;
        }
        double floor = 4 * OVER_NOISE * capture.noiseVariance[other] * (blocks[b + 1] - blocks[b]);
        return tracks[k][other].energy()[b] < floor
                || Math.abs(tracks[k][other].phaseStep(b) - tracks[k][c].phaseStep(b)) < TORN_PHASE / 2;
    }

    /** A later sweep does not begin where it should after the first one. */
    private boolean shifted(int k) {
        int reach = capture.sampleRateHz / 20;
        int peak = PreparedCapture.peak(capture.responses[k][0], capture.pad - reach, capture.pad + reach);
        int first = PreparedCapture.peak(capture.responses[0][0], capture.pad - reach, capture.pad + reach);
        int tolerance = Math.max(1, (int) (capture.sampleRateHz / (8 * capture.signal.stopHz())));
        return Math.abs(peak - first) > tolerance;
    }

    private double energy(int channel, int from, int length) {
        return capture.energy(channel, from, length);
    }

    private List<Double> merged(List<Double> times) {
        Collections.sort(times);
        List<Double> merged = new ArrayList<>();
        double last = Double.NEGATIVE_INFINITY;
        for (double time : times) {
            if (time - last > MERGE_S) {
                merged.add(time);
            }
            last = time;
        }
        return merged;
    }
}
