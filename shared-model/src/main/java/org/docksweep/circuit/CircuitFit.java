package org.docksweep.circuit;

import java.util.Arrays;

/**
 * Most probable parameters of a circuit given a measured curve and a prior: minimises
 * {@code r^T C^-1 r + sum ((x - mean) / spread)^2} by Levenberg-Marquardt, r = ln Z - ln Z_model and C the covariance of what noise
 * and model error may make of it ({@link Discrepancy}); first on data believed less so that a shifted resonance can walk to its
 * place.
 */
public final class CircuitFit {
    private static final double CONVERGED = 1e-4;

    /** How much work a fit may take. */
    public enum Effort {
        /** For telling hopeless hypotheses apart from others. */
        QUICK(5, 5, 1.5),
        /** To convergence from a start that is already near. */
        NEAR(8, 2, 1),
        /** To convergence from anywhere among healthy units. */
        FULL(8, 6, 2, 1);

        private final int iterationsPerStage;
        private final double[] stages;

        Effort(int iterationsPerStage, double... stages) {
            this.iterationsPerStage = iterationsPerStage;
            this.stages = stages;
        }
    }

    private final PointCircuit circuit;
    private final double[] logarithm = new double[2];
    private final double[] slopeRe;
    private final double[] slopeIm;
    private double[] rowsLog = new double[0];
    private double[] rowsPhase = new double[0];
    private double[] product = new double[0];

    private CircuitFit(PointCircuit circuit) {
        this.circuit = circuit;
        int n = circuit.parameters().size();
        this.slopeRe = new double[n];
        this.slopeIm = new double[n];
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
        if (prior.mean().length != circuit.parameters().size()) {
            throw new IllegalArgumentException("prior has " + prior.mean().length + " parameters, the circuit has "
                    + circuit.parameters().size());
        }
        return new CircuitFit(circuit).run(data, prior, start, effort);
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
        CircuitFit fit = new CircuitFit(circuit);
        double[] mean = prior.mean();
        Normal normal = new Normal(mean.length);
        double chi2 = fit.build(data, doubt, mean, prior.spread(), mean, normal);
        normal.factor(0);
        return chi2 - normal.gain();
    }

    private Result run(CurveData data, CircuitPrior prior, double[] start, Effort effort) {
        double[] mean = prior.mean();
        double[] spread = prior.spread();
        double[] x = start == null ? mean.clone() : start.clone();
        Normal normal = new Normal(x.length);
        for (double stage : effort.stages) {
            x = descend(data, stage, mean, spread, x, normal, effort.iterationsPerStage);
        }
        double dataChi2 = build(data, 1, mean, spread, x, normal);
        double priorChi2 = priorChi2(mean, spread, x);
        normal.factor(0);
        double logEvidence = -0.5 * (dataChi2 + priorChi2) - 0.5 * normal.logDeterminant();
        for (double s : spread) {
            logEvidence -= StrictMath.log(s);
        }
        return new Result(x, dataChi2, priorChi2, logEvidence, normal.standardDeviations());
    }

    private double[] descend(
            CurveData data,
            double doubt,
            double[] mean,
            double[] spread,
            double[] from,
            Normal normal,
            int iterations) {
        double[] x = from;
        double cost = build(data, doubt, mean, spread, x, normal) + priorChi2(mean, spread, x);
        double damping = 1e-3;
        for (int iteration = 0; iteration < iterations; iteration++) {
            normal.factor(damping);
            double[] step = normal.solve();
            double[] next = x.clone();
            for (int i = 0; i < next.length; i++) {
                // A step of more than three spreads leaves the range in which the slopes mean anything.
                next[i] += Math.max(-3 * spread[i], Math.min(3 * spread[i], step[i]));
            }
            Normal trial = new Normal(x.length);
            double nextCost = build(data, doubt, mean, spread, next, trial) + priorChi2(mean, spread, next);
            if (nextCost < cost) {
                boolean converged = cost - nextCost < CONVERGED * (1 + cost);
                x = next;
                cost = nextCost;
                normal.takeFrom(trial);
                damping = Math.max(1e-6, damping / 5);
                if (converged) {
                    break;
                }
            } else {
                damping *= 8;
                if (damping > 1e4) {
                    break;
                }
            }
        }
        return x;
    }

    private static double priorChi2(double[] mean, double[] spread, double[] x) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            double d = (x[i] - mean[i]) / spread[i];
            sum += d * d;
        }
        return sum;
    }

    /** Fills the normal equations at x and returns the data's chi squared. */
    private double build(CurveData data, double doubt, double[] mean, double[] spread, double[] x, Normal normal) {
        normal.clear();
        circuit.prepare(x);
        int n = data.size();
        int width = x.length + 1;
        double belief = 1 / (doubt * doubt);
        if (rowsLog.length < n * width) {
            rowsLog = new double[n * width];
            rowsPhase = new double[n * width];
        }
        Discrepancy discrepancy = data.discrepancy();
        double chi2 = 0;
        for (int i = 0; i < n; i++) {
            circuit.evaluate(data.frequencyHz()[i], logarithm, slopeRe, slopeIm);
            double weight = belief * discrepancy.weight(i);
            double missRe = data.logOhm()[i] - logarithm[0];
            double missIm = Math.IEEEremainder(data.phaseRad()[i] - logarithm[1], 2 * Math.PI);
            chi2 += weight * (missRe * missRe + missIm * missIm);
            normal.add(slopeRe, missRe, weight);
            normal.add(slopeIm, missIm, weight);
            System.arraycopy(slopeRe, 0, rowsLog, i * width, x.length);
            System.arraycopy(slopeIm, 0, rowsPhase, i * width, x.length);
            rowsLog[i * width + x.length] = missRe;
            rowsPhase[i * width + x.length] = missIm;
        }
        chi2 -= belief * (shared(discrepancy, rowsLog, width, belief, normal)
                        + shared(discrepancy, rowsPhase, width, belief, normal));
        for (int i = 0; i < x.length; i++) {
            double weight = 1 / (spread[i] * spread[i]);
            normal.addDiagonal(i, weight, weight * (mean[i] - x[i]));
        }
        return chi2;
    }

    /** Takes out of the normal equations what neighbours share, and returns the same of the misses. */
    private double shared(Discrepancy discrepancy, double[] rows, int width, double belief, Normal normal) {
        int bumps = discrepancy.bumps();
        if (product.length < bumps * width) {
            product = new double[bumps * width];
        }
        discrepancy.multiply(rows, width, product);
        double sum = 0;
        for (int a = 0; a < bumps; a++) {
            System.arraycopy(product, a * width, slopeRe, 0, width - 1);
            double miss = product[a * width + width - 1];
            normal.add(slopeRe, miss, -belief);
            sum += miss * miss;
        }
        return sum;
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

    /** Normal equations {@code A step = g}, symmetric and positive definite thanks to the prior. */
    private static final class Normal {
        private final int n;
        private double[] a;
        private double[] g;
        private final double[] lower;

        Normal(int n) {
            this.n = n;
            this.a = new double[n * n];
            this.g = new double[n];
            this.lower = new double[n * n];
        }

        void clear() {
            Arrays.fill(a, 0);
            Arrays.fill(g, 0);
        }

        void takeFrom(Normal other) {
            a = other.a;
            g = other.g;
        }

        void add(double[] slope, double miss, double weight) {
            for (int i = 0; i < n; i++) {
                double si = slope[i] * weight;
                if (si == 0) {
                    continue;
                }
                g[i] += si * miss;
                int row = i * n;
                for (int j = 0; j <= i; j++) {
                    a[row + j] += si * slope[j];
                }
            }
        }

        void addDiagonal(int i, double weight, double gradient) {
            a[i * n + i] += weight;
            g[i] += gradient;
        }

        /** Cholesky factor of A with its diagonal raised by a share. */
        void factor(double damping) {
            for (int i = 0; i < n; i++) {
                for (int j = 0; j <= i; j++) {
                    double sum = a[i * n + j];
                    if (i == j) {
                        sum *= 1 + damping;
                    }
                    for (int k = 0; k < j; k++) {
                        sum -= lower[i * n + k] * lower[j * n + k];
                    }
                    lower[i * n + j] = i == j ? Math.sqrt(Math.max(1e-300, sum)) : sum / lower[j * n + j];
                }
            }
        }

        double[] solve() {
            return back(forward(g));
        }

        /** g^T A^-1 g: by how much the full step lowers chi squared if all were linear. */
        double gain() {
            double sum = 0;
            for (double v : forward(g)) {
                sum += v * v;
            }
            return sum;
        }

        private double[] forward(double[] right) {
            double[] y = right.clone();
            for (int i = 0; i < n; i++) {
                for (int k = 0; k < i; k++) {
                    y[i] -= lower[i * n + k] * y[k];
                }
                y[i] /= lower[i * n + i];
            }
            return y;
        }

        private double[] back(double[] y) {
            for (int i = n - 1; i >= 0; i--) {
                for (int k = i + 1; k < n; k++) {
                    y[i] -= lower[k * n + i] * y[k];
                }
                y[i] /= lower[i * n + i];
            }
            return y;
        }

        double logDeterminant() {
            double sum = 0;
            for (int i = 0; i < n; i++) {
                sum += 2 * StrictMath.log(lower[i * n + i]);
            }
            return sum;
        }

        double[] standardDeviations() {
            double[] deviations = new double[n];
            for (int i = 0; i < n; i++) {
                double[] unit = new double[n];
                unit[i] = 1;
                double[] y = forward(unit);
                double sum = 0;
                for (double v : y) {
                    sum += v * v;
                }
                deviations[i] = Math.sqrt(sum);
            }
            return deviations;
        }
    }
}
