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
    private static final double SOUND_TRAVEL_S = 0.0029;

    private final Electronics electronics;
    private final Hall hall;
    private final double sampleRateHz;
    private final Imperfections imperfections;
    private final Converter converter;
    private final Map<Integer, double[]> positions = new ConcurrentHashMap<>();
    private final Map<Integer, DoubleFFT_1D> transforms = new ConcurrentHashMap<>();
    private final DriveSpectra drives = new DriveSpectra();

    CaptureRenderer(Electronics electronics, Hall hall, double sampleRateHz) {
        this.electronics = electronics;
        this.hall = hall;
        this.sampleRateHz = sampleRateHz;
        this.imperfections = new Imperfections(electronics, sampleRateHz);
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

    /** Spectrum of the drive as it leaves the converter: louder or quieter by what went wrong, and late. */
    private double[] driveSpectrum(SweepPlan plan, Playback playback, int length) {
        double gain = switch (playback.disturbance()) {
            case CLIP -> 7;
            case QUIET -> 0.02;
            case SILENT -> 0;
            default -> 1;
        };
        double[] spectrum = drives.spectrum(plan, length, this::transform).clone();
        if (gain != 1) {
            for (int k = 0; k < spectrum.length; k++) {
                spectrum[k] *= gain;
            }
        }
        turn(spectrum, playback.latencyS() * sampleRateHz);
        return spectrum;
    }

    /** Delays a packed spectrum by so many frames, whole or not. */
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
        boolean moves = electronics.distortion() || load.rubDb() > Double.NEGATIVE_INFINITY;
        double[][] products = moves
                ? LogGrid.times(drive, at, volts, amperes, pascals, excursion)
                : LogGrid.times(drive, at, volts, amperes, pascals);
        double[] v = inverse(products[0]);
        double[] i = kind == TestPointKind.LINE_INPUT ? new double[v.length] : inverse(products[1]);
        double[] p = inverse(withTail(products[2]));
        if (moves) {
            double[] x = inverse(products[3]);
            imperfections.distort(v, i, p, x);
            imperfections.rub(plan, playback, load.rubDb(), p, x);
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
