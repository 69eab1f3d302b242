package org.docksweep.sweep;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleFunction;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.TestPointKind;
import org.hipparchus.complex.Complex;

/** Makes captures of known loads: the drive is filtered in the frequency domain, noise and faults are added after. */
final class CaptureMaker {
    static final double VOLTS_FULL_SCALE = 10;
    static final double AMPERES_FULL_SCALE = 4;
    static final double PASCALS_FULL_SCALE = 20;

    private SweepPlan plan = plan(20, 20000, 2, 1.0, 2);
    private DoubleFunction<Complex> load = f -> Complex.valueOf(10);
    private DoubleFunction<Complex> microphone;
    private double senseOhm = 0.5;
    private double latencyS = 0.0573;
    private double noiseFullScale = 2e-6;
    private double microphoneNoisePa;
    private double humAmplitudeV;
    private double humHz = 50.03;
    private double secondHarmonic;
    private long seed = 1;
    private TestPointKind kind = TestPointKind.TERMINALS;
    private boolean electrical = true;

    static SweepPlan plan(double startHz, double stopHz, double durationS, double volts, int repeats) {
        LevelMask mask =
                new LevelMask(List.of(new LevelMask.Point(startHz, volts), new LevelMask.Point(stopHz, volts)));
        return new SweepPlan(SweepSignal.synchronised(startHz, stopHz, durationS, 48000, mask), 0.5, 0.4, repeats);
    }

    CaptureMaker plan(SweepPlan value) {
        plan = value;
        return this;
    }

    CaptureMaker load(DoubleFunction<Complex> impedanceOhm) {
        load = impedanceOhm;
        return this;
    }

    CaptureMaker resistor(double ohm) {
        return load(f -> Complex.valueOf(ohm));
    }

    CaptureMaker senseOhm(double value) {
        senseOhm = value;
        return this;
    }

    CaptureMaker latencyS(double value) {
        latencyS = value;
        return this;
    }

    CaptureMaker noise(double rmsFullScale) {
        noiseFullScale = rmsFullScale;
        return this;
    }

    CaptureMaker hum(double amplitudeV, double frequencyHz) {
        humAmplitudeV = amplitudeV;
        humHz = frequencyHz;
        return this;
    }

    CaptureMaker secondHarmonic(double share) {
        secondHarmonic = share;
        return this;
    }

    CaptureMaker microphone(DoubleFunction<Complex> pascalsPerVolt, double noisePa) {
        microphone = pascalsPerVolt;
        microphoneNoisePa = noisePa;
        return this;
    }

    CaptureMaker lineInput() {
        kind = TestPointKind.LINE_INPUT;
        electrical = false;
        return this;
    }

    CaptureMaker seed(long value) {
        seed = value;
        return this;
    }

    SweepPlan plan() {
        return plan;
    }

    Capture make() {
        double[] drive = plan.driveVolts();
        // The silence at both ends is longer than any delay, so that what wraps around is silence.
        int size = Fourier.sizeFor(drive.length);
        double[] padded = new double[size];
        System.arraycopy(drive, 0, padded, 0, drive.length);
        Deconvolver known = Deconvolver.of(plan.signal(), plan.signal().frames());
        for (int k = 0; k < plan.repeats(); k++) {
            for (int i = 0; i < plan.signal().frames(); i++) {
                // sin cos = sin(2 phi) / 2: a second harmonic without the constant a square law would bring.
                padded[plan.startFrame(k) + i] += secondHarmonic * known.drive()[i] * known.quadrature()[i];
            }
        }
        // The transform is held against a naive one in FourierTest.
        Fourier.forward(padded);
        List<CaptureChannel> channels = new ArrayList<>();
        List<float[]> samples = new ArrayList<>();
        Random random = new Random(seed);
        if (electrical) {
            channels.add(new CaptureChannel(ChannelRole.VOLTAGE, VOLTS_FULL_SCALE));
            channels.add(new CaptureChannel(ChannelRole.CURRENT, AMPERES_FULL_SCALE));
            Complex[] current = gains(size, f -> load.apply(f).add(senseOhm).reciprocal());
            double[] i = filtered(padded, current);
            double[] v = voltage(padded, current);
            addHum(v, 1);
            addHum(i, 0.1);
            samples.add(scaled(v, drive.length, VOLTS_FULL_SCALE, noiseFullScale, random));
            samples.add(scaled(i, drive.length, AMPERES_FULL_SCALE, noiseFullScale, random));
        }
        if (microphone != null) {
            channels.add(new CaptureChannel(ChannelRole.MICROPHONE, PASCALS_FULL_SCALE));
            double[] p = filtered(padded, gains(size, microphone));
            double noise = microphoneNoisePa / PASCALS_FULL_SCALE;
            samples.add(scaled(p, drive.length, PASCALS_FULL_SCALE, noise, random));
        }
        CaptureHeader header =
                new CaptureHeader(Instant.parse("2026-05-01T01:23:45Z"), "test rig", kind, channels, plan, null);
        return new Capture(header, samples.toArray(float[][]::new));
    }

    private Complex[] gains(int size, DoubleFunction<Complex> gain) {
        Complex[] gains = new Complex[size / 2];
        for (int k = 1; k < gains.length; k++) {
            gains[k] = gain.apply(k * (double) plan.signal().sampleRateHz() / size);
        }
        return gains;
    }

    /** The terminals see the drive less what falls across the sense resistor. */
    private double[] voltage(double[] spectrum, Complex[] current) {
        Complex[] gains = new Complex[current.length];
        for (int k = 1; k < gains.length; k++) {
            gains[k] = current[k].multiply(-senseOhm).add(1);
        }
        return filtered(spectrum, gains);
    }

    private double[] filtered(double[] spectrum, Complex[] gains) {
        double[] result = new double[spectrum.length];
        double turn = -2 * Math.PI * latencyS * plan.signal().sampleRateHz() / spectrum.length;
        for (int k = 1; k < gains.length; k++) {
            double cos = Math.cos(turn * k);
            double sin = Math.sin(turn * k);
            double re = gains[k].getReal() * cos - gains[k].getImaginary() * sin;
            double im = gains[k].getReal() * sin + gains[k].getImaginary() * cos;
            result[2 * k] = spectrum[2 * k] * re - spectrum[2 * k + 1] * im;
            result[2 * k + 1] = spectrum[2 * k] * im + spectrum[2 * k + 1] * re;
        }
        Fourier.inverse(result);
        return result;
    }

    private void addHum(double[] samples, double share) {
        for (int i = 0; i < samples.length; i++) {
            double angle = 2 * Math.PI * humHz * i / plan.signal().sampleRateHz();
            samples[i] += share * humAmplitudeV * (Math.sin(angle + 0.3) + 0.4 * Math.sin(3 * angle + 1));
        }
    }

    private static float[] scaled(double[] samples, int frames, double fullScale, double noise, Random random) {
        float[] result = new float[frames];
        for (int i = 0; i < frames; i++) {
            result[i] = (float) (samples[i] / fullScale + noise * random.nextGaussian());
        }
        return result;
    }
}
