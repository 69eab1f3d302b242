package org.docksweep.demo.rig;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.docksweep.demo.physics.Load;
import org.docksweep.demo.physics.PlainLoad;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepPlans;
import org.docksweep.sweep.SweepSignal;
import org.hipparchus.complex.Complex;

/** A virtual rig whose converter noise is chosen and whose contact of every plug-in is told, calibrated like a real one. */
final class StudyRig {
    private static final int RATE_HZ = 48_000;
    private static final double HALL_NOISE_DB = 50;
    private static final Instant WHEN = Instant.parse("2026-03-14T01:30:00Z");
    private static final double LOAD_OHM = 10.001;
    private static final double LOAD_RELATIVE = 2e-4;
    private static final LevelMask MASK =
            new LevelMask(List.of(new LevelMask.Point(10, 1), new LevelMask.Point(20000, 1)));

    private final Electronics electronics;
    private final CaptureRenderer renderer;
    private final SweepAnalyser analyser = new SweepAnalyser();
    private final ImpedanceCurve[] standards;

    /** A load plugged in, and what the rig would hear of it without noise. */
    record Plugged(Load load, double contactOhm, SweepPlan plan, Playback playback, Signals signals) {}

    /**
     * Opens and calibrates.
     *
     * @param seed the rig's own errors
     */
    StudyRig(long seed) {
        electronics = Electronics.drawn(seed);
        renderer = new CaptureRenderer(electronics, new Hall(seed, RATE_HZ), RATE_HZ);
        standards = standards(seed);
    }

    private ImpedanceCurve[] standards(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        TestPoint point = new TestPoint(
                "IN",
                TestPointKind.TERMINALS,
                "1+ / 1-",
                List.of("STANDARD"),
                10,
                MASK,
                List.of(new NetworkElement.Resistor("R1", "in", "0", 10, 0.01)));
        ImpedanceCurve[] curves = new ImpedanceCurve[3];
        List<PlainLoad> loads = List.of(
                PracticeStandards.all().get(PracticeStandards.OPEN),
                PracticeStandards.all().get(PracticeStandards.SHORT),
                PracticeStandards.all().get(PracticeStandards.LOAD));
        for (int k = 0; k < curves.length; k++) {
            double contactOhm = k == 0 ? 0 : PracticeStandards.CONTACT_OHM;
            Plugged standard = plug(loads.get(k), point, contactOhm, random);
            curves[k] = sweep(standard, electronics.converterNoiseFs(), random).impedance();
        }
        return curves;
    }

    /**
     * Calibrates the rig with a standard of its own: its certificate is wrong by what the certificate owns up to.
     *
     * @param random draws the standard
     * @return the calibration
     */
    RigCalibration calibration(SplittableRandom random) {
        double certifiedOhm = LOAD_OHM * (1 + LOAD_RELATIVE * random.nextGaussian());
        return RigCalibration.of("study", WHEN, standards[0], standards[1], standards[2], certifiedOhm, LOAD_RELATIVE);
    }

    /**
     * Plugs a load in.
     *
     * @param load load
     * @param point test point with terminals, whose plan is played
     * @param contactOhm contact of this plug-in
     * @param random delay of the capture
     * @return the load with its signals
     */
    Plugged plug(Load load, TestPoint point, double contactOhm, SplittableRandom random) {
        SweepPlan plan = SweepPlans.dock(point, RATE_HZ);
        Playback playback = new Playback(
                load,
                null,
                0,
                contactOhm,
                0,
                0.02 + 0.1 * random.nextDouble(),
                HALL_NOISE_DB,
                0,
                Disturbance.NONE,
                random.split());
        Signals signals = renderer.signals(plan, TestPointKind.TERMINALS, playback);
        return new Plugged(
                load, contactOhm, plan, playback, new Signals(signals.volts(), signals.amperes(), new double[0]));
    }

    /**
     * Sweeps what is plugged in.
     *
     * @param plugged what is plugged in
     * @param noiseFs converter noise, rms, in full scale
     * @param random the noise
     * @return the analysis, not yet corrected
     */
    SweepAnalysis sweep(Plugged plugged, double noiseFs, SplittableRandom random) {
        Signals clean = plugged.signals();
        Signals signals = new Signals(clean.volts().clone(), clean.amperes().clone(), new double[0]);
        Playback p = plugged.playback();
        Playback playback = new Playback(
                p.load(),
                p.failing(),
                p.failuresPerS(),
                p.contactOhm(),
                p.placementShiftS(),
                p.latencyS(),
                0,
                0,
                p.disturbance(),
                random.split());
        float[][] samples = new Converter(noisy(noiseFs), RATE_HZ)
                .convert(TestPointKind.TERMINALS, playback, plugged.plan(), signals);
        CaptureHeader header = new CaptureHeader(
                WHEN,
                "study",
                TestPointKind.TERMINALS,
                CaptureRenderer.channels(TestPointKind.TERMINALS).subList(0, 2),
                plugged.plan(),
                20.0);
        // voltage and current only: nobody listens
        return analyser.analyse(new Capture(header, Arrays.copyOf(samples, 2)));
    }

    /**
     * The true impedance at the far plug, contact included, at the level the sweep has there: fundamental of the voltage over
     * fundamental of the current. A driver's current grows or falls with the square of its excursion
     * ({@link Imperfections}), so the impedance of a driver is not the same at every level; an instrument that drives it at one level is
     * right when it shows the impedance at that level.
     *
     * @param plugged what is plugged in
     * @param frequencyHz frequency
     * @return impedance in ohm
     */
    Complex truthOhm(Plugged plugged, double frequencyHz) {
        return farPlugOhm(plugged, frequencyHz, levelVpeak(plugged.plan().signal(), frequencyHz));
    }

    /** The same at a level so low that nothing distorts. */
    Complex smallSignalOhm(Plugged plugged, double frequencyHz) {
        return farPlugOhm(plugged, frequencyHz, 0);
    }

    private Complex farPlugOhm(Plugged plugged, double frequencyHz, double levelVpeak) {
        Load.Response seen = renderer.throughLead(plugged.load(), frequencyHz, plugged.contactOhm());
        Complex current = seen.current();
        Complex excursion = seen.excursion().multiply(levelVpeak);
        // i x^2 of two sines has i |x|^2 / 2 + conj(i) x^2 / 4 at their own frequency
        double size = excursion.norm();
        Complex extra = current.multiply(size * size / 2)
                .add(current.conjugate().multiply(excursion).multiply(excursion).multiply(0.25))
                .multiply(Imperfections.CURRENT_THIRD_ORDER);
        Complex total = current.add(extra);
        Complex seenFromRig =
                Complex.ONE.subtract(total.multiply(electronics.sourceOhm())).divide(total);
        Complex shunt = new Complex(0, 2 * Math.PI * frequencyHz * electronics.leadFarad());
        return seenFromRig
                .subtract(electronics.leadOhmAt(frequencyHz))
                .reciprocal()
                .subtract(shunt)
                .reciprocal()
                .subtract(PracticeStandards.CONTACT_OHM);
    }

    private double levelVpeak(SweepSignal signal, double frequencyHz) {
        double inS = signal.rateConstantS() * Math.log(frequencyHz / signal.startHz());
        double outS = signal.durationS() - inS;
        double fade = 1;
        if (inS < signal.fadeInS()) {
            fade = 0.5 - 0.5 * Math.cos(Math.PI * inS / signal.fadeInS());
        } else if (outS < signal.fadeOutS()) {
            fade = 0.5 - 0.5 * Math.cos(Math.PI * outS / signal.fadeOutS());
        }
        return Math.sqrt(2) * fade * signal.level().voltageVrmsAt(frequencyHz) * electronics.amplifierGain();
    }

    private Electronics noisy(double noiseFs) {
        Electronics e = electronics;
        return new Electronics(
                e.amplifierGain(),
                e.amplifierOhm(),
                e.senseOhm(),
                e.voltageGain(),
                e.currentGain(),
                e.microphoneGain(),
                e.voltageCornerHz(),
                e.currentCornerHz(),
                e.voltageRollOffHz(),
                e.currentRollOffHz(),
                e.leadOhm(),
                e.leadHenry(),
                e.leadFarad(),
                noiseFs,
                e.humFs(),
                e.distortion());
    }
}
