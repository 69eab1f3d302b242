package org.docksweep.sweep;

import java.util.OptionalInt;

/**
 * How much later than the playback a capture is. The answer is the largest value of the whole impulse response; a coarse
 * look at a part of the sample rate finds its neighbourhood, which saves the two longest transforms of an analysis.
 */
final class Latency {
    /** A capture may start this much later or earlier than the playback, in seconds. */
    private static final double EARLIEST_S = -0.35;

    private static final double LATEST_S = 0.6;

    /** A peak counts as found when its square exceeds the mean square so many times; noise alone reaches about 25. */
    private static final double FOUND_RATIO = 60;

    /** Divisors of the sample rate, and the share of the lower rate below which its band is clean. */
    private static final int[] STEPS = {8, 4, 2};

    private static final double CLEAN_SHARE = 0.35;

    /** Octaves of the sweep that a coarse look needs. */
    private static final double LEAST_BAND = 4;

    /** Weight of the sweep's own energy in the coarse inverse: soft, for only the place of the peak matters. */
    private static final double COARSE_REGULARISATION = 0.1;

    private static final int CREST_REACH = 2;

    private static final RecentlyUsed<SweepSignal, Coarse> KNOWN = new RecentlyUsed<>(6);

    private final SweepSignal signal;
    private final float[] samples;
    private final int margin;
    private final int lags;
    private final int from;
    private final int length;

    private Latency(Capture capture, ChannelRole timing) {
        SweepPlan plan = capture.header().plan();
        this.signal = plan.signal();
        this.samples = capture.fullScale(timing);
        int rate = signal.sampleRateHz();
        this.margin = (int) Math.round(-EARLIEST_S * rate);
        this.lags = margin + (int) Math.round(LATEST_S * rate);
        this.from = plan.startFrame(0) - margin;
        this.length = signal.frames() + lags;
    }

    /** The sweep at a part of the rate. */
    private record Coarse(int step, double[] inverse) {}

    /**
     * Finds the delay by looking at every lag.
     *
     * @param capture the capture
     * @param timing channel to find it in
     * @param workspace of the analysis
     * @return frames by which the capture lags behind the playback; empty when the sweep is not in the channel
     */
    static OptionalInt find(Capture capture, ChannelRole timing, Workspace workspace) {
        Latency search = new Latency(capture, timing);
        double units = capture.unitsPerFullScale(timing);
        double[] record = new double[search.length];
        for (int i = Math.max(0, -search.from); i < record.length && search.from + i < search.samples.length; i++) {
            record[i] = units * search.samples[search.from + i];
        }
        double[] response =
                Deconvolver.of(search.signal, search.length).impulseResponse(record, 0, search.length, workspace);
        int peak = PreparedCapture.peak(response, 0, search.lags);
        OptionalInt found = clear(response, peak) ? OptionalInt.of(peak - search.margin) : OptionalInt.empty();
        workspace.giveBack(response);
        return found;
    }

    /**
     * Finds a delay that most likely is the one {@link #find} finds, at a tenth of its cost; the impulse response made with it
     * shows whether it is.
     *
     * @param capture the capture
     * @param timing channel to find it in
     * @param workspace of the analysis
     * @return a delay in frames; empty when a coarse look does not show it clearly
     */
    static OptionalInt guess(Capture capture, ChannelRole timing, Workspace workspace) {
        Latency search = new Latency(capture, timing);
        Coarse coarse = KNOWN.get(search.signal, s -> coarse(s, search.length));
        if (coarse.step() == 0) {
            return OptionalInt.empty();
        }
        int step = coarse.step();
        double[] response = workspace.zeros(coarse.inverse().length);
        for (int i = 0; i < search.length / step; i++) {
            for (int n = 0; n < step; n++) {
                int frame = search.from + i * step + n;
                response[i] += frame >= 0 && frame < search.samples.length ? search.samples[frame] : 0;
            }
        }
        Deconvolver.respond(response, coarse.inverse());
        int peak = PreparedCapture.peak(response, 1, search.lags / step);
        if (!clear(response, peak)) {
            return OptionalInt.empty();
        }
        double below = Math.abs(response[peak - 1]);
        double above = Math.abs(response[peak + 1]);
        double bend = 2 * Math.abs(response[peak]) - below - above;
        double lag = step * (peak + (bend > 0 ? (above - below) / (2 * bend) : 0));
        return search.climb((int) Math.rint(lag), 2 * step);
    }

    /** Walks up the exact response to the highest crest around; crests of a band are two or three samples apart. */
    private OptionalInt climb(int start, int reach) {
        double[] backwards = Deconvolver.of(signal, length).backwards();
        int width = 2 * reach + 1;
        double[] seen = new double[width];
        java.util.Arrays.fill(seen, -1);
        int best = reach;
        for (boolean higher = true; higher; ) {
            higher = false;
            int centre = best;
            for (int at = centre - CREST_REACH; at <= centre + CREST_REACH; at++) {
                if (at < 0 || at >= width) {
                    return OptionalInt.empty();
                }
                if (seen[at] < 0) {
                    seen[at] = magnitude(backwards, start + at - reach);
                }
                if (seen[at] > seen[best]) {
                    best = at;
                    higher = true;
                }
            }
        }
        int lag = start + best - reach;
        return lag < 0 || lag >= lags ? OptionalInt.empty() : OptionalInt.of(lag - margin);
    }

    /** One value of the impulse response of the record, in full scale. */
    private double magnitude(double[] backwards, int lag) {
        int mask = backwards.length - 1;
        int first = Math.max(0, -from);
        int last = Math.min(length, samples.length - from);
        double sum = 0;
        for (int at = first; at < last; ) {
            int place = at - lag & mask;
            int part = Math.min(last - at, backwards.length - place);
            sum += Sums.product(samples, from + at, backwards, place, part);
            at += part;
        }
        return Math.abs(sum);
    }

    private static boolean clear(double[] response, int peak) {
        double meanSquare = Sums.energy(response, 0, response.length) / response.length;
        return response[peak] * response[peak] > FOUND_RATIO * meanSquare;
    }

    private static Coarse coarse(SweepSignal signal, int length) {
        int step = 0;
        for (int s : STEPS) {
            double topHz = Math.min(signal.stopHz(), CLEAN_SHARE * signal.sampleRateHz() / s);
            step = step == 0 && topHz >= LEAST_BAND * signal.startHz() ? s : step;
        }
        if (step == 0) {
            return new Coarse(0, new double[0]);
        }
        double[] drive = Deconvolver.drive(signal);
        double[] spectrum = new double[Fourier.sizeFor(length / step + 1)];
        int frames = signal.frames();
        for (int i = 0; i < frames; i++) {
            spectrum[i / step] += drive[i];
        }
        Fourier.forward(spectrum);
        double rateHz = signal.sampleRateHz() / (double) step;
        double topHz = Math.min(signal.stopHz(), CLEAN_SHARE * rateHz);
        double most = 0;
        double[] inverse = new double[spectrum.length];
        for (int pass = 0; pass < 2; pass++) {
            for (int k = 1; k < spectrum.length / 2; k++) {
                double hz = k * rateHz / spectrum.length;
                double re = spectrum[2 * k];
                double im = spectrum[2 * k + 1];
                // a sweep of even level has an energy that falls with frequency
                double flat = (re * re + im * im) * hz;
                most = Math.max(most, flat);
                if (pass == 1 && hz >= signal.startHz() && hz <= topHz) {
                    double divisor = re * re + im * im + COARSE_REGULARISATION * most / hz;
                    inverse[2 * k] = re / divisor;
                    inverse[2 * k + 1] = -im / divisor;
                }
            }
        }
        return new Coarse(step, inverse);
    }
}
