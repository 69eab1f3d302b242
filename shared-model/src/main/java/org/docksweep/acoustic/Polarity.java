package org.docksweep.acoustic;

import org.docksweep.sweep.AcousticCurve;

/**
 * Whether a band sounds the same way round as a reference:
 * {@code c(tau) = Re sum H conj(Href) exp(j 2 pi f tau) / sum |H| |Href|}. The largest lobe of the right sign is held
 * against the largest of the wrong one; the delay is free within the play of the fixture, so that a cabinet a few
 * centimetres off its mark is not called reversed. The sign of the impulse is of no use: a healthy fourth-order two-way
 * cabinet has a negative one.
 *
 * @param lobes c at delays from -0.3 to 0.3 ms, in steps of 5 us; not to be changed
 * @param same largest c, at most 1: how alike the band is to the reference
 * @param reversed largest -c, at most 1: how alike it is to the reference turned over
 * @param delayS delay behind the reference at the better of the two, in seconds
 */
public record Polarity(double[] lobes, double same, double reversed, double delayS) {
    /** Play of the fixture: ten centimetres of sound. */
    private static final double MOST_DELAY_S = 3e-4;

    private static final double DELAY_STEP_S = 5e-6;
    private static final int LEAST_POINTS = 12;
    private static final double SURE_RATIO = 1.5;

    /**
     * Compares a band with a reference.
     *
     * @param curve curve with a print
     * @param reference curve with a print on the same grid
     * @param fromHz lower end of the band
     * @param toHz upper end of the band
     * @return the comparison; null when one has no print, the band holds too few points, or the grids differ
     */
    public static Polarity of(AcousticCurve curve, AcousticCurve reference, double fromHz, double toHz) {
        if (curve.print() == null || reference.print() == null) {
            return null;
        }
        double[] hz = curve.frequencyHz();
        double[] refHz = reference.frequencyHz();
        int offset = java.util.Arrays.binarySearch(refHz, hz[0]);
        int first = 0;
        while (first < hz.length && hz[first] < fromHz) {
            first++;
        }
        int last = first;
        while (last < hz.length && hz[last] <= toHz) {
            last++;
        }
        if (offset < 0 || last - first < LEAST_POINTS || last + offset > refHz.length) {
            return null;
        }
        return search(curve, reference, first, last, offset);
    }

    private static Polarity search(AcousticCurve curve, AcousticCurve reference, int first, int last, int offset) {
        double[] lobes = lobes(curve, reference, first, last, offset);
        double same = Double.NEGATIVE_INFINITY;
        double reversed = Double.NEGATIVE_INFINITY;
        double delayS = 0;
        for (int s = 0; s < lobes.length; s++) {
            if (Math.abs(lobes[s]) > Math.max(same, reversed)) {
                delayS = delayS(s);
            }
            same = Math.max(same, lobes[s]);
            reversed = Math.max(reversed, -lobes[s]);
        }
        return new Polarity(lobes, same, reversed, delayS);
    }

    /** Delay behind the reference that a value of {@link #lobes} belongs to, in seconds. */
    static double delayS(int step) {
        return step * DELAY_STEP_S - MOST_DELAY_S;
    }

    private static double[] lobes(AcousticCurve curve, AcousticCurve reference, int first, int last, int offset) {
        double[] hz = curve.frequencyHz();
        double[] level = curve.levelDb();
        double[] refLevel = reference.levelDb();
        double[] phase = curve.print().phaseRad();
        double[] refPhase = reference.print().phaseRad();
        double arrivalS = curve.print().arrivalS() - reference.print().arrivalS();
        int n = last - first;
        double[] re = new double[n];
        double[] im = new double[n];
        double[] stepRe = new double[n];
        double[] stepIm = new double[n];
        double weight = 0;
        for (int i = 0; i < n; i++) {
            double size = StrictMath.pow(10, (level[first + i] + refLevel[first + offset + i]) / 20);
            // Phases are told without their arrivals; the difference of the arrivals belongs to the band.
            double angle = phase[first + i] - refPhase[first + offset + i] - 2 * Math.PI * hz[first + i] * arrivalS;
            angle -= 2 * Math.PI * hz[first + i] * MOST_DELAY_S;
            re[i] = size * StrictMath.cos(angle);
            im[i] = size * StrictMath.sin(angle);
            stepRe[i] = StrictMath.cos(2 * Math.PI * hz[first + i] * DELAY_STEP_S);
            stepIm[i] = StrictMath.sin(2 * Math.PI * hz[first + i] * DELAY_STEP_S);
            weight += size;
        }
        double[] lobes = new double[(int) Math.rint(2 * MOST_DELAY_S / DELAY_STEP_S) + 1];
        for (int s = 0; s < lobes.length; s++) {
            double sum = 0;
            for (int i = 0; i < n; i++) {
                sum += re[i];
                double turned = re[i] * stepRe[i] - im[i] * stepIm[i];
                im[i] = im[i] * stepRe[i] + re[i] * stepIm[i];
                re[i] = turned;
            }
            lobes[s] = sum / weight;
        }
        return lobes;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Polarity that
                && java.util.Arrays.equals(lobes, that.lobes)
                && same == that.same
                && reversed == that.reversed
                && delayS == that.delayS;
    }

    @Override
    public int hashCode() {
        return java.util.Arrays.hashCode(lobes);
    }

    @Override
    public String toString() {
        return "Polarity[same " + same + ", reversed " + reversed + " at " + delayS + " s]";
    }

    /**
     * The better lobe over the other.
     *
     * @return ratio, at least 1
     */
    public double confidence() {
        double better = Math.max(same, reversed);
        double other = Math.max(0.02, Math.min(same, reversed));
        return Math.max(1, better / other);
    }

    /**
     * Whether the band sounds the wrong way round and the ratio allows saying so.
     *
     * @return true if so
     */
    public boolean surelyReversed() {
        return reversed > same && confidence() > SURE_RATIO;
    }
}
