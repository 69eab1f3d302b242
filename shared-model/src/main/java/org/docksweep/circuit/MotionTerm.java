package org.docksweep.circuit;

/**
 * Motion of a cone seen from its coil: {@code y = (q + 1/q + 1/Qms) / (g Z0) + brake}, q = j f / fs, Z0 = Res / Qms; all three
 * follow the temperature of the body ({@link Warmth}). With shorted turns, share s, an eddy brake s / (Re (1-s)^2) is added and Z0
 * shrinks by (1-s)^2; with a weak magnet it shrinks by the square of the force factor.
 */
final class MotionTerm extends Term {
    private static final int FIRST_OWN = 4;

    private final double scale;
    private final CoilFault fault;
    private double resonanceOmega;
    private double impedanceOhm;
    private double freeRe;
    private double brake;
    private double share;

    /** Parameters: fs, Qms, Z0, climate, then, if turns are shorted, their share and Re, or, if it is weak, the magnet. */
    MotionTerm(int[] nodes, double[] weights, CoilFault fault, int... parameters) {
        super(nodes, weights, parameters);
        this.scale = fault.scale();
        this.fault = fault;
    }

    @Override
    void prepare(double[] x) {
        int[] p = parameters();
        double warmth = x[p[3]];
        resonanceOmega = 2 * Math.PI * StrictMath.exp(x[p[0]] + Warmth.LOG_RESONANCE * warmth);
        share = fault.shareOf(x);
        double left = 1 - share;
        impedanceOhm =
                scale * left * left * StrictMath.exp(x[p[2]] + Warmth.LOG_Z0 * warmth + 2 * fault.logMagnetOf(x));
        freeRe = StrictMath.exp(-x[p[1]] - Warmth.LOG_QMS * warmth) / impedanceOhm;
        brake = share > 0 ? share / (scale * left * left * StrictMath.exp(x[p[FIRST_OWN + 1]])) : 0;
        yRe = freeRe + brake;
        slopeRe[0] = 0;
        slopeRe[1] = -freeRe;
        slopeIm[1] = 0;
        slopeRe[2] = -freeRe;
        slopeRe[3] = -(Warmth.LOG_QMS + Warmth.LOG_Z0) * freeRe;
        if (share > 0) {
            slopeRe[FIRST_OWN] = 2 * share / left * freeRe + brake * (1 + share) / left;
            slopeRe[FIRST_OWN + 1] = -brake;
            slopeIm[FIRST_OWN + 1] = 0;
        } else if (fault.magnet() >= 0) {
            slopeRe[FIRST_OWN] = -2 * freeRe;
        }
    }

    @Override
    void evaluate(double omega, double logOmega) {
        double ratio = omega / resonanceOmega;
        yIm = (ratio - 1 / ratio) / impedanceOhm;
        slopeIm[0] = -(ratio + 1 / ratio) / impedanceOhm;
        slopeIm[2] = -yIm;
        slopeIm[3] = Warmth.LOG_RESONANCE * slopeIm[0] - Warmth.LOG_Z0 * yIm;
        if (share > 0) {
            slopeIm[FIRST_OWN] = 2 * share / (1 - share) * yIm;
        } else if (fault.magnet() >= 0) {
            slopeIm[FIRST_OWN] = -2 * yIm;
        }
    }
}
