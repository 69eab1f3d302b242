package org.docksweep.acoustic;

import org.docksweep.sweep.Fourier;
import org.docksweep.sweep.MicrophoneTake;
import org.docksweep.sweep.SweepSignal;

/**
 * Harmonics from an exponential sweep. The response of order n stands {@code L ln n} before the linear one (Farina, AES
 * 108, 2000; Novak, Lotton, Simon, JAES 63, 2015). A component of n times the drive's frequency sweeps as fast at
 * {@code F = n f} as the fundamental does when it gets there, so {@code a_n(f) / a_1(f) = |H_n(n f)| U(n f) / (|H_1(f)|
 * U(f))} with U the level of the sweep.
 */
final class Harmonics {
    /** Highest order read; what is above the tenth is the residue. */
    static final int HIGHEST_ORDER = 9;

    /** Level given where nothing is found, in dB. */
    private static final double NOTHING_DB = -200;

    /** Longest window, in seconds. */
    private static final double LONGEST_S = 0.085;

    /** Share of the distance to the neighbouring orders a window may take. */
    private static final double BEFORE_SHARE = 0.35;

    private static final double BEHIND_SHARE = 0.55;

    private final SweepSignal signal;
    private final double binHz;
    private final int highest;
    private final double[][] magnitude;

    private Harmonics(SweepSignal signal, double binHz, double[][] magnitude) {
        this.signal = signal;
        this.binHz = binHz;
        this.magnitude = magnitude;
        this.highest = magnitude.length - 1;
    }

    /**
     * Reads the orders of the mean response of all sweeps that are calm; of all when none is.
     *
     * @param take the take
     * @return harmonics
     */
    static Harmonics of(MicrophoneTake take) {
        SweepSignal signal = take.signal();
        int rate = signal.sampleRateHz();
        int longest = Fourier.sizeFor((int) (LONGEST_S * rate));
        double[][] magnitude = new double[HIGHEST_ORDER + 1][];
        boolean anyCalm = false;
        for (int k = 0; k < take.sweeps(); k++) {
            anyCalm |= take.calm(k);
        }
        for (int n = 1; n <= HIGHEST_ORDER; n++) {
            double centre = take.arrival() - signal.harmonicLeadS(n) * rate;
            double toHigher = signal.rateConstantS() * StrictMath.log((n + 1.0) / n) * rate;
            double toLower = n == 1 ? longest : signal.rateConstantS() * StrictMath.log(n / (n - 1.0)) * rate;
            int before = (int) Math.min(0.25 * longest, BEFORE_SHARE * toHigher);
            int behind = (int) Math.min(0.75 * longest, BEHIND_SHARE * toLower);
            magnitude[n] = spectrum(take, anyCalm, (int) Math.rint(centre) - before, before, behind, longest);
        }
        return new Harmonics(signal, rate / (double) longest, magnitude);
    }

    private static double[] spectrum(
            MicrophoneTake take, boolean anyCalm, int from, int before, int behind, int longest) {
        double[] work = new double[longest];
        for (int k = 0; k < take.sweeps(); k++) {
            if (take.calm(k) || !anyCalm) {
                double[] response = take.response(k);
                int mask = response.length - 1;
                for (int i = 0; i < before + behind; i++) {
                    work[i] += response[from + i & mask];
                }
            }
        }
        int rise = before / 2;
        int fall = behind / 3;
        for (int i = 0; i < before + behind; i++) {
            double window = i < rise ? 0.5 - 0.5 * StrictMath.cos(Math.PI * (i + 0.5) / rise) : 1;
            int left = before + behind - 1 - i;
            window *= left < fall ? 0.5 - 0.5 * StrictMath.cos(Math.PI * (left + 0.5) / fall) : 1;
            work[i] *= window;
        }
        Fourier.forward(work);
        double[] magnitude = new double[longest / 2];
        for (int i = 1; i < magnitude.length; i++) {
            magnitude[i] = StrictMath.hypot(work[2 * i], work[2 * i + 1]);
        }
        return magnitude;
    }

    /**
     * Levels of the orders 2 to 9 while the drive is at a frequency, averaged in power over a third of an octave.
     *
     * @param frequencyHz frequency of the drive
     * @return levels re the fundamental in dB; shorter where the sweep does not reach that far up
     */
    double[] levelsDb(double frequencyHz) {
        int reach = 0;
        for (int n = 2; n <= highest; n++) {
            if (n * frequencyHz * ThirdOctave.HALF_BAND < 0.97 * signal.stopHz()) {
                reach++;
            }
        }
        double[] levels = new double[reach];
        double fundamental = power(1, frequencyHz);
        for (int n = 2; n < 2 + reach; n++) {
            double ratio = power(n, n * frequencyHz) * square(volts(n * frequencyHz) / volts(frequencyHz));
            levels[n - 2] = ratio > 0 && fundamental > 0
                    ? Math.max(NOTHING_DB, 10 * StrictMath.log10(ratio / fundamental))
                    : NOTHING_DB;
        }
        return levels;
    }

    private double power(int order, double frequencyHz) {
        int first = Math.max(1, (int) Math.ceil(frequencyHz / ThirdOctave.HALF_BAND / binHz));
        int last = (int) Math.floor(frequencyHz * ThirdOctave.HALF_BAND / binHz);
        if (last < first) {
            first = Math.max(1, (int) Math.rint(frequencyHz / binHz));
            last = first;
        }
        last = Math.min(last, magnitude[order].length - 1);
        double sum = 0;
        for (int i = first; i <= last; i++) {
            sum += square(magnitude[order][i]);
        }
        return sum / Math.max(1, last - first + 1);
    }

    private double volts(double frequencyHz) {
        double low = signal.level().lowestHz();
        double high = signal.level().highestHz();
        return signal.level().voltageVrmsAt(Math.min(high, Math.max(low, frequencyHz)));
    }

    private static double square(double value) {
        return value * value;
    }
}
