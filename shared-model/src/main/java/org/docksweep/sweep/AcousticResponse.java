package org.docksweep.sweep;

import java.util.Arrays;

/**
 * Microphone response in an early window, smoothed over a sixth of an octave, with its noise.
 *
 * @param curve level and noise
 * @param phaseRad phase of pressure over voltage without the delay of the arrival
 * @param arrival index of the arrival in the impulse responses
 */
record AcousticResponse(AcousticCurve curve, double[] phaseRad, int arrival) {
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
        double[] pressure = new double[capture.deconvolver.size()];
        double[] voltage = new double[pressure.length];
        for (int k = 0; k < used.length; k++) {
            if (used[k]) {
                count++;
                for (int n = 0; n < pressure.length; n++) {
                    pressure[n] += capture.responses[k][m][n];
                    voltage[n] += v >= 0 ? capture.responses[k][v][n] : 0;
                }
            }
        }
        if (count == 0) {
            return null;
        }
        int rate = capture.sampleRateHz;
        double[] frequencyHz = SweepAnalyser.gridOf(capture.signal);
        int arrival = v >= 0 ? arrival(pressure, capture.pad, rate) : capture.pad;
        GatedSpectrum p = GatedSpectrum.of(
                new double[][] {pressure}, arrival, rate, frequencyHz, f -> Gate.acoustic(f, capture.signal));
        GatedSpectrum drive = GatedSpectrum.of(
                new double[][] {voltage}, capture.pad, rate, frequencyHz, f -> Gate.acoustic(f, capture.signal));
        double[] level = new double[frequencyHz.length];
        double[] noise = new double[frequencyHz.length];
        double[] phase = new double[frequencyHz.length];
        for (int i = 0; i < level.length; i++) {
            double f = frequencyHz[i];
            double driven = v >= 0 ? square(drive, i) : count * count;
            double gain = capture.deconvolver.noiseGain(f, f / 12);
            phase[i] = angle(p, i) - (v >= 0 ? angle(drive, i) : 0);
            level[i] = square(p, i) / Math.max(LOWEST_SQUARE, driven);
            noise[i] = capture.noise.power(m, f) * gain * p.windowEnergy()[i] * count / Math.max(LOWEST_SQUARE, driven);
        }
        return new AcousticResponse(new AcousticCurve(frequencyHz, decibel(level), decibel(noise)), phase, arrival);
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

    private static double square(GatedSpectrum spectrum, int point) {
        double re = spectrum.re()[0][point];
        double im = spectrum.im()[0][point];
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
