package org.docksweep.circuit;

/**
 * Motion of a cone seen from its coil: {@code y = (q + q^(beta-1) + 1/Qms - sin(beta pi/2)) / (g Z0) + brake}, q = j f / fs,
 * Z0 = Res / Qms. beta is the creep of the suspension (fractional viscoelasticity; after Knudsen and Jensen, JAES 41, 1993, whose
 * logarithm is its first order; from memory), Qms holds all losses at fs. fs, Qms and Z0 follow the temperature of the body ({@link Warmth}). With shorted turns, share s, an eddy brake s / (Re (1-s)^2) is added and Z0
 * shrinks by (1-s)^2; with a weak magnet it shrinks by the square of the force factor.
 */
final class MotionTerm extends Term {
    private static final int FIRST_OWN = 5;

    private final double scale;
    private final CoilFault fault;
    private double resonanceOmega;
    private double logResonanceOmega;
    private double creep;
    private double sine;
    private double cosine;
    private double impedanceOhm;
    private double freeRe;
    private double brake;
    private double share;

    /** Parameters: fs, Qms, Z0, climate, creep, then, if turns are shorted, their share and Re, or, if it is weak, the magnet. */
    MotionTerm(int[] nodes, double[] weights, CoilFault fault, int... parameters) {
        super(nodes, weights, parameters);
        this.scale = fault.scale();
        this.fault = fault;
    }

    @Override
    void prepare(double[] x) {
        int[] p = parameters();
        double warmth = x[p[3]];
        logResonanceOmega = StrictMath.log(2 * Math.PI) + x[p[0]] + Warmth.LOG_RESONANCE * warmth;
        resonanceOmega = StrictMath.exp(logResonanceOmega);
        creep = x[p[4]];
        sine = StrictMath.sin(creep * Math.PI / 2);
        cosine = StrictMath.cos(creep * Math.PI / 2);
        share = fault.shareOf(x);
        double left = 1 - share;
        impedanceOhm =
                scale * left * left * StrictMath.exp(x[p[2]] + Warmth.LOG_Z0 * warmth + 2 * fault.logMagnetOf(x));
        freeRe = StrictMath.exp(-x[p[1]] - Warmth.LOG_QMS * warmth) / impedanceOhm;
        brake = share > 0 ? share / (scale * left * left * StrictMath.exp(x[p[FIRST_OWN + 1]])) : 0;
        slopeRe[1] = -freeRe;
        slopeIm[1] = 0;
        if (share > 0) {
            slopeIm[FIRST_OWN + 1] = 0;
            slopeRe[FIRST_OWN + 1] = -brake;
        }
    }

    @Override
    void evaluate(double omega, double logOmega) {
        double ratio = omega / resonanceOmega;
        double logRatio = logOmega - logResonanceOmega;
        double power = creep == 0 ? 1 / ratio : StrictMath.exp((creep - 1) * logRatio);
        double springRe = power * sine;
        double springIm = -power * cosine;
        double motionRe = freeRe + (springRe - sine) / impedanceOhm;
        double motionIm = (ratio + springIm) / impedanceOhm;
        yRe = motionRe + brake;
        yIm = motionIm;
        slopeRe[0] = (1 - creep) * springRe / impedanceOhm;
        slopeIm[0] = (-ratio + (1 - creep) * springIm) / impedanceOhm;
        slopeRe[2] = -motionRe;
        slopeIm[2] = -motionIm;
        slopeRe[3] = Warmth.LOG_RESONANCE * slopeRe[0] + Warmth.LOG_QMS * slopeRe[1] - Warmth.LOG_Z0 * motionRe;
        slopeIm[3] = Warmth.LOG_RESONANCE * slopeIm[0] - Warmth.LOG_Z0 * motionIm;
        slopeRe[4] = (logRatio * springRe - Math.PI / 2 * (springIm + cosine)) / impedanceOhm;
        slopeIm[4] = (logRatio * springIm + Math.PI / 2 * springRe) / impedanceOhm;
        if (share > 0) {
            double shrink = 2 * share / (1 - share);
            slopeRe[FIRST_OWN] = shrink * motionRe + brake * (1 + share) / (1 - share);
            slopeIm[FIRST_OWN] = shrink * motionIm;
        } else if (fault.magnet() >= 0) {
            slopeRe[FIRST_OWN] = -2 * motionRe;
            slopeIm[FIRST_OWN] = -2 * motionIm;
        }
    }
}
