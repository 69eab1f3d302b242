package org.docksweep.acoustic;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.MicrophoneTake;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepSignal;

/**
 * What a microphone heard besides the sweep, as a sound for the ear, within 1 to 15 kHz and in the time of the capture. While
 * the sweep passes up to 1 kHz it is what the gate looks for touching parts in: all above the 10th order of the sweep's frequency. Above,
 * where nothing is left there, it is what two sweeps do not share, their difference over the root of 2 without what came within
 * 2 ms before to 30 ms after the direct sound: scraping strokes are never alike, the cabinet's response is. A single sweep is silent there.
 * Immutable; arrays are copies.
 */
public final class ResidueSound {
    private static final double BEFORE_DIRECT_S = 0.002;
    private static final double AFTER_DIRECT_S = 0.03;

    /** From one way of listening to the other, in seconds. */
    private static final double CROSSING_S = 0.02;

    /** What rings on after a sweep, in seconds. */
    private static final double RINGING_S = 0.1;

    /** Above this share of the sweep's last frequency its own samples stand in for the response, hence the sweep itself. */
    private static final double HIGHEST_SHARE = 0.86;

    private final int sampleRateHz;
    private final double sweepPeakPa;
    private final double[] pascals;

    private ResidueSound(int sampleRateHz, double sweepPeakPa, double[] pascals) {
        this.sampleRateHz = sampleRateHz;
        this.sweepPeakPa = sweepPeakPa;
        this.pascals = pascals;
    }

    /**
     * The sound of a capture.
     *
     * @param capture the capture
     * @return the sound; empty without a microphone, or when the capture is spoiled
     */
    public static Optional<ResidueSound> of(Capture capture) {
        if (!capture.has(ChannelRole.MICROPHONE)) {
            return Optional.empty();
        }
        AtomicReference<ResidueSound> made = new AtomicReference<>();
        new SweepAnalyser()
                .hearing(take -> {
                    made.set(of(take));
                    return null;
                })
                .analyse(capture);
        return Optional.ofNullable(made.get());
    }

    private static ResidueSound of(MicrophoneTake take) {
        SweepSignal signal = take.signal();
        int rate = signal.sampleRateHz();
        Residue residue = Residue.of(take);
        int way = take.arrival() - take.origin();
        int ringing = (int) (RINGING_S * rate);
        int last = take.start(take.sweeps() - 1) - take.start(0);
        double[] sound = new double[last + way + signal.frames() + ringing];
        double crossing = residue.indexAtTurns(residue.turns(residue.highestSweepHz()));
        for (int k = 0; k < take.sweeps(); k++) {
            double[] low = residue.samples(k);
            double[] high = difference(take, residue, k);
            int offset = take.start(k) - take.start(0) - take.origin();
            int until = take.origin() + way + signal.frames() + ringing;
            for (int i = take.origin(); i < Math.min(low.length, until); i++) {
                double above = 0.5 + (i - crossing) / (CROSSING_S * rate);
                double share = 0.5 - 0.5 * StrictMath.cos(Math.PI * Math.max(0, Math.min(1, above)));
                sound[offset + i] = (1 - share) * low[i] + share * high[i];
            }
        }
        return new ResidueSound(rate, Math.max(1e-9, SoundEar.sweepPeakPa(take)), sound);
    }

    /** What a sweep does not share with the next one. */
    private static double[] difference(MicrophoneTake take, Residue residue, int sweep) {
        SweepSignal signal = take.signal();
        double[] one = take.response(sweep);
        double[] weights = residue.weights(one.length, take)[0];
        if (take.sweeps() < 2 || HIGHEST_SHARE * signal.stopHz() <= Residue.LOW_HZ) {
            return new double[one.length];
        }
        double[] other = take.response((sweep + 1) % take.sweeps());
        double[] part = new double[one.length];
        for (int i = 0; i < part.length; i++) {
            part[i] = (one[i] - other[i]) * Math.sqrt(0.5);
        }
        int from = take.arrival() - (int) (BEFORE_DIRECT_S * signal.sampleRateHz());
        int to = take.arrival() + (int) (AFTER_DIRECT_S * signal.sampleRateHz());
        for (int lag = from; lag <= to; lag++) {
            part[lag & part.length - 1] = 0;
        }
        double binHz = signal.sampleRateHz() / (double) part.length;
        for (int bin = (int) (HIGHEST_SHARE * signal.stopHz() / binHz); bin < weights.length; bin++) {
            weights[bin] = 0;
        }
        return take.resweep(sweep, part, new double[][] {weights})[0];
    }

    /**
     * Samples per second.
     *
     * @return hertz
     */
    public int sampleRateHz() {
        return sampleRateHz;
    }

    /**
     * Largest sound while the sweep passes 1 to 15 kHz: what levels of this sound are told against.
     *
     * @return pascals, greater than 0
     */
    public double sweepPeakPa() {
        return sweepPeakPa;
    }

    /**
     * The sound from the begin of the first sweep's drive to the end of the last sweep.
     *
     * @return pascals, a copy
     */
    public double[] pascals() {
        return pascals.clone();
    }

    /**
     * Its loudest instant.
     *
     * @return dB re {@link #sweepPeakPa()}, at least -160
     */
    public double loudestDb() {
        double most = 1e-8 * sweepPeakPa;
        for (double value : pascals) {
            most = Math.max(most, Math.abs(value));
        }
        return 20 * StrictMath.log10(most / sweepPeakPa);
    }
}
