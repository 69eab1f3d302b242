package org.docksweep.sweep;

/**
 * Turns a record of a response to a known sweep into an impulse response: {@code H = Y X* / (|X|^2 + eps)}. The known
 * sweep, not a recorded one, is the divisor, so noise on the channels makes no bias. The regularisation is soft,
 * {@code eps(f) = 1e-4 U(f)^2 L fs^2 / (2 f)}, a ten-thousandth of the sweep's own energy at f: a hard band edge rings far
 * into the band.
 */
final class Deconvolver {
    private static final double REGULARISATION = 1e-4;

    /**
     * Width over which the regularisation rises to the sweep's own energy above its band. Without it noise and
     * harmonics just above would be raised by {@code 1 / (2 sqrt(1e-4))}. Not so below the band, where the same would
     * ring for seconds and spoil a resonance near the edge (15 % at 21 Hz in a simulation).
     */
    private static final double EDGE_OCTAVES = 0.3;

    /** Each takes up to 7 MB; probe and sweep of a test point have one for the delay and one for the responses. */
    private static final RecentlyUsed<Key, Deconvolver> KNOWN = new RecentlyUsed<>(4, Deconvolver::giveUp);

    /** Sweeps in volts; asked for again by every deconvolver, for a sweep costs more than its transform. */
    private static final RecentlyUsed<SweepSignal, double[]> DRIVES = new RecentlyUsed<>(4, Workspace::giveUp);

    /** The record begins to take over from the deconvolved response at this share of the crossing frequency. */
    private static final double CROSS_FROM = 0.89;

    private final SweepSignal signal;
    private final int size;
    // Each made when it is asked for: finding a delay needs nothing but the last.
    private double[] spectrum;
    private double[] inverse;
    private double[] quadrature;
    private double[] backwards;

    private record Key(SweepSignal signal, int size) {}

    private Deconvolver(SweepSignal signal, int size) {
        this.signal = signal;
        this.size = size;
    }

    /**
     * The deconvolver of a sweep. What it hands out is good as long as the workspace is open that was open before it was asked for.
     *
     * @param signal what was played
     * @param records longest record that will be given, in samples; at least the sweep's own length
     * @return a deconvolver, perhaps one made before
     */
    static Deconvolver of(SweepSignal signal, int records) {
        Key key = new Key(signal, Fourier.sizeFor(Math.max(records, signal.frames())));
        return KNOWN.get(key, k -> new Deconvolver(k.signal(), k.size()));
    }

    /**
     * The impulse response, circular: lag 0 at index 0, earlier lags at the end.
     *
     * @param captured samples of a channel
     * @param from first sample of the part to use; parts outside the array count as silence
     * @param length number of samples, at most {@link #size()}
     * @param workspace where the response is kept
     * @return {@link #size()} values
     */
    double[] impulseResponse(double[] captured, int from, int length, Workspace workspace) {
        double[] work = workspace.zeros(size);
        int first = Math.max(0, from);
        int last = Math.min(captured.length, from + Math.min(length, size));
        if (last > first) {
            System.arraycopy(captured, first, work, first - from, last - first);
        }
        respond(work, inverse());
        return work;
    }

    /**
     * Replaces a record by its convolution with an inverse.
     *
     * @param work the record
     * @param inverse packed spectrum of the inverse
     */
    static void respond(double[] work, double[] inverse) {
        Fourier.forward(work);
        work[0] = 0;
        work[1] = 0;
        for (int k = 2; k < work.length; k += 2) {
            double re = work[k] * inverse[k] - work[k + 1] * inverse[k + 1];
            work[k + 1] = work[k] * inverse[k + 1] + work[k + 1] * inverse[k];
            work[k] = re;
        }
        Fourier.inverse(work);
    }

    /**
     * What the inverse does to noise: the squared magnitude of conj(X) / (|X|^2 + eps), averaged over a few bins.
     *
     * @param frequencyHz frequency
     * @param widthHz averaging width
     * @return squared gain, in 1/V^2
     */
    double noiseGain(double frequencyHz, double widthHz) {
        double binHz = signal.sampleRateHz() / (double) size;
        int first = Math.max(1, (int) Math.ceil((frequencyHz - widthHz / 2) / binHz));
        int last = Math.min(size / 2 - 1, Math.max(first, (int) Math.floor((frequencyHz + widthHz / 2) / binHz)));
        double[] inverse = inverse();
        double sum = 0;
        for (int k = first; k <= last; k++) {
            sum += inverse[2 * k] * inverse[2 * k] + inverse[2 * k + 1] * inverse[2 * k + 1];
        }
        return sum / (last - first + 1);
    }

    /**
     * The sweep sent through an impulse response, circular, below a frequency; above it a record as it is. The two meet
     * over a sixth of an octave.
     *
     * @param response impulse response of {@link #size()} values; is overwritten
     * @param record samples as given to {@link #impulseResponse}, of {@link #size()} values, or null; is overwritten
     * @param crossHz where the record takes over, in hertz; not used without a record
     * @param weights factors per bin, one array of half the size for each signal wanted
     * @param workspace where the signals are kept
     * @return one signal per array of weights
     */
    double[][] resweep(double[] response, double[] record, double crossHz, double[][] weights, Workspace workspace) {
        double[] spectrum = spectrum();
        Fourier.forward(response);
        if (record != null) {
            Fourier.forward(record);
        }
        double binHz = signal.sampleRateHz() / (double) size;
        double[][] results = new double[weights.length][];
        for (int w = 0; w < weights.length; w++) {
            results[w] = workspace.zeros(size);
        }
        for (int k = 1; k < size / 2; k++) {
            double re = response[2 * k] * spectrum[2 * k] - response[2 * k + 1] * spectrum[2 * k + 1];
            double im = response[2 * k + 1] * spectrum[2 * k] + response[2 * k] * spectrum[2 * k + 1];
            if (record != null) {
                double share = Math.min(1, Math.max(0, (k * binHz / crossHz - CROSS_FROM) / (1 - CROSS_FROM)));
                re += share * (record[2 * k] - re);
                im += share * (record[2 * k + 1] - im);
            }
            for (int w = 0; w < weights.length; w++) {
                results[w][2 * k] = weights[w][k] * re;
                results[w][2 * k + 1] = weights[w][k] * im;
            }
        }
        for (double[] result : results) {
            Fourier.inverse(result);
        }
        return results;
    }

    int size() {
        return size;
    }

    /** The sweep in volts, and perhaps zeros behind it; not a copy. */
    double[] drive() {
        return drive(signal);
    }

    /**
     * A sweep in volts.
     *
     * @param signal the sweep
     * @return its samples, and perhaps zeros behind them; not a copy
     */
    static double[] drive(SweepSignal signal) {
        return DRIVES.get(signal, s -> {
            double[] volts = Workspace.table(s.frames());
            s.voltageSamples(volts);
            return volts;
        });
    }

    /** The sweep turned by -90 degrees, in volts, and perhaps zeros behind it; not a copy. */
    synchronized double[] quadrature() {
        if (quadrature == null) {
            quadrature = quadratureOf(spectrum());
        }
        return quadrature;
    }

    /** The inverse as samples, turned round: what a record is multiplied with for one lag; not a copy. */
    synchronized double[] backwards() {
        if (backwards == null) {
            double[] sweep = spectrum == null ? spectrumOf() : spectrum;
            double[] conjugate = inverseOf(sweep);
            if (sweep != spectrum) {
                Workspace.giveBackTable(sweep);
            }
            for (int k = 3; k < size; k += 2) {
                conjugate[k] = -conjugate[k];
            }
            Fourier.inverse(conjugate);
            backwards = conjugate;
        }
        return backwards;
    }

    private synchronized double[] spectrum() {
        if (spectrum == null) {
            spectrum = spectrumOf();
        }
        return spectrum;
    }

    private synchronized double[] inverse() {
        if (inverse == null) {
            inverse = inverseOf(spectrum());
        }
        return inverse;
    }

    private synchronized void giveUp() {
        Workspace.giveUp(spectrum, inverse, quadrature, backwards);
        spectrum = null;
        inverse = null;
        quadrature = null;
        backwards = null;
    }

    private double[] spectrumOf() {
        double[] work = Workspace.table(size);
        System.arraycopy(drive(), 0, work, 0, signal.frames());
        Fourier.forward(work);
        return work;
    }

    private double[] inverseOf(double[] spectrum) {
        double[] result = Workspace.table(size);
        double binHz = signal.sampleRateHz() / (double) size;
        double fs = signal.sampleRateHz();
        for (int k = 1; k < size / 2; k++) {
            double frequencyHz = Math.min(signal.stopHz(), Math.max(signal.startHz(), k * binHz));
            double voltage = signal.level()
                    .voltageVrmsAt(Math.min(
                            signal.level().highestHz(), Math.max(signal.level().lowestHz(), frequencyHz)));
            double energy = voltage * voltage * signal.rateConstantS() * fs * fs / (2 * frequencyHz);
            double re = spectrum[2 * k];
            double im = spectrum[2 * k + 1];
            double outside =
                    StrictMath.log(Math.max(1, k * binHz / signal.stopHz())) / (EDGE_OCTAVES * StrictMath.log(2));
            double divisor = re * re + im * im + (REGULARISATION + StrictMath.pow(outside, 4)) * energy;
            result[2 * k] = re / divisor;
            result[2 * k + 1] = -im / divisor;
        }
        return result;
    }

    private double[] quadratureOf(double[] spectrum) {
        double[] turned = Workspace.table(size);
        for (int k = 2; k < size; k += 2) {
            turned[k] = spectrum[k + 1];
            turned[k + 1] = -spectrum[k];
        }
        Fourier.inverse(turned);
        double[] result = Workspace.table(signal.frames());
        System.arraycopy(turned, 0, result, 0, signal.frames());
        Workspace.giveBackTable(turned);
        return result;
    }
}
