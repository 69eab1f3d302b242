package org.docksweep.demo.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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

    /** What a cabinet and the hall go on doing after a sweep. */
    private static final double SETTLING_S = 1.2;

    private static final double FADE_S = 0.15;
    /** Factor on the hall's answer where walls are near and bare. */
    private static final double REVERBERANT = 4;

    /** Up to seven megabytes each; of the sound and its echo, of probe and sweep. */
    private static final int TRANSFORMS_KEPT = 4;

    private static final double SOUND_TRAVEL_S = 0.0029;

    /** 0.3 m of way. */
    private static final double MOVED_S = 0.3 / 343;

    private static final double CAPSULE_CORNER_HZ = 2000;
    private static final double CAPSULE_LOSS = Math.pow(10, -3 / 20.0);

    private final Electronics electronics;
    private final Hall hall;
    private final double sampleRateHz;
    private final Imperfections imperfections;
    private final Rattles rattles;
    private final Converter converter;
    private final LastUsed<Integer, double[]> positions = new LastUsed<>(TRANSFORMS_KEPT);
    private final LastUsed<Integer, DoubleFFT_1D> transforms = new LastUsed<>(TRANSFORMS_KEPT);
    private final DriveSpectra drives = new DriveSpectra();

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
        if (kind != TestPointKind.BARE_DRIVER) {
            // The microphone stands at the dock, a metre from the cabinets.
            channels.add(new CaptureChannel(ChannelRole.MICROPHONE, Electronics.PASCALS_FULL_SCALE));
        }
        return List.copyOf(channels);
    }

    float[][] render(SweepPlan plan, TestPointKind kind, Playback playback) {
        return converter.convert(kind, playback, plan, signals(plan, kind, playback));
    }

    /** Signals of a capture before noise and converter. */
    Signals signals(SweepPlan plan, TestPointKind kind, Playback playback) {
        int frames = plan.totalFrames() + (int) Math.round(AFTER_PLAN_S * sampleRateHz);
        int length = transformLength(plan.signal().frames() + (int) (SETTLING_S * sampleRateHz));
        double[] drive = driveSpectrum(plan, playback, length);
        Signals signals = signals(plan, kind, playback, playback.load(), drive, frames);
        if (playback.failing() != null) {
            imperfections.mixFailures(
                    signals, signals(plan, kind, playback, playback.failing(), drive, frames), playback);
        }
        return signals;
    }

    /** Spectrum of one sweep as it leaves the converter: louder or quieter by what went wrong, late by part of a frame. */
    private double[] driveSpectrum(SweepPlan plan, Playback playback, int length) {
        double gain = switch (playback.disturbance()) {
            case CLIP -> 7;
            case QUIET -> 0.02;
            case SILENT -> 0;
            default -> 1;
        };
        double[] spectrum =
                drives.spectrum(plan.signal(), length, this::transform).clone();
        if (gain != 1) {
            for (int k = 0; k < spectrum.length; k++) {
                spectrum[k] *= gain;
            }
        }
        double late = playback.latencyS() * sampleRateHz;
        turn(spectrum, late - Math.floor(late));
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
                    .multiply(capsule(frequencyHz, playback.disturbance()))
                    .multiply(gain);
            excursion[i] = response.excursion().multiply(gain);
        }
        double[] at = positions.get(drive.length, n -> LogGrid.positions(n, sampleRateHz));
        boolean moves = electronics.distortion() || load.rubDb() > Double.NEGATIVE_INFINITY || load.rattle() != null;
        double[][] products = moves
                ? LogGrid.times(drive, at, volts, amperes, pascals, excursion)
                : LogGrid.times(drive, at, volts, amperes, pascals);
        double[] v = played(products[0], plan, playback, frames);
        double[] i =
                kind == TestPointKind.LINE_INPUT ? new double[frames] : played(products[1], plan, playback, frames);
        double[] p = played(inTheHall(products[2], playback.disturbance()), plan, playback, frames);
        if (moves) {
            double[] x = played(products[3], plan, playback, frames);
            imperfections.distort(v, i, p, x);
            double[] touching = rattles.sound(plan, playback, load, p, x);
            double[] echoing = Arrays.copyOf(touching, 2 * Integer.highestOneBit(touching.length - 1));
            transform(echoing.length).realForward(echoing);
            transform(echoing.length).realInverse(inTheHall(echoing, playback.disturbance()), true);
            for (int k = 0; k < p.length; k++) {
                p[k] += echoing[k];
            }
        }
        double travelS = SOUND_TRAVEL_S + playback.placementShiftS();
        if (playback.disturbance() == Disturbance.MIC_MOVED) {
            double share = SOUND_TRAVEL_S / (SOUND_TRAVEL_S + MOVED_S);
            for (int k = 0; k < p.length; k++) {
                p[k] *= share;
            }
            travelS += MOVED_S;
        }
        double[] heard = delayed(p, (int) Math.round(travelS * sampleRateHz));
        hall.addReflections(heard, playback.placementShiftS());
        return new Signals(v, i, heard);
    }

    /** Amplifier, sense resistor, lead with its capacitance, contacts, then the load; current is the sense resistor's. */
    Load.Response throughLead(Load load, double frequencyHz, double contactOhm) {
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
        return transforms.get(length, DoubleFFT_1D::new);
    }

    /**
     * From the answer to one sweep to the whole plan: what is linear may be laid over itself. Below the lowest frequency
     * nothing is rendered, which leaves a slow remainder over the whole transform; it is faded in before the sweep and out
     * after it, so that it begins and ends nowhere.
     */
    private double[] played(double[] spectrum, SweepPlan plan, Playback playback, int frames) {
        int length = spectrum.length;
        transform(length).realInverse(spectrum, true);
        int fade = (int) (FADE_S * sampleRateHz);
        for (int k = 0; k < fade; k++) {
            double share = 0.5 - 0.5 * Math.cos(Math.PI * (k + 0.5) / fade);
            // the last of the transform comes before its first
            spectrum[length - 1 - fade - k] *= share;
            spectrum[length - fade + k] *= share;
        }
        double[] whole = new double[frames];
        int late = (int) Math.floor(playback.latencyS() * sampleRateHz);
        for (int repeat = 0; repeat < plan.repeats(); repeat++) {
            int start = plan.startFrame(repeat) + late;
            for (int k = Math.max(-fade, -start); k < 0; k++) {
                whole[start + k] += spectrum[length + k];
            }
            int count = Math.min(frames - start, length - fade);
            for (int k = 0; k < count; k++) {
                whole[start + k] += spectrum[k];
            }
        }
        return whole;
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

    /** A capsule that has lost high frequencies: a shelf of first order, centred on its corner. */
    private static Complex capsule(double frequencyHz, Disturbance disturbance) {
        if (disturbance != Disturbance.MIC_CAPSULE) {
            return Complex.ONE;
        }
        Complex s = new Complex(0, frequencyHz / (CAPSULE_CORNER_HZ * Math.sqrt(CAPSULE_LOSS)));
        return s.multiply(CAPSULE_LOSS).add(1).divide(s.add(1));
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
