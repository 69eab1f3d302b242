package org.docksweep.circuit;

/**
 * Minimises a sum of squares by Levenberg and Marquardt: the normal matrix's diagonal is raised by a share, the damping, that grows
 * while steps fail and falls while they succeed. Checked against the certified values of the NIST Statistical Reference Datasets for
 * nonlinear regression.
 */
final class LevenbergMarquardt {
    private static final double CHANGE = 10;

    private LevenbergMarquardt() {}

    /** A sum of squares. */
    interface Problem {
        /**
         * Its linear picture at a point.
         *
         * @param x parameters
         * @return normal equations there
         */
        WeightedNormal at(double[] x);

        /**
         * By how much a step is shortened.
         *
         * @param from where it begins
         * @param step step as solved
         * @return divisor: 1, or more where the slopes mean nothing that far away
         */
        double shortening(double[] from, double[] step);
    }

    /**
     * When to stop, and with which damping to begin.
     *
     * @param steps steps tried at most
     * @param converged a gain below this share of the cost ends the walk
     * @param damping first damping
     * @param leastDamping damping never falls below this
     */
    record Settings(int steps, double converged, double damping, double leastDamping) {}

    /**
     * Where the walk ended.
     *
     * @param x parameters
     * @param normal normal equations there
     */
    record Found(double[] x, WeightedNormal normal) {}

    static Found minimise(Problem problem, double[] start, Settings settings) {
        double[] x = start;
        WeightedNormal normal = problem.at(x);
        double damping = settings.damping();
        for (int tried = 0; tried < settings.steps(); tried++) {
            double[] step = normal.step(damping);
            double shortening = problem.shortening(x, step);
            double[] next = x.clone();
            for (int i = 0; i < next.length; i++) {
                next[i] += step[i] / shortening;
            }
            WeightedNormal trial = problem.at(next);
            if (trial.cost() < normal.cost()) {
                boolean converged = normal.cost() - trial.cost() < settings.converged() * normal.cost();
                x = next;
                normal = trial;
                damping = Math.max(settings.leastDamping(), damping / CHANGE);
                if (converged) {
                    break;
                }
            } else {
                damping *= CHANGE;
            }
        }
        return new Found(x, normal);
    }
}
