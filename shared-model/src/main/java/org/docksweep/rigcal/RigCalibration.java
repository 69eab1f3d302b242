package org.docksweep.rigcal;

import static org.docksweep.fleet.Require.notNegative;
import static org.docksweep.fleet.Require.positive;
import static org.docksweep.fleet.Require.text;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.Require;
import org.docksweep.sweep.ImpedanceCurve;
import org.hipparchus.complex.Complex;

/**
 * What turns a raw impedance of a rig into the impedance at the far plug: {@code Z = (scale Zm + offset) / (1 + leak Zm)} per
 * frequency, and how sure that is.
 *
 * @param rigId rig it belongs to
 * @param takenAt when it was taken; null for a nominal one, which was never taken
 * @param points terms in rising frequency, at least one
 */
public record RigCalibration(String rigId, Instant takenAt, List<Point> points) {

    /** Gains of interfaces differ by per cents (common practice, no source). */
    private static final double NOMINAL_RELATIVE = 0.02;

    /** A cable and its contacts have 0.05 to 0.5 ohm (common practice, no source); a nominal calibration knows none of it. */
    private static final double NOMINAL_OFFSET_OHM = 0.15;

    /** Two frequencies count as the same grid point when they differ by less than this share. */
    private static final double SAME = 1e-6;

    /** Beyond its ends a calibration is held, and trusted this much less (common practice, no source). */
    private static final double BEYOND_RELATIVE = 0.01;

    /**
     * The terms at a frequency.
     *
     * @param frequencyHz frequency in hertz, greater than 0
     * @param scaleRe real part of scale
     * @param scaleIm imaginary part of scale
     * @param offsetReOhm real part of offset, in ohm
     * @param offsetImOhm imaginary part of offset, in ohm
     * @param leakReS real part of leak, in siemens
     * @param leakImS imaginary part of leak, in siemens
     * @param relativeUncertainty standard uncertainty of the scale, relative, at least 0
     * @param offsetUncertaintyOhm standard uncertainty of the offset, real and imaginary part each, in ohm, at least 0
     */
    public record Point(
            double frequencyHz,
            double scaleRe,
            double scaleIm,
            double offsetReOhm,
            double offsetImOhm,
            double leakReS,
            double leakImS,
            double relativeUncertainty,
            double offsetUncertaintyOhm) {
        public Point {
            positive("calibration frequencyHz", frequencyHz);
            notNegative("calibration relativeUncertainty", relativeUncertainty);
            notNegative("calibration offsetUncertaintyOhm", offsetUncertaintyOhm);
            double sum = scaleRe + scaleIm + offsetReOhm + offsetImOhm + leakReS + leakImS;
            if (!Double.isFinite(sum) || scaleRe == 0 && scaleIm == 0) {
                throw new IllegalArgumentException("calibration at " + frequencyHz
                        + " Hz must have finite terms and a scale that is not 0; calibrate again");
            }
        }

        private Complex scale() {
            return new Complex(scaleRe, scaleIm);
        }

        private Complex offset() {
            return new Complex(offsetReOhm, offsetImOhm);
        }

        private Complex leak() {
            return new Complex(leakReS, leakImS);
        }
    }

    public RigCalibration {
        text("calibration rigId", rigId);
        points = Require.notEmpty("calibration points", points);
        for (int i = 1; i < points.size(); i++) {
            if (!(points.get(i).frequencyHz() > points.get(i - 1).frequencyHz())) {
                throw new IllegalArgumentException("calibration frequencies must rise: "
                        + points.get(i - 1).frequencyHz() + " Hz is followed by "
                        + points.get(i).frequencyHz() + " Hz");
            }
        }
    }

    /**
     * The calibration of a rig that was not calibrated: changes nothing, and says how unsure that is.
     *
     * @param rigId rig id
     * @return the nominal calibration: 2 % and 0.15 ohm
     */
    public static RigCalibration nominal(String rigId) {
        return new RigCalibration(
                rigId, null, List.of(new Point(1000, 1, 0, 0, 0, 0, 0, NOMINAL_RELATIVE, NOMINAL_OFFSET_OHM)));
    }

    /**
     * Makes a calibration from three measured standards at the far plug, cable laid as in use.
     *
     * @param rigId rig id
     * @param takenAt when
     * @param open curve with the plug open, or null when no current was seen: then it counts as infinite
     * @param shorted curve with the plug shorted
     * @param load curve with the standard
     * @param standardOhm resistance of the standard, greater than 0
     * @param standardRelativeUncertainty relative standard uncertainty of the standard, at least 0
     * @return the calibration
     * @throws IllegalArgumentException if the curves have different frequencies, or short and load do not differ
     */
    public static RigCalibration of(
            String rigId,
            Instant takenAt,
            ImpedanceCurve open,
            ImpedanceCurve shorted,
            ImpedanceCurve load,
            double standardOhm,
            double standardRelativeUncertainty) {
        if (takenAt == null) {
            throw new IllegalArgumentException("calibration: takenAt is missing");
        }
        positive("calibration standardOhm", standardOhm);
        notNegative("calibration standardRelativeUncertainty", standardRelativeUncertainty);
        requireSameGrid("short", shorted, load);
        if (open != null) {
            requireSameGrid("open", open, load);
        }
        List<Point> points = new ArrayList<>();
        double[] frequencyHz = load.frequencyHz();
        for (int i = 0; i < frequencyHz.length; i++) {
            points.add(point(frequencyHz[i], i, open, shorted, load, standardOhm, standardRelativeUncertainty));
        }
        return new RigCalibration(rigId, takenAt, points);
    }

    private static Point point(
            double frequencyHz,
            int i,
            ImpedanceCurve open,
            ImpedanceCurve shorted,
            ImpedanceCurve load,
            double standardOhm,
            double standardRelative) {
        Complex leak = open == null ? Complex.ZERO : at(open, i).reciprocal().negate();
        Complex zs = at(shorted, i);
        Complex zl = at(load, i);
        Complex span = zl.subtract(zs);
        if (!(span.norm() > 0.1 * standardOhm)) {
            throw new IllegalArgumentException("calibration at " + frequencyHz + " Hz: short (" + zs.norm()
                    + " ohm) and load (" + zl.norm() + " ohm) must differ by more than a tenth of the standard ("
                    + standardOhm + " ohm); plug the standards in again and repeat");
        }
        // Open/short/load divided through by the open: Z = K (Zm - Zs) / (1 - Zm / Zo).
        Complex scale = leak.multiply(zl).add(1).multiply(standardOhm).divide(span);
        Complex offset = scale.multiply(zs).negate();
        double loadU = load.standardUncertaintyOhm()[i] / span.norm();
        double relative = Math.hypot(standardRelative, Math.sqrt(2) * loadU);
        double offsetU = shorted.standardUncertaintyOhm()[i] * scale.norm();
        return new Point(
                frequencyHz,
                scale.getReal(),
                scale.getImaginary(),
                offset.getReal(),
                offset.getImaginary(),
                leak.getReal(),
                leak.getImaginary(),
                relative,
                offsetU);
    }

    /**
     * Whether nobody ever calibrated.
     *
     * @return true for a nominal calibration
     */
    public boolean isNominal() {
        return takenAt == null;
    }

    /**
     * The impedance at the far plug. Between two points of the calibration the nearer one on a logarithmic scale is
     * used; beyond its ends the end is held, with 1 % more uncertainty.
     *
     * @param raw raw impedance of this rig
     * @return corrected impedance; its uncertainty includes the calibration's own
     */
    public ImpedanceCurve correct(ImpedanceCurve raw) {
        int n = raw.size();
        double[] frequencyHz = raw.frequencyHz();
        double[] uncertainty = raw.standardUncertaintyOhm();
        double[] re = new double[n];
        double[] im = new double[n];
        for (int i = 0; i < n; i++) {
            Point point = nearest(frequencyHz[i]);
            Complex measured = at(raw, i);
            Complex divisor = point.leak().multiply(measured).add(1);
            Complex z = point.scale().multiply(measured).add(point.offset()).divide(divisor);
            double slope = point.scale()
                    .subtract(point.offset().multiply(point.leak()))
                    .divide(divisor.multiply(divisor))
                    .norm();
            re[i] = z.getReal();
            im[i] = z.getImaginary();
            double relative = Math.hypot(point.relativeUncertainty(), beyond(frequencyHz[i]) ? BEYOND_RELATIVE : 0);
            uncertainty[i] =
                    Math.hypot(slope * uncertainty[i], Math.hypot(relative * z.norm(), point.offsetUncertaintyOhm()));
        }
        return new ImpedanceCurve(frequencyHz, re, im, uncertainty);
    }

    private boolean beyond(double frequencyHz) {
        return !isNominal()
                && (frequencyHz < points.get(0).frequencyHz() * (1 - SAME)
                        || frequencyHz > points.get(points.size() - 1).frequencyHz() * (1 + SAME));
    }

    private Point nearest(double frequencyHz) {
        int low = 0;
        int high = points.size() - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (points.get(middle).frequencyHz() <= frequencyHz) {
                low = middle;
            } else {
                high = middle;
            }
        }
        boolean lower = frequencyHz * frequencyHz
                <= points.get(low).frequencyHz() * points.get(high).frequencyHz();
        return points.get(lower ? low : high);
    }

    private static void requireSameGrid(String name, ImpedanceCurve curve, ImpedanceCurve load) {
        if (!java.util.Arrays.equals(curve.frequencyHz(), load.frequencyHz())) {
            throw new IllegalArgumentException(
                    "calibration: the " + name + " curve (" + curve + ") must have the frequencies of the load curve ("
                            + load + "); sweep all standards with one plan");
        }
    }

    private static Complex at(ImpedanceCurve curve, int i) {
        return new Complex(curve.resistanceOhm()[i], curve.reactanceOhm()[i]);
    }
}
