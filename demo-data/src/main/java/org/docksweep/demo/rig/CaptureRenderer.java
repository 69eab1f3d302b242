package org.docksweep.demo.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import org.docksweep.demo.physics.Load;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.CaptureChannel;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.SweepPlan;
import org.hipparchus.complex.Complex;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * Renders the samples of a capture: the linear part by one long transform of the drive, then what is not linear, what
 * changes while it plays, noise, and the converter.
 *
 * <p>The current distorts by {@code i (a2 x + a3 x^2)} with x the excursion as a share of its limit, the sound likewise
 * and by {@code b p^2} in the air of a horn; sizes assumed, no source.
 */
final class CaptureRenderer {
    /** What is captured beyond the plan, so that latency cuts nothing off. */
    static final double AFTER_PLAN_S = 0.30;

    private static final double SETTLING_S = 0.6;
    private static final double CURRENT_SECOND_ORDER = 0.06;
    private static final double CURRENT_THIRD_ORDER = -0.25;
    private static final double AIR_SECOND_ORDER_PER_PA = 0.0015;
    private static final double REFERENCE_PRESSURE_PA = 20e-6;
    private static final double SOUND_TRAVEL_S = 0.0029;
    private static final double MICROPHONE_NOISE_DB = 22;
    private static final double HUM_AT_MICROPHONE_PA = 0.0008;
    private static final int TORN_FRAMES = 600;

    private final Electronics electronics;
    private final Hall hall;
    private final double sampleRateHz;
    private final Map<Integer, double[]> positions = new ConcurrentHashMap<>();

    CaptureRenderer(Electronics electronics, Hall hall, double sampleRateHz) {
        this.electronics = electronics;
        this.hall = hall;
        this.sampleRateHz = sampleRateHz;
    }

    /** Channels of captures of a kind, with their nominal factors. */
    static List<CaptureChannel> channels(TestPointKind kind) {
        List<CaptureChannel> channels = new ArrayList<>();
        channels.add(new CaptureChannel(ChannelRole.VOLTAGE, Electronics.VOLTS_FULL_SCALE));
        if (kind != TestPointKind.LINE_INPUT) {
            channels.add(new CaptureChannel(ChannelRole.CURRENT, Electronics.AMPERES_FULL_SCALE));
        }
        channels.add(new CaptureChannel(ChannelRole.MICROPHONE, Electronics.PASCALS_FULL_SCALE));
        return List.copyOf(channels);
    }

    /** Signals before noise and converter, in volts, amperes, pascals. */
    private record Signals(double[] volts, double[] amperes, double[] pascals) {}

    float[][] render(SweepPlan plan, TestPointKind kind, Playback playback) {
        int frames = plan.totalFrames() + (int) Math.round(AFTER_PLAN_S * sampleRateHz);
        int length = transformLength(frames + (int) (SETTLING_S * sampleRateHz));
        double[] drive = driveSpectrum(plan, playback, length);
        Signals signals = signals(plan, kind, playback, playback.load(), drive, frames);
        if (playback.failing() != null) {
            mixFailures(signals, signals(plan, kind, playback, playback.failing(), drive, frames), playback);
        }
        return convert(kind, playback, plan, signals);
    }

    private double[] driveSpectrum(SweepPlan plan, Playback playback, int length) {
        double[] spectrum = new double[length];
        double[] volts = plan.driveVolts();
        double gain = switch (playback.disturbance()) {
            case CLIP -> 7;
            case QUIET -> 0.02;
            case SILENT -> 0;
            default -> 1;
        };
        int whole = (int) Math.floor(playback.latencyS() * sampleRateHz);
        double part = playback.latencyS() * sampleRateHz - whole;
        for (int i = 0; i < volts.length; i++) {
            spectrum[i + whole] = gain * volts[i];
        }
        new DoubleFFT_1D(length).realForward(spectrum);
        turn(spectrum, part);
        return spectrum;
    }

    /** Delays a packed spectrum by part of a frame. */
    private static void turn(double[] spectrum, double frames) {
        int n = spectrum.length;
        double stepCos = Math.cos(2 * Math.PI * frames / n);
        double stepSin = -Math.sin(2 * Math.PI * frames / n);
        double cos = 1;
        double sin = 0;
        for (int bin = 1; bin < n / 2; bin++) {
            double next = cos * stepCos - sin * stepSin;
            sin = cos * stepSin + sin * stepCos;
            cos = next;
            double re = spectrum[2 * bin];
            double im = spectrum[2 * bin + 1];
            spectrum[2 * bin] = re * cos - im * sin;
            spectrum[2 * bin + 1] = re * sin + im * cos;
        }
    }

    private Signals signals(
            SweepPlan plan, TestPointKind kind, Playback playback, Load load, double[] drive, int frames) {
        int points = LogGrid.points(sampleRateHz);
        Complex[] volts = new Complex[points];
        Complex[] amperes = new Complex[points];
        Complex[] pascals = new Complex[points];
        Complex[] excursion = new Complex[points];
        for (int i = 0; i < points; i++) {
            double frequencyHz = LogGrid.frequencyHz(i);
            boolean line = kind == TestPointKind.LINE_INPUT;
            Load.Response response = line
                    ? load.at(frequencyHz, new Complex(Electronics.LINE_OHM))
                    : throughLead(load, frequencyHz, playback.contactOhm());
            Complex voltage = line
                    ? response.voltage()
                    : Complex.ONE.subtract(response.current().multiply(electronics.sourceOhm()));
            double gain = electronics.amplifierGain();
            volts[i] =
                    voltage.multiply(electronics.voltageResponse(frequencyHz)).multiply(gain);
            amperes[i] = response.current()
                    .multiply(electronics.currentResponse(frequencyHz))
                    .multiply(gain);
            pascals[i] = response.pressurePaPerV()
                    .multiply(electronics.microphoneResponse(frequencyHz))
                    .multiply(gain);
            excursion[i] = response.excursion().multiply(gain);
        }
        double[] at = positions.computeIfAbsent(drive.length, n -> LogGrid.positions(n, sampleRateHz));
        double[] v = inverse(LogGrid.times(drive, at, volts));
        double[] i =
                kind == TestPointKind.LINE_INPUT ? new double[v.length] : inverse(LogGrid.times(drive, at, amperes));
        double[] p = inverse(withTail(LogGrid.times(drive, at, pascals)));
        boolean moves = electronics.distortion() || load.rubDb() > Double.NEGATIVE_INFINITY;
        if (moves) {
            double[] x = inverse(LogGrid.times(drive, at, excursion));
            distort(v, i, p, x);
            rub(plan, playback, load.rubDb(), p, x);
        }
        double travelS = SOUND_TRAVEL_S + playback.placementShiftS();
        double[] heard = delayed(p, (int) Math.round(travelS * sampleRateHz));
        hall.addReflections(heard, playback.placementShiftS());
        return new Signals(
                java.util.Arrays.copyOf(v, frames),
                java.util.Arrays.copyOf(i, frames),
                java.util.Arrays.copyOf(heard, frames));
    }

    /** Amplifier, sense resistor, lead with its capacitance, contacts, then the load; current is the sense resistor's. */
    private Load.Response throughLead(Load load, double frequencyHz, double contactOhm) {
        Complex source = electronics.leadOhmAt(frequencyHz).add(electronics.sourceOhm());
        Complex shunt = new Complex(0, 2 * Math.PI * frequencyHz * electronics.leadFarad());
        Complex share = source.multiply(shunt).add(1).reciprocal();
        Load.Response seen = load.at(frequencyHz, source.multiply(share).add(contactOhm));
        Complex loadCurrent = seen.current().multiply(share);
        Complex endVoltage = Complex.ONE.subtract(source.multiply(loadCurrent)).multiply(share);
        return new Load.Response(
                seen.voltage().multiply(share),
                loadCurrent.add(endVoltage.multiply(shunt)),
                seen.pressurePaPerV().multiply(share),
                seen.excursion().multiply(share));
    }

    private double[] inverse(double[] spectrum) {
        new DoubleFFT_1D(spectrum.length).realInverse(spectrum, true);
        return spectrum;
    }

    private double[] withTail(double[] direct) {
        double[] tail = hall.tailSpectrum(direct.length);
        for (int bin = 1; bin < direct.length / 2; bin++) {
            double re = 1 + tail[2 * bin];
            double im = tail[2 * bin + 1];
            double x = direct[2 * bin];
            double y = direct[2 * bin + 1];
            direct[2 * bin] = x * re - y * im;
            direct[2 * bin + 1] = x * im + y * re;
        }
        return direct;
    }

    private void distort(double[] v, double[] i, double[] p, double[] x) {
        if (!electronics.distortion()) {
            return;
        }
        double source = electronics.sourceOhm();
        for (int k = 0; k < v.length; k++) {
            double share = CURRENT_SECOND_ORDER * x[k] + CURRENT_THIRD_ORDER * x[k] * x[k];
            double extra = i[k] * share;
            i[k] += extra;
            v[k] -= extra * source;
            p[k] += p[k] * share + AIR_SECOND_ORDER_PER_PA * p[k] * p[k];
        }
    }

    /** Bursts of 1 ms where the excursion turns at its outward end, when it is at least half of the sweep's largest. */
    private void rub(SweepPlan plan, Playback playback, double rubDb, double[] p, double[] x) {
        if (rubDb == Double.NEGATIVE_INFINITY) {
            return;
        }
        double largest = 0;
        for (double value : x) {
            largest = Math.max(largest, value);
        }
        double peak = sweepPeak(plan, playback, p) * Math.pow(10, rubDb / 20);
        SplittableRandom random = playback.random();
        int burst = (int) (0.001 * sampleRateHz);
        for (int k = 1; k < x.length - burst; k++) {
            if (x[k] > 0.5 * largest && x[k] >= x[k - 1] && x[k] > x[k + 1]) {
                double before = 0;
                double strength = peak * (0.7 + 0.3 * random.nextDouble());
                for (int m = 0; m < burst; m++) {
                    double white = 2 * random.nextDouble() - 1;
                    p[k + m] += strength * Math.exp(-6.0 * m / burst) * (white - before) / 1.5;
                    before = white;
                }
            }
        }
    }

    /** Largest sound between 1 and 15 kHz of the sweep. */
    private double sweepPeak(SweepPlan plan, Playback playback, double[] p) {
        double start = plan.startFrame(0) + playback.latencyS() * sampleRateHz;
        double peak = 0;
        for (int k = (int) start; k < Math.min(p.length, start + plan.signal().frames()); k++) {
            double frequencyHz = plan.signal().frequencyHzAt((k - start) / sampleRateHz);
            if (frequencyHz >= 1000 && frequencyHz <= 15_000) {
                peak = Math.max(peak, Math.abs(p[k]));
            }
        }
        return peak;
    }

    private static double[] delayed(double[] sound, int frames) {
        double[] later = new double[sound.length];
        System.arraycopy(sound, 0, later, frames, sound.length - frames);
        return later;
    }

    /** Lets go at random moments for 15 to 120 ms, with edges of half a millisecond. */
    private void mixFailures(Signals holding, Signals failing, Playback playback) {
        SplittableRandom random = playback.random();
        double edge = 1 / (0.0005 * sampleRateHz);
        double loose = 0;
        double target = 0;
        int left = nextHold(playback, random);
        for (int k = 0; k < holding.volts().length; k++) {
            if (left-- <= 0) {
                target = 1 - target;
                left = target == 1
                        ? (int) ((0.015 + 0.105 * random.nextDouble()) * sampleRateHz)
                        : nextHold(playback, random);
            }
            loose += Math.max(-edge, Math.min(edge, target - loose));
            if (loose > 0) {
                holding.volts()[k] += loose * (failing.volts()[k] - holding.volts()[k]);
                holding.amperes()[k] += loose * (failing.amperes()[k] - holding.amperes()[k]);
                holding.pascals()[k] += loose * (failing.pascals()[k] - holding.pascals()[k]);
            }
        }
    }

    private int nextHold(Playback playback, SplittableRandom random) {
        double meanS = 1 / Math.max(1e-3, playback.failuresPerS());
        return (int) (-Math.log(1 - random.nextDouble()) * meanS * sampleRateHz);
    }

    private float[][] convert(TestPointKind kind, Playback playback, SweepPlan plan, Signals signals) {
        SplittableRandom random = playback.random();
        Disturbance disturbance = playback.disturbance();
        double floor = electronics.converterNoiseFs();
        double[] v = scaled(signals.volts(), Electronics.VOLTS_FULL_SCALE);
        double[] i = scaled(signals.amperes(), Electronics.AMPERES_FULL_SCALE);
        double[] p = signals.pascals();
        if (floor > 0) {
            Noises.addPink(p, REFERENCE_PRESSURE_PA * Math.pow(10, playback.hallNoiseDb() / 20), sampleRateHz, random);
            Noises.addWhite(p, REFERENCE_PRESSURE_PA * Math.pow(10, MICROPHONE_NOISE_DB / 20), random);
            Noises.addHum(p, HUM_AT_MICROPHONE_PA, sampleRateHz, random);
        }
        if (disturbance == Disturbance.KNOCK) {
            double within = 0.3 + 0.4 * random.nextDouble();
            int frame = plan.startFrame(0) + (int) (within * plan.signal().frames());
            Noises.addKnock(p, frame, 4, sampleRateHz, random);
        }
        p = disturbance == Disturbance.MIC_UNPLUGGED ? new double[p.length] : scaled(p, Electronics.PASCALS_FULL_SCALE);
        if (disturbance == Disturbance.CURRENT_DEAD) {
            i = new double[i.length];
        } else {
            Noises.addHum(i, 1.5 * electronics.humFs(), sampleRateHz, random);
        }
        Noises.addHum(v, electronics.humFs(), sampleRateHz, random);
        Noises.addWhite(v, floor, random);
        Noises.addWhite(i, floor, random);
        Noises.addWhite(p, floor, random);
        if (disturbance == Disturbance.CHANNELS_SWAPPED) {
            double[] kept = v;
            v = i;
            i = kept;
        }
        double[][] all = kind == TestPointKind.LINE_INPUT ? new double[][] {v, p} : new double[][] {v, i, p};
        float[][] samples = new float[all.length][];
        int torn = plan.startFrame(0)
                + (int) (playback.latencyS() * sampleRateHz)
                + (int) ((0.2 + 0.6 * random.nextDouble()) * plan.signal().frames());
        for (int c = 0; c < all.length; c++) {
            samples[c] = quantised(all[c]);
            if (disturbance == Disturbance.DROPOUT) {
                System.arraycopy(
                        samples[c], torn + TORN_FRAMES, samples[c], torn, samples[c].length - torn - TORN_FRAMES);
            } else if (disturbance == Disturbance.SHORT) {
                samples[c] = java.util.Arrays.copyOf(samples[c], samples[c].length / 2);
            }
        }
        return samples;
    }

    private static double[] scaled(double[] signal, double unitsPerFullScale) {
        double factor = 1 / unitsPerFullScale;
        for (int k = 0; k < signal.length; k++) {
            signal[k] *= factor;
        }
        return signal;
    }

    /** 24-bit converter that stops at full scale. */
    private static float[] quantised(double[] fullScale) {
        float[] samples = new float[fullScale.length];
        double steps = 1 << 23;
        for (int k = 0; k < samples.length; k++) {
            double step = Math.max(-steps, Math.min(steps - 1, Math.rint(fullScale[k] * steps)));
            samples[k] = (float) (step / steps);
        }
        return samples;
    }

    /** Smallest length of the form m 2^k with small odd m that holds the frames: quick to transform. */
    static int transformLength(int frames) {
        int best = Integer.MAX_VALUE;
        for (int odd : new int[] {1, 3, 5, 9, 15}) {
            int length = odd;
            while (length < frames) {
                length *= 2;
            }
            best = Math.min(best, length);
        }
        return best;
    }
}
