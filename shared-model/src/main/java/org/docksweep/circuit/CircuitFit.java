package org.docksweep.circuit;

/**
 * Most probable parameters of a circuit given a measured curve and a prior: minimises
 * {@code r^T C^-1 r + sum ((x - mean) / spread)^2} by Levenberg-Marquardt, r = ln Z - ln Z_model and C the covariance of what noise
 * and model error may make of it ({@link Discrepancy}); first on data believed less so that a shifted resonance can walk to its
 * place.
 */
public final class CircuitFit {
    /** Gains smaller than this share of the cost end a fit. */
    private static final double CONVERGED = 1e-4;
    /** Costs below this count as this. */
    private static final double CONVERGED_FROM = 100;
    /** Data may be doubted by this factor at most. */
    private static final double MOST_DOUBT = 8;
    /** Reduced chi squared above which data are doubted while a fit is on its way. */
    private static final double DOUBTED_FROM = 2;

    private static final int TRIES = 5;

    /** How much work a fit may take. */
    public enum Effort {
        /** None: the evidence at the start. */
        NONE(0, 0),
        /** For telling hopeless hypotheses apart from others. */
        QUICK(5, 0),
        /** To convergence from a start that is already near. */
        NEAR(6, 6),
        /** To convergence from anywhere among healthy units. */
        FULL(16, 10);

        private final int doubtingSteps;
        private final int believingSteps;

        Effort(int doubtingSteps, int believingSteps) {
            this.doubtingSteps = doubtingSteps;
            this.believingSteps = believingSteps;
        }
    }

    private final PointCircuit circuit;
    private final CurveData data;
    private final double[] mean;
    private final double[] spread;
    private final double[] logarithm = new double[2];
    private final double[] slopeRe;
    private final double[] slopeIm;
    private final double[] rowsLog;
    private final double[] rowsPhase;
    private final double[] product;

    private CircuitFit(PointCircuit circuit, CurveData data, CircuitPrior prior) {
        int n = circuit.parameters().size();
        int width = NormalEquations.width(n);
        this.mean = prior.mean();
        this.spread = prior.spread();
        if (mean.length != n) {
            throw new IllegalArgumentException("prior has " + mean.length + " parameters, the circuit has " + n);
        }
        this.circuit = circuit;
        this.data = data;
        this.slopeRe = new double[n];
        this.slopeIm = new double[n];
        this.rowsLog = new double[data.size() * width];
        this.rowsPhase = new double[data.size() * width];
        this.product = new double[data.discrepancy().bumps() * width];
    }

    /**
     * A fit's outcome.
     *
     * @param x most probable parameter vector
     * @param dataChi2 weighted sum of squared residuals of the data
     * @param priorChi2 weighted sum of squared distances from the prior means
     * @param logEvidence logarithm of the evidence by Laplace's approximation, but for a constant shared by all fits
     *     of the same data: {@code -(dataChi2 + priorChi2)/2 - ln det(H)/2 - sum ln spread}
     * @param posteriorSpread standard deviations of the parameters after the measurement
     */
    public record Result(double[] x, double dataChi2, double priorChi2, double logEvidence, double[] posteriorSpread) {
        /**
         * What the evidence would about be had one parameter had another prior, by the quadratic shape of the minimum.
         *
         * @param prior prior of the fit
         * @param index the parameter
         * @param otherMean its other mean
         * @param otherSpread its other standard deviation
         * @return logarithm of the evidence under the other prior
         */
        public double logEvidenceWith(CircuitPrior prior, int index, double otherMean, double otherSpread) {
            double mean = prior.mean()[index];
            double spread = prior.spread()[index];
            double variance = posteriorSpread[index] * posteriorSpread[index];
            // Take the old prior of this parameter out of its posterior: what the data alone say.
            double precision = Math.max(1e-12, 1 / variance - 1 / (spread * spread));
            double centre = (x[index] / variance - mean / (spread * spread)) / precision;
            double wide = 1 / precision + spread * spread;
            double otherWide = 1 / precision + otherSpread * otherSpread;
            double before = -0.5 * (centre - mean) * (centre - mean) / wide - 0.5 * StrictMath.log(wide);
            double after =
                    -0.5 * (centre - otherMean) * (centre - otherMean) / otherWide - 0.5 * StrictMath.log(otherWide);
            return logEvidence + after - before;
        }

        /**
         * Sum of both parts.
         *
         * @return chi squared
         */
        public double chi2() {
            return dataChi2 + priorChi2;
        }
    }

    /**
     * Fits.
     *
     * @param circuit circuit
     * @param data measured curve
     * @param prior prior of all parameters of the circuit
     * @param start start vector, or null to start at the prior means
     * @return most probable parameters
     */
    public static Result fit(PointCircuit circuit, CurveData data, CircuitPrior prior, double[] start) {
        return fit(circuit, data, prior, start, Effort.FULL);
    }

    /**
     * Fits with limited work.
     *
     * @param circuit circuit
     * @param data measured curve
     * @param prior prior of all parameters of the circuit
     * @param start start vector, or null to start at the prior means
     * @param effort work allowed
     * @return most probable parameters found
     */
    public static Result fit(PointCircuit circuit, CurveData data, CircuitPrior prior, double[] start, Effort effort) {
        return new CircuitFit(circuit, data, prior).run(start, effort);
    }

    /**
     * What the data alone say of the parameters near a fit: half of the negative second slope of twice their logarithmic likelihood, slopes of
     * the curve taken as they are there (Fisher's information).
     *
     * @param circuit circuit
     * @param data measured curve
     * @param prior prior of all parameters of the circuit, which has no part in it
     * @param x fitted parameter vector
     * @return symmetric matrix, in the order of the parameters
     */
    public static double[][] information(PointCircuit circuit, CurveData data, CircuitPrior prior, double[] x) {
        NormalEquations normal = new NormalEquations(x.length);
        new CircuitFit(circuit, data, prior).build(x, normal);
        return normal.information();
    }

    /**
     * Chi squared that one linear step from the prior means would reach: cheap, and enough to see that a hypothesis cannot
     * explain the data at all.
     *
     * @param circuit circuit
     * @param data measured curve
     * @param prior prior of all parameters of the circuit
     * @param doubt factor on the standard deviations of the data's misses, greater than 0
     * @return predicted chi squared of data and prior together
     */
    public static double chi2AfterOneStep(PointCircuit circuit, CurveData data, CircuitPrior prior, double doubt) {
        return new OneStep(circuit, data, prior).chi2(1 / (doubt * doubt));
    }

    private Result run(double[] start, Effort effort) {
        Descent descent = new Descent(start == null ? mean.clone() : start.clone());
        descent.doubting(effort.doubtingSteps);
        descent.believing(effort.believingSteps);
        NormalEquations normal = descent.normal;
        normal.factor(1, 0, mean, spread, descent.x);
        double logEvidence = -0.5 * normal.cost(1) - 0.5 * normal.logDeterminant();
        for (double s : spread) {
            logEvidence -= StrictMath.log(s);
        }
        return new Result(descent.x, normal.dataChi2(), normal.priorChi2(), logEvidence, normal.standardDeviations());
    }

    /** A walk downhill. */
    private final class Descent {
        private double[] x;
        private NormalEquations normal;
        private NormalEquations trial;
        private double damping = 1e-3;

        Descent(double[] x) {
            this.x = x;
            this.normal = new NormalEquations(x.length);
            this.trial = new NormalEquations(x.length);
            build(x, normal);
        }

        /** Believes the data as far as the fit has come, so that a shifted resonance can walk to its place. */
        void doubting(int steps) {
            double belief = beliefFor(normal.dataChi2());
            for (int k = 0; k < steps && belief < 1; k++) {
                if (step(belief) == Outcome.STUCK) {
                    return;
                }
                belief = Math.max(belief, beliefFor(normal.dataChi2()));
            }
        }

        private double beliefFor(double chi2) {
            double reduced = chi2 / (2.0 * data.size());
            return 1 / Math.min(MOST_DOUBT * MOST_DOUBT, Math.max(1, reduced / DOUBTED_FROM));
        }

        /** Believes the data fully. */
        void believing(int steps) {
            for (int k = 0; k < steps; k++) {
                if (step(1) != Outcome.BETTER) {
                    return;
                }
            }
        }

        private Outcome step(double belief) {
            for (int tries = 0; tries < TRIES; tries++) {
                normal.factor(belief, damping, mean, spread, x);
                double[] step = normal.solve();
                double[] next = x.clone();
                for (int i = 0; i < next.length; i++) {
                    // A step of more than three spreads leaves the range in which the slopes mean anything.
                    next[i] += Math.max(-3 * spread[i], Math.min(3 * spread[i], step[i]));
                }
                build(next, trial);
                double cost = normal.cost(belief);
                double gained = cost - trial.cost(belief);
                if (gained > 0) {
                    NormalEquations kept = normal;
                    normal = trial;
                    trial = kept;
                    x = next;
                    damping = Math.max(1e-6, damping / 8);
                    return gained < CONVERGED * (CONVERGED_FROM + cost) ? Outcome.CONVERGED : Outcome.BETTER;
                }
                damping *= 10;
            }
            return Outcome.STUCK;
        }
    }

    private enum Outcome {
        BETTER,
        CONVERGED,
        STUCK
    }

    /** Fills the normal equations at x. */
    private void build(double[] x, NormalEquations normal) {
        normal.clear();
        circuit.prepare(x);
        int n = data.size();
        int width = NormalEquations.width(x.length);
        Discrepancy discrepancy = data.discrepancy();
        for (int i = 0; i < n; i++) {
            circuit.evaluate(data.frequencyHz()[i], logarithm, slopeRe, slopeIm);
            double missRe = data.logOhm()[i] - logarithm[0];
            double missIm = Math.IEEEremainder(data.phaseRad()[i] - logarithm[1], 2 * Math.PI);
            System.arraycopy(slopeRe, 0, rowsLog, i * width, x.length);
            System.arraycopy(slopeIm, 0, rowsPhase, i * width, x.length);
            rowsLog[i * width + x.length] = missRe;
            rowsPhase[i * width + x.length] = missIm;
        }
        add(discrepancy, rowsLog, width, normal);
        add(discrepancy, rowsPhase, width, normal);
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            double d = (x[i] - mean[i]) / spread[i];
            sum += d * d;
        }
        normal.setPriorChi2(sum);
    }

    /** Adds rows, less what neighbours share. */
    private void add(Discrepancy discrepancy, double[] rows, int width, NormalEquations normal) {
        normal.add(rows, data.size(), discrepancy.weights());
        discrepancy.multiply(rows, width, product);
        normal.add(product, discrepancy.bumps(), null);
    }

    /**
     * ln Z of the circuit at the data's frequencies.
     *
     * @param circuit circuit
     * @param frequencyHz frequencies
     * @param x parameter vector
     * @return two arrays: ln |Z| and phase in radian
     */
    public static double[][] predict(PointCircuit circuit, double[] frequencyHz, double[] x) {
        double[][] prediction = new double[2][frequencyHz.length];
        double[] logarithm = new double[2];
        circuit.prepare(x);
        for (int i = 0; i < frequencyHz.length; i++) {
            circuit.evaluate(frequencyHz[i], logarithm, null, null);
            prediction[0][i] = logarithm[0];
            prediction[1][i] = logarithm[1];
        }
        return prediction;
    }
}
