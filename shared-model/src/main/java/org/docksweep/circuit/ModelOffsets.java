package org.docksweep.circuit;

/**
 * What a circuit model is known to miss, against frequency: mean of measured over fitted among known-good units, and how
 * units stray from it. The strays are smooth over frequency but for a grain ({@link Discrepancy}).
 *
 * @param frequencyHz rising frequencies; may be empty when nothing was taught
 * @param logOhm mean of ln|Z measured| - ln|Z fitted|
 * @param phaseRad mean of the phase difference
 * @param sigma standard deviation of the smooth strays of both around their means
 * @param untaughtSigma standard deviation of the smooth strays assumed where nothing was taught
 * @param grain standard deviation of what differs from point to point and is not the measurement's noise, greater than 0
 * @param rigSigma what the rig strays by between the sweeps that are compared, relative; smooth over frequency throughout, while a
 *     model that strays does so over less than a bump's width as well
 */
public record ModelOffsets(
        double[] frequencyHz,
        double[] logOhm,
        double[] phaseRad,
        double[] sigma,
        double untaughtSigma,
        double grain,
        double rigSigma) {

    /**
     * No knowledge: the model is trusted to a given relative error.
     *
     * @param sigma relative error of magnitude, and error of phase in radian, smooth over frequency
     * @param grain the same, from point to point
     * @return offsets of zero
     */
    public static ModelOffsets none(double sigma, double grain) {
        return new ModelOffsets(new double[0], new double[0], new double[0], new double[0], sigma, grain, 0);
    }

    /**
     * The same on a rig that strays besides.
     *
     * @param share relative standard deviation of the rig beyond what is held already, smooth over frequency
     * @return wider offsets
     */
    public ModelOffsets widenedBy(double share) {
        return new ModelOffsets(
                frequencyHz, logOhm, phaseRad, sigma, untaughtSigma, grain, StrictMath.hypot(rigSigma, share));
    }

    /**
     * Standard deviation of the model's smooth strays.
     *
     * @param hz frequencies
     * @return one per frequency
     */
    public double[] sigmaAt(double[] hz) {
        return java.util.Arrays.stream(hz).map(this::sigmaAt).toArray();
    }

    double logOhmAt(double hz) {
        return at(hz, logOhm, 0);
    }

    double phaseRadAt(double hz) {
        return at(hz, phaseRad, 0);
    }

    double sigmaAt(double hz) {
        return at(hz, sigma, untaughtSigma);
    }

    /** Value on the grid by interpolation over frequency; the end values hold outside a little, then the default. */
    private double at(double hz, double[] values, double otherwise) {
        int n = frequencyHz.length;
        if (n == 0 || hz < frequencyHz[0] * 0.97 || hz > frequencyHz[n - 1] * 1.03) {
            return otherwise;
        }
        int found = java.util.Arrays.binarySearch(frequencyHz, hz);
        if (found >= 0) {
            return values[found];
        }
        int above = -found - 1;
        if (above == 0) {
            return values[0];
        }
        if (above == n) {
            return values[n - 1];
        }
        double share = (hz - frequencyHz[above - 1]) / (frequencyHz[above] - frequencyHz[above - 1]);
        return values[above - 1] + share * (values[above] - values[above - 1]);
    }
}
