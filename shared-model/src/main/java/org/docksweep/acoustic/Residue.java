package org.docksweep.acoustic;

import org.docksweep.sweep.Fourier;
import org.docksweep.sweep.MicrophoneTake;
import org.docksweep.sweep.SweepSignal;

/**
 * What a sweep leaves above the 10th order of its own frequency, within 1 to 15 kHz, as a signal in time. The impulse
 * response is cut off later than {@code L ln 10} before the arrival and the sweep sent through the rest: a high-pass
 * that follows ten times the sweep's frequency without a filter's ringing.
 */
final class Residue {
    /** Lowest order kept in full. */
    static final double LOWEST_ORDER = 10;

    static final double LOW_HZ = 1000;
    static final double HIGH_HZ = 15000;

    /** Above this frequency of the sweep too little is left of the band. */
    private static final double HIGHEST_SWEEP_HZ = 1000;

    /** Order at which the cut begins to open. */
    private static final double OPENING_ORDER = 9.25;

    private static final double EDGE = 1.1;
    private static final int NOISE_POINTS = 32;

    private final SweepSignal signal;
    private final int rate;
    private final int arrival;
    private final double highestSweepHz;
    private final double[][] pascals;
    /** Sums of squares up to each sample, {@link #count} of them. */
    private final double[][] energy;
    /** Sums of squares of the residue weighed so that the noise of the silence is even over the band. */
    private final double[][] evenEnergy;

    private int count;
    private final double[] noisePower = new double[NOISE_POINTS];
    private final double[] noiseHz = new double[NOISE_POINTS];
    private final double[] noiseAbove = new double[NOISE_POINTS];

    private Residue(MicrophoneTake take) {
        this.signal = take.signal();
        this.rate = signal.sampleRateHz();
        this.arrival = take.arrival();
        this.pascals = new double[take.sweeps()][];
        this.energy = new double[take.sweeps()][];
        this.evenEnergy = new double[take.sweeps()][];
        this.highestSweepHz = Math.min(HIGHEST_SWEEP_HZ, signal.stopHz() / LOWEST_ORDER);
    }

    /**
     * Makes the residue of every sweep.
     *
     * @param take the take
     * @return the residue
     */
    static Residue of(MicrophoneTake take) {
        Residue residue = new Residue(take);
        residue.readNoise(take);
        double[][] weights = residue.weights(take.response(0).length, take);
        for (int k = 0; k < take.sweeps(); k++) {
            double[] part = take.room(take.response(k).length);
            residue.copyPart(take.response(k), part);
            double[][] both = take.resweep(k, part, weights);
            take.giveBack(part);
            residue.pascals[k] = both[0];
            residue.energy[k] = residue.sums(both[0], take);
            residue.evenEnergy[k] = residue.sums(both[1], take);
            take.giveBack(both[1]);
        }
        take.giveBack(weights[0]);
        take.giveBack(weights[1]);
        return residue;
    }

    /** The impulse response earlier than the 10th order, into zeros. */
    private void copyPart(double[] response, double[] part) {
        int mask = response.length - 1;
        double opening = signal.rateConstantS() * StrictMath.log(OPENING_ORDER) * rate;
        double open = signal.harmonicLeadS((int) LOWEST_ORDER) * rate;
        double highest = Math.max(LOWEST_ORDER, HIGH_HZ * EDGE / signal.startHz());
        int longest = (int) Math.min(
                part.length - opening - 1, signal.rateConstantS() * StrictMath.log(highest) * rate + 0.01 * rate);
        for (int lead = (int) Math.ceil(opening); lead < longest; lead++) {
            double share = Math.min(1, (lead - opening) / (open - opening));
            double window = 0.5 - 0.5 * StrictMath.cos(Math.PI * share);
            int at = arrival - lead & mask;
            part[at] = window * response[at];
        }
    }

    /** Factors per bin: the band as it is, and the band with the noise of the silence made even; from the take's room. */
    double[][] weights(int size, MicrophoneTake take) {
        double[][] weights = {take.room(size / 2), take.room(size / 2)};
        double binHz = rate / (double) size;
        int last = Math.min(size / 2 - 1, (int) (HIGH_HZ * EDGE / binHz));
        double mean = 0;
        for (double power : noisePower) {
            mean += power / NOISE_POINTS;
        }
        int point = 0;
        for (int k = (int) Math.ceil(LOW_HZ / EDGE / binHz); k <= last; k++) {
            double hz = k * binHz;
            boolean within = hz > LOW_HZ * EDGE && hz < HIGH_HZ / EDGE;
            weights[0][k] = within ? 1 : edge(hz / LOW_HZ) * edge(HIGH_HZ / hz);
            while (point < NOISE_POINTS - 2 && noiseHz[point + 1] < hz) {
                point++;
            }
            double share = Math.max(0, Math.min(1, (hz - noiseHz[point]) / (noiseHz[point + 1] - noiseHz[point])));
            double power = noisePower[point] + share * (noisePower[point + 1] - noisePower[point]);
            weights[1][k] = weights[0][k] * Math.sqrt(mean / Math.max(1e-4 * mean + 1e-30, power));
        }
        return weights;
    }

    /** Rises from 0 at 1 / EDGE to 1 at EDGE as a half cosine on a logarithmic scale. */
    private static double edge(double ratio) {
        if (ratio <= 1 / EDGE) {
            return 0;
        }
        if (ratio >= EDGE) {
            return 1;
        }
        double share = (StrictMath.log(ratio) / StrictMath.log(EDGE) + 1) / 2;
        return 0.5 - 0.5 * StrictMath.cos(Math.PI * share);
    }

    private double[] sums(double[] samples, MicrophoneTake take) {
        int last = Math.min(samples.length, arrival + (int) (timeS(1.1 * highestSweepHz) * rate) + rate / 50);
        count = Math.max(arrival, last) + 1;
        double[] sums = take.room(Fourier.sizeFor(count));
        for (int i = 0; i < count - 1; i++) {
            sums[i + 1] = sums[i] + samples[i] * samples[i];
        }
        return sums;
    }

    private void readNoise(MicrophoneTake take) {
        double step = StrictMath.pow(HIGH_HZ / LOW_HZ, 1.0 / (NOISE_POINTS - 1));
        for (int i = 0; i < NOISE_POINTS; i++) {
            noiseHz[i] = LOW_HZ * StrictMath.pow(step, i);
            noisePower[i] = take.noisePower(noiseHz[i]);
        }
        for (int i = NOISE_POINTS - 2; i >= 0; i--) {
            double widthHz = noiseHz[i + 1] - noiseHz[i];
            noiseAbove[i] = noiseAbove[i + 1] + (noisePower[i] + noisePower[i + 1]) * widthHz / rate;
        }
    }

    int sweeps() {
        return pascals.length;
    }

    SweepSignal signal() {
        return signal;
    }

    /** Time of the sweep at which it passes a frequency, in seconds. */
    double timeS(double frequencyHz) {
        return signal.rateConstantS() * StrictMath.log(frequencyHz / signal.startHz());
    }

    /** Turns of the drive's phase from its begin to a frequency: L f less L f1. */
    double turns(double frequencyHz) {
        return signal.rateConstantS() * frequencyHz;
    }

    /** Frequency at which the drive's phase has made so many turns. */
    double frequencyHzAtTurns(double turns) {
        return turns / signal.rateConstantS();
    }

    /** Index into the residue at which the drive's phase, as heard, has made so many turns. */
    double indexAtTurns(double turns) {
        return arrival + timeS(frequencyHzAtTurns(turns)) * rate;
    }

    /** Highest frequency of the sweep at which a residue is read, in hertz. */
    double highestSweepHz() {
        return highestSweepHz;
    }

    /** Energy between two indices of the residue that was weighed for even noise; of no unit. */
    double evenEnergy(int sweep, double from, double to) {
        double[] sums = evenEnergy[sweep];
        return at(sums, to) - at(sums, from);
    }

    /** Energy of a sweep's residue between two indices, in Pa^2 samples. */
    double energy(int sweep, double from, double to) {
        double[] sums = energy[sweep];
        return at(sums, to) - at(sums, from);
    }

    private double at(double[] sums, double index) {
        int whole = (int) Math.min(count - 2, Math.max(0, Math.floor(index)));
        double part = Math.min(1, Math.max(0, index - whole));
        return sums[whole] + part * (sums[whole + 1] - sums[whole]);
    }

    /** A sweep's residue in pascals, from {@link MicrophoneTake#origin()} frames before the sweep's begin on; not a copy. */
    double[] samples(int sweep) {
        return pascals[sweep];
    }

    /** Largest magnitude of a sweep's residue between two indices. */
    double peak(int sweep, double from, double to) {
        double[] samples = pascals[sweep];
        double peak = 0;
        int last = Math.min(samples.length, (int) Math.ceil(to));
        for (int i = Math.max(0, (int) Math.floor(from)); i < last; i++) {
            peak = Math.max(peak, Math.abs(samples[i]));
        }
        return peak;
    }

    /** Width of the band that is left while the sweep passes a frequency, in hertz. */
    static double bandwidthHz(double sweepHz) {
        return HIGH_HZ - Math.max(LOW_HZ, LOWEST_ORDER * sweepHz);
    }

    /** Mean square that the noise of the silence has in the band that is left, in Pa^2. */
    double noiseVariance(double sweepHz) {
        double fromHz = Math.max(LOW_HZ, LOWEST_ORDER * sweepHz);
        double position = (NOISE_POINTS - 1) * StrictMath.log(fromHz / LOW_HZ) / StrictMath.log(HIGH_HZ / LOW_HZ);
        int i = (int) Math.min(NOISE_POINTS - 2, Math.floor(position));
        double share = Math.min(1, position - i);
        return Math.max(1e-20, noiseAbove[i] + share * (noiseAbove[i + 1] - noiseAbove[i]));
    }
}
