package org.docksweep.circuit;

/**
 * Box air seen from the coils of the cones that share it: {@code y = S / (j w) qb (qb + p) / ((qb + 1 / QL) (qb + p) + 1)} with
 * qb = j f / fb and p = 1 / QP of the port's friction (Small 1973); closed: {@code y = S / (j w (1 + 1 / (j (f / f0) QL)))}. S carries the stiffness, seen through
 * the force factor, and so follows the magnet's temperature. A driver whose force factor a fault has changed to b times the
 * healthy one sees the air through 1 / b.
 */
final class BoxAirTerm extends Term {
    private final boolean vented;
    private final double closedLeakHz;
    private final double[] healthyWeights;
    private final double[] faultyPart;
    private final CoilFault fault;
    private final double[] weightSlopes;
    private double scale;
    private double leak;
    private double friction;
    private double tuningOmega;

    /**
     * Makes the term.
     *
     * @param ends all cones that share the air
     * @param faultyPart weights of the driver whose force factor the fault changes, 0 for all others
     * @param fault that fault
     * @param vented whether a port works
     * @param closedLeakHz frequency at which QL of a closed box holds
     * @param parameters S, QL, climate, and for a vented box fb and p
     */
    BoxAirTerm(
            Ends ends, double[] faultyPart, CoilFault fault, boolean vented, double closedLeakHz, int... parameters) {
        super(ends.nodes(), ends.weights().clone(), parameters);
        this.healthyWeights = ends.weights();
        this.faultyPart = faultyPart;
        this.fault = fault;
        this.weightSlopes = new double[faultyPart.length];
        this.vented = vented;
        this.closedLeakHz = closedLeakHz;
    }

    @Override
    int weightParameter() {
        return Math.max(fault.turnShare(), fault.magnet());
    }

    @Override
    double[] weightSlopes() {
        return weightSlopes;
    }

    private void weigh(double[] x) {
        if (weightParameter() < 0) {
            return;
        }
        double share = fault.shareOf(x);
        double force = (1 - share) * StrictMath.exp(fault.logMagnetOf(x));
        // d(1/b): by ln share s / (1-s) / b, by ln magnet -1 / b
        double slope = (fault.turnShare() >= 0 ? share / (1 - share) : -1) / force;
        for (int i = 0; i < weightSlopes.length; i++) {
            weights()[i] = healthyWeights[i] + faultyPart[i] * (1 / force - 1);
            weightSlopes[i] = faultyPart[i] * slope;
        }
    }

    @Override
    void prepare(double[] x) {
        int[] p = parameters();
        weigh(x);
        scale = StrictMath.exp(x[p[0]] + Warmth.LOG_AIR * x[p[2]]);
        leak = StrictMath.exp(-x[p[1]]);
        friction = vented ? x[p[4]] : 0;
        tuningOmega = 2 * Math.PI * (vented ? StrictMath.exp(x[p[3]]) : closedLeakHz);
    }

    @Override
    void evaluate(double omega, double logOmega) {
        double stiffness = scale / omega;
        double ratio = omega / tuningOmega;
        // factor = top / bottom
        double topRe = vented ? -ratio * ratio : 0;
        double topIm = vented ? ratio * friction : ratio;
        double bottomRe = vented ? 1 - ratio * ratio + leak * friction : leak;
        double bottomIm = vented ? ratio * (leak + friction) : ratio;
        double norm = bottomRe * bottomRe + bottomIm * bottomIm;
        // y = -j stiffness factor
        yRe = stiffness * (topIm * bottomRe - topRe * bottomIm) / norm;
        yIm = -stiffness * (topRe * bottomRe + topIm * bottomIm) / norm;
        slopeRe[0] = yRe;
        slopeIm[0] = yIm;
        slopeRe[2] = Warmth.LOG_AIR * yRe;
        slopeIm[2] = Warmth.LOG_AIR * yIm;
        // d ln y / d ln QL = +(leak part of the bottom) / bottom
        double leakRe = vented ? leak * friction : leak;
        double leakIm = vented ? ratio * leak : 0;
        setSlope(1, (leakRe * bottomRe + leakIm * bottomIm) / norm, (leakIm * bottomRe - leakRe * bottomIm) / norm);
        if (vented) {
            double portNorm = ratio * ratio + friction * friction;
            // d ln y / d ln fb = -1 - qb / (qb + p) + qb (2 qb + p + 1/QL) / bottom
            double partRe = -2 * ratio * ratio;
            double partIm = ratio * (leak + friction);
            setSlope(
                    3,
                    (partRe * bottomRe + partIm * bottomIm) / norm - 1 - ratio * ratio / portNorm,
                    (partIm * bottomRe - partRe * bottomIm) / norm - ratio * friction / portNorm);
            // d ln y / d p = 1 / (qb + p) - (qb + 1/QL) / bottom
            setSlope(
                    4,
                    friction / portNorm - (leak * bottomRe + ratio * bottomIm) / norm,
                    -ratio / portNorm - (ratio * bottomRe - leak * bottomIm) / norm);
        }
    }

    private void setSlope(int index, double logRe, double logIm) {
        slopeRe[index] = yRe * logRe - yIm * logIm;
        slopeIm[index] = yRe * logIm + yIm * logRe;
    }
}
