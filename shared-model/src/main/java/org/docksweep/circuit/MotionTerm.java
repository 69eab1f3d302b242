package org.docksweep.circuit;

/**
 * Motion of a cone seen from its coil: {@code y = (q + 1/q + 1/Qms) / (g Z0) + brake}, q = j f / fs, Z0 = Res / Qms. With
 * shorted turns, share s, an eddy brake s / (Re (1-s)^2) is added and Z0 shrinks by (1-s)^2.
 */
final class MotionTerm extends Term {
    private final double scale;
    private final CoilFault fault;
    private double resonanceOmega;
    private double impedanceOhm;
    private double freeRe;
    private double brake;
    private double share;

    /** Parameters: fs, Qms, Z0, then, if turns are shorted, their share and Re. */
    MotionTerm(int[] nodes, double[] weights, CoilFault fault, int... parameters) {
        super(nodes, weights, parameters);
        this.scale = fault.scale();
        this.fault = fault;
    }

    @Override
    void prepare(double[] x) {
        int[] p = parameters();
        resonanceOmega = 2 * Math.PI * StrictMath.exp(x[p[0]]);
        share = fault.shareOf(x);
        double left = 1 - share;
        impedanceOhm = scale * left * left * StrictMath.exp(x[p[2]]);
        freeRe = StrictMath.exp(-x[p[1]]) / impedanceOhm;
        brake = share > 0 ? share / (scale * left * left * StrictMath.exp(x[p[4]])) : 0;
        yRe = freeRe + brake;
        slopeRe[0] = 0;
        slopeRe[1] = -freeRe;
        slopeIm[1] = 0;
        slopeRe[2] = -freeRe;
        if (share > 0) {
            slopeRe[3] = 2 * share / left * freeRe + brake * (1 + share) / left;
            slopeRe[4] = -brake;
            slopeIm[4] = 0;
        }
    }

    @Override
    void evaluate(double omega, double logOmega) {
        double ratio = omega / resonanceOmega;
        yIm = (ratio - 1 / ratio) / impedanceOhm;
        slopeIm[0] = -(ratio + 1 / ratio) / impedanceOhm;
        slopeIm[2] = -yIm;
        if (share > 0) {
            slopeIm[3] = 2 * share / (1 - share) * yIm;
        }
    }
}
