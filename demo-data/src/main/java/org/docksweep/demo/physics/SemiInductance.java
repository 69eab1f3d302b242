package org.docksweep.demo.physics;

import org.hipparchus.complex.Complex;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * Semi-inductance of a voice coil in iron: {@code j w Leb + (j w Le || Ke sqrt(j w) || Rss)} (Thorborg and Futtrup,
 * JAES 2011, formula from memory). It follows {@code K (j w)^n} over the audio band only roughly, which is the point: the
 * gate's own inductance law must not be exactly true.
 *
 * @param outerInductanceH Leb in henry
 * @param ironInductanceH Le in henry
 * @param semiInductance Ke in ohm s^0.5 (semi-henry)
 * @param shuntResistanceOhm Rss in ohm
 */
record SemiInductance(double outerInductanceH, double ironInductanceH, double semiInductance, double shuntResistanceOhm)
        implements BlockedInductance {

    private static final double FIT_FROM_HZ = 100;
    private static final double FIT_TO_HZ = 18_000;
    private static final int FIT_POINTS = 24;

    @Override
    public Complex ohmAt(double omegaRadPerS) {
        double root = Math.sqrt(omegaRadPerS / 2);
        Complex iron = new Complex(0, omegaRadPerS * ironInductanceH).reciprocal();
        Complex eddy = new Complex(semiInductance * root, semiInductance * root).reciprocal();
        Complex parallel = iron.add(eddy).add(1 / shuntResistanceOhm).reciprocal();
        return parallel.add(new Complex(0, omegaRadPerS * outerInductanceH));
    }

    /**
     * The semi-inductance nearest to a lossy inductance from 100 Hz to 18 kHz (least squares of the relative complex
     * deviation).
     *
     * @param target the lossy inductance, K greater than 0
     * @return the match
     */
    static SemiInductance near(LossyInductance target) {
        double atOneKilohertz = target.ohmAt(2 * Math.PI * 1000).norm() / (2 * Math.PI * 1000);
        double[] start = {
            Math.log(0.15 * atOneKilohertz), Math.log(1.6 * atOneKilohertz), Math.log(120 * atOneKilohertz)
        };
        double[] best = new SimplexOptimizer(1e-9, 1e-9)
                .optimize(
                        new MaxEval(4000),
                        new ObjectiveFunction(p -> misfit(of(p), target)),
                        GoalType.MINIMIZE,
                        new InitialGuess(start),
                        new NelderMeadSimplex(3, 0.3))
                .getPoint();
        return of(best);
    }

    private static SemiInductance of(double[] logs) {
        double semi = Math.exp(logs[2]);
        return new SemiInductance(Math.exp(logs[0]), Math.exp(logs[1]), semi, 4000 * semi);
    }

    private static double misfit(SemiInductance model, LossyInductance target) {
        double sum = 0;
        for (int i = 0; i < FIT_POINTS; i++) {
            double omega = 2 * Math.PI * FIT_FROM_HZ * Math.pow(FIT_TO_HZ / FIT_FROM_HZ, i / (FIT_POINTS - 1.0));
            Complex wanted = target.ohmAt(omega);
            double relative = model.ohmAt(omega).subtract(wanted).norm() / wanted.norm();
            sum += relative * relative;
        }
        return sum;
    }
}
