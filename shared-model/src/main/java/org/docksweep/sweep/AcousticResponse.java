package org.docksweep.sweep;

import java.util.Arrays;

/**
 * Microphone response in an early window, smoothed over a sixth of an octave, with its noise. Where the sweeps do not
 * agree, the least of them counts: a knock adds, and only to what the sweep passed at that moment.
 *
 * @param curve level and noise
 * @param phaseRad phase of pressure over voltage without the delay of the arrival
 * @param arrival index of the arrival in the impulse responses
 * @param disturbed share of the points clearly heard at which the sweeps do not agree
 */
record AcousticResponse(AcousticCurve curve, double[] phaseRad, int arrival, double disturbed) {
    /** Sweeps agree within this, in dB. */
    private static final double AGREE_DB = 1;

    /** Points on each side over which the difference of two sweeps is averaged. */
    private static final int DIFFERENCE_REACH = 8;

    private static final double MUCH_LESS = 0.25;

    /** Points this far above the noise are asked whether the sweeps agree, in dB. */
    private static final double ASKED_DB = 12;

    /** Grid points on each side of a sixth of an octave; the outermost count half. */
    private static final int SMOOTHING_REACH = FrequencyGrid.POINTS_PER_OCTAVE / 12;

    /** Sound needs this long from the cabinet to the marked spot at most, in seconds (10 m). */
    private static final double LATEST_ARRIVAL_S = 0.03;

    /** A peak over the mean square of the stretch it is searched in, below which nothing clearly arrives. */
    private static final double ARRIVAL_RATIO = 12;

    private static final double LOWEST_SQUARE = 1e-30;

    /**
     * The response.
     *
     * @param capture capture with a microphone
     * @param used sweeps to use
     * @return the response, or null when no sweep is usable
     */
    static AcousticResponse of(PreparedCapture capture, boolean[] used) {
        int m = capture.channel(ChannelRole.MICROPHONE);
        int v = capture.channel(ChannelRole.VOLTAGE);
        int count = 0;
        for (boolean use : used) {
            count += use ? 1 : 0;
        }
        if (count == 0) {
            return null;
        }
        double[] pressure = capture.workspace.zeros(capture.deconvolver.size());
        double[] voltage = capture.workspace.zeros(pressure.length);
        double[][] each = new double[count][];
        int n = 0;
        for (int k = 0; k < used.length; k++) {
            if (used[k]) {
                each[n++] = capture.responses[k][m];
                for (int i = 0; i < pressure.length; i++) {
                    pressure[i] += capture.responses[k][m][i];
                    voltage[i] += v >= 0 ? capture.responses[k][v][i] : 0;
                }
            }
        }
        int rate = capture.sampleRateHz;
        double[] frequencyHz = SweepAnalyser.gridOf(capture.signal);
        int arrival = v >= 0 ? arrival(pressure, capture.pad, rate) : capture.pad;
        GatedSpectrum p = GatedSpectrum.of(each, arrival, rate, frequencyHz, f -> Gate.acoustic(f, capture.signal));
        GatedSpectrum drive = GatedSpectrum.of(
                new double[][] {voltage}, capture.pad, rate, frequencyHz, f -> Gate.acoustic(f, capture.signal));
        capture.workspace.giveBack(pressure);
        capture.workspace.giveBack(voltage);
        return read(capture, p, drive, arrival, count);
    }

    private static AcousticResponse read(
            PreparedCapture capture, GatedSpectrum p, GatedSpectrum drive, int arrival, int count) {
        int m = capture.channel(ChannelRole.MICROPHONE);
        boolean driven = capture.channel(ChannelRole.VOLTAGE) >= 0;
        double[] frequencyHz = p.frequencyHz();
        double[] level = new double[frequencyHz.length];
        double[] noise = new double[frequencyHz.length];
        double[] phase = new double[frequencyHz.length];
        double[][] smooth = new double[count][];
        for (int k = 0; k < count; k++) {
            double[] squares = new double[frequencyHz.length];
            for (int i = 0; i < squares.length; i++) {
                squares[i] = square(p, k, i);
            }
            smooth[k] = decibel(squares);
        }
        int asked = 0;
        int apart = 0;
        for (int i = 0; i < level.length; i++) {
            double f = frequencyHz[i];
            double volts = driven ? square(drive, 0, i) / (count * count) : 1;
            double gain = capture.deconvolver.noiseGain(f, f / 12);
            double silence = capture.noise.power(m, f) * gain * p.windowEnergy()[i];
            int least = 0;
            double spread = 0;
            for (int k = 1; k < count; k++) {
                spread = Math.max(spread, Math.abs(smooth[k][i] - smooth[least][i]));
                least = smooth[k][i] < smooth[least][i] ? k : least;
            }
            boolean agree = spread <= AGREE_DB;
            double re = 0;
            double im = 0;
            for (int k = 0; k < count; k++) {
                if (agree || k == least) {
                    re += p.re()[k][i] / (agree ? count : 1);
                    im += p.im()[k][i] / (agree ? count : 1);
                }
            }
            phase[i] = StrictMath.atan2(im, re) - (driven ? angle(drive, i) : 0);
            level[i] = (re * re + im * im) / Math.max(LOWEST_SQUARE, volts);
            noise[i] = calmer(silence, p, i) / ((agree ? count : 1) * Math.max(LOWEST_SQUARE, volts));
            if (level[i] > noise[i] * StrictMath.pow(10, ASKED_DB / 10)) {
                asked++;
                apart += spread > 1.5 * AGREE_DB ? 1 : 0;
            }
        }
        return new AcousticResponse(
                new AcousticCurve(frequencyHz, decibel(level), decibel(noise)),
                phase,
                arrival,
                asked == 0 ? 0 : apart / (double) asked);
    }

    /**
     * Noise of one sweep. A knock in the silence before the sweep says nothing of the sweeps: where they differ by much
     * less than that silence would have it, their difference is the noise.
     */
    private static double calmer(double silence, GatedSpectrum p, int point) {
        if (p.re().length < 2) {
            return silence;
        }
        double sum = 0;
        int count = 0;
        for (int i = Math.max(0, point - DIFFERENCE_REACH);
                i <= Math.min(p.frequencyHz().length - 1, point + DIFFERENCE_REACH);
                i++) {
            double re = p.re()[1][i] - p.re()[0][i];
            double im = p.im()[1][i] - p.im()[0][i];
            sum += (re * re + im * im) / 2;
            count++;
        }
        double difference = sum / count;
        return difference < MUCH_LESS * silence ? difference / MUCH_LESS : silence;
    }

    private static double angle(GatedSpectrum spectrum, int point) {
        return StrictMath.atan2(spectrum.im()[0][point], spectrum.re()[0][point]);
    }

    /** Lag at which the sound arrives; the earliest sensible one when nothing clearly does. */
    private static int arrival(double[] pressure, int pad, int rate) {
        int reach = (int) (LATEST_ARRIVAL_S * rate);
        int peak = PreparedCapture.peak(pressure, pad, pad + reach);
        double mean = 0;
        for (int n = pad; n < pad + reach; n++) {
            mean += pressure[n] * pressure[n] / reach;
        }
        return pressure[peak] * pressure[peak] > ARRIVAL_RATIO * mean ? peak : pad;
    }

    private static double square(GatedSpectrum spectrum, int response, int point) {
        double re = spectrum.re()[response][point];
        double im = spectrum.im()[response][point];
        return re * re + im * im;
    }

    private static double[] decibel(double[] squares) {
        double[] result = new double[squares.length];
        Arrays.setAll(result, i -> {
            double sum = 0;
            double weights = 0;
            for (int d = -SMOOTHING_REACH; d <= SMOOTHING_REACH; d++) {
                if (i + d >= 0 && i + d < squares.length) {
                    double weight = Math.abs(d) == SMOOTHING_REACH ? 0.5 : 1;
                    sum += weight * squares[i + d];
                    weights += weight;
                }
            }
            return 10 * StrictMath.log10(Math.max(LOWEST_SQUARE, sum / weights));
        });
        return result;
    }
}
