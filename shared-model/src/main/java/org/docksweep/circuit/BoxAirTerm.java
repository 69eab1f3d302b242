package org.docksweep.circuit;

/**
 * Box air seen from the coils of the cones that share it: {@code y = S / (j w) qb^2 / (qb^2 + qb / QL + 1)} with
 * qb = j f / fb (Small 1973); closed: {@code y = S / (j w (1 + 1 / (j (f / f0) QL)))}. S carries the stiffness.
 */
final class BoxAirTerm extends Term {
    private final boolean vented;
    private final double closedLeakHz;
    private double scale;
    private double leak;
    private double tuningOmega;

    /** Parameters: S, QL, and for a vented box fb. */
    BoxAirTerm(int[] nodes, double[] weights, boolean vented, double closedLeakHz, int... parameters) {
        super(nodes, weights, parameters);
        this.vented = vented;
        this.closedLeakHz = closedLeakHz;
    }

    @Override
    void prepare(double[] x) {
        int[] p = parameters();
        scale = StrictMath.exp(x[p[0]]);
        leak = StrictMath.exp(-x[p[1]]);
        tuningOmega = 2 * Math.PI * (vented ? StrictMath.exp(x[p[2]]) : closedLeakHz);
    }

    @Override
    void evaluate(double omega, double logOmega) {
        double stiffness = scale / omega;
        double ratio = omega / tuningOmega;
        // factor = top / bottom
        double topRe = vented ? -ratio * ratio : 0;
        double topIm = vented ? 0 : ratio;
        double bottomRe = vented ? 1 - ratio * ratio : leak;
        double bottomIm = vented ? ratio * leak : ratio;
        double norm = bottomRe * bottomRe + bottomIm * bottomIm;
        // y = -j stiffness factor
        yRe = stiffness * (topIm * bottomRe - topRe * bottomIm) / norm;
        yIm = -stiffness * (topRe * bottomRe + topIm * bottomIm) / norm;
        slopeRe[0] = yRe;
        slopeIm[0] = yIm;
        // d ln y / d ln QL = +(leak part of the bottom) / bottom
        double leakRe = vented ? 0 : leak;
        double leakIm = vented ? ratio * leak : 0;
        setSlope(1, (leakRe * bottomRe + leakIm * bottomIm) / norm, (leakIm * bottomRe - leakRe * bottomIm) / norm);
        if (vented) {
            // d ln y / d ln fb = -(2 - (2 qb^2 + qb / QL) / bottom)
            double partRe = -2 * ratio * ratio;
            double partIm = ratio * leak;
            setSlope(
                    2,
                    (partRe * bottomRe + partIm * bottomIm) / norm - 2,
                    (partIm * bottomRe - partRe * bottomIm) / norm);
        }
    }

    private void setSlope(int index, double logRe, double logIm) {
        slopeRe[index] = yRe * logRe - yIm * logIm;
        slopeIm[index] = yRe * logIm + yIm * logRe;
    }
}
