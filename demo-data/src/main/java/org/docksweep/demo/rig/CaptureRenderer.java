package org.docksweep.demo.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.docksweep.demo.physics.Load;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.CaptureChannel;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.SweepPlan;
import org.hipparchus.complex.Complex;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * Renders the samples of a capture: the linear part by one long transform of the drive, then what is not linear and what
 * changes while it plays ({@link Imperfections}), then noise and converter ({@link Converter}).
 */
final class CaptureRenderer {
    /** What is captured beyond the plan, so that latency cuts nothing off. */
    static final double AFTER_PLAN_S = 0.30;

    private static final double SETTLING_S = 0.6;
    /** Factor on the hall's answer where walls are near and bare. */
    private static final double REVERBERANT = 4;

    private static final double SOUND_TRAVEL_S = 0.0029;

    private final Electronics electronics;
    private final Hall hall;
    private final double sampleRateHz;
    private final Imperfections imperfections;
    private final Rattles rattles;
    private final Converter converter;
    private final Map<Integer, double[]> positions = new ConcurrentHashMap<>();
    private final Map<Integer, DoubleFFT_1D> transforms = new ConcurrentHashMap<>();

    CaptureRenderer(Electronics electronics, Hall hall, double sampleRateHz) {
        this.electronics = electronics;
        this.hall = hall;
        this.sampleRateHz = sampleRateHz;
        this.imperfections = new Imperfections(electronics, sampleRateHz);
        this.rattles = new Rattles(sampleRateHz);
        this.converter = new Converter(electronics, sampleRateHz);
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

    float[][] render(SweepPlan plan, TestPointKind kind, Playback playback) {
        int frames = plan.totalFrames() + (int) Math.round(AFTER_PLAN_S * sampleRateHz);
        int length = transformLength(frames + (int) (SETTLING_S * sampleRateHz));
        double[] drive = driveSpectrum(plan, playback, length);
        Signals signals = signals(plan, kind, playback, playback.load(), drive, frames);
        if (playback.failing() != null) {
            imperfections.mixFailures(
                    signals, signals(plan, kind, playback, playback.failing(), drive, frames), playback);
        }
        return converter.convert(kind, playback, plan, signals);
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
        transform(length).realForward(spectrum);
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
        double[] p = inverse(inTheHall(LogGrid.times(drive, at, pascals), playback.disturbance()));
        boolean moves = electronics.distortion() || load.rubDb() > Double.NEGATIVE_INFINITY || load.rattle() != null;
        if (moves) {
            double[] x = inverse(LogGrid.times(drive, at, excursion));
            imperfections.distort(v, i, p, x);
            double[] touching = rattles.sound(plan, playback, load, p, x);
            transform(touching.length).realForward(touching);
            inverse(inTheHall(touching, playback.disturbance()));
            for (int k = 0; k < p.length; k++) {
                p[k] += touching[k];
            }
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

    /** Tables of a transform cost more than the transform; one playback at a time uses them. */
    private DoubleFFT_1D transform(int length) {
        return transforms.computeIfAbsent(length, DoubleFFT_1D::new);
    }

    private double[] inverse(double[] spectrum) {
        transform(spectrum.length).realInverse(spectrum, true);
        return spectrum;
    }

    /** The direct sound, duller and weaker from a cabinet that faces away, and the hall's answer to all of it. */
    private double[] inTheHall(double[] direct, Disturbance disturbance) {
        double[] tail = hall.tailSpectrum(direct.length);
        double louder = disturbance == Disturbance.REVERBERANT ? REVERBERANT : 1;
        double binHz = sampleRateHz / direct.length;
        for (int bin = 1; bin < direct.length / 2; bin++) {
            double facing = disturbance == Disturbance.FACING_AWAY ? behind(bin * binHz) : 1;
            double re = facing + louder * tail[2 * bin];
            double im = louder * tail[2 * bin + 1];
            double x = direct[2 * bin];
            double y = direct[2 * bin + 1];
            direct[2 * bin] = x * re - y * im;
            direct[2 * bin + 1] = x * im + y * re;
        }
        return direct;
    }

    /** Sound behind a cabinet re that in front: all at low frequencies, a tenth at high ones (assumed, no source). */
    private static double behind(double frequencyHz) {
        return Math.max(0.1, 1 / Math.sqrt(1 + Math.pow(frequencyHz / 250, 2)));
    }

    private static double[] delayed(double[] sound, int frames) {
        double[] later = new double[sound.length];
        System.arraycopy(sound, 0, later, frames, sound.length - frames);
        return later;
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
