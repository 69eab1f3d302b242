package org.docksweep.circuit;

/**
 * What a fit leaves to be explained by something else, without fitting that: the signature of a fault (how it would change the
 * curve) is weighed against what is left of the data, with all healthy parameters free to answer (Rao's score test). One normal
 * matrix serves all faults of a point; signatures can be compared with one another as well.
 *
 * <p>With d the signature, {@code M = C^-1 - C^-1 J H^-1 J^T C^-1}, C the covariance of data and model error, J the slopes and H
 * the normal matrix with priors: strength {@code d^T M d} is the square of the number of standard deviations by which the fault
 * stands out; pull {@code d^T C^-1 r} over strength is its best amplitude.
 */
public final class ScoreTest {
    private final PointCircuit circuit;
    private final CurveData data;
    private final double[] x;
    private final int width;
    private final double[] rowsLog;
    private final double[] rowsPhase;
    private final double[] sharedLog;
    private final double[] sharedPhase;
    private final NormalEquations normal;
    private final double[] healthyLog;
    private final double[] healthyPhase;

    /**
     * Prepares the test.
     *
     * @param circuit healthy circuit
     * @param data measured curve
     * @param prior prior of its parameters
     * @param x most probable parameters
     */
    public ScoreTest(PointCircuit circuit, CurveData data, CircuitPrior prior, double[] x) {
        this.circuit = circuit;
        this.data = data;
        this.x = x.clone();
        int n = data.size();
        int p = x.length;
        this.width = NormalEquations.width(p);
        this.rowsLog = new double[n * width];
        this.rowsPhase = new double[n * width];
        this.healthyLog = new double[n];
        this.healthyPhase = new double[n];
        this.normal = new NormalEquations(p);
        normal.clear();
        double[] logarithm = new double[2];
        double[] slopeRe = new double[p];
        double[] slopeIm = new double[p];
        circuit.prepare(x);
        for (int i = 0; i < n; i++) {
            circuit.evaluate(data.frequencyHz()[i], logarithm, slopeRe, slopeIm);
            healthyLog[i] = logarithm[0];
            healthyPhase[i] = logarithm[1];
            System.arraycopy(slopeRe, 0, rowsLog, i * width, p);
            System.arraycopy(slopeIm, 0, rowsPhase, i * width, p);
        }
        this.sharedLog = shared(rowsLog);
        this.sharedPhase = shared(rowsPhase);
        normal.factor(1, 0, prior.mean(), prior.spread(), x);
    }

    /** Adds rows to the normal matrix, less what neighbours share. */
    private double[] shared(double[] rows) {
        double[] product = new double[data.discrepancy().bumps() * width];
        normal.add(rows, data.size(), data.discrepancy().weights());
        data.discrepancy().multiply(rows, width, product);
        normal.add(product, data.discrepancy().bumps(), null);
        return product;
    }

    /**
     * Signature of a fault.
     *
     * @param pull {@code d^T C^-1 r}
     * @param strength {@code d^T M d}
     * @param whitened the signature with everything shared taken out, for comparison with others
     */
    public record Signature(double pull, double strength, Whitened whitened) {

        /**
         * The same for another amplitude, if curves were straight.
         *
         * @param factor factor on the signature
         * @return scaled signature
         */
        public Signature times(double factor) {
            return new Signature(pull * factor, strength * factor * factor, whitened.times(factor));
        }

        /**
         * Correlation of two signatures: 1 when the curve cannot tell the faults apart at these severities.
         *
         * @param other signature from the same test
         * @return correlation, -1 to 1
         */
        public double correlation(Signature other) {
            return whitened.inner(other.whitened) / Math.sqrt(strength * other.strength);
        }
    }

    /**
     * Parts of a signature's inner products. Arrays are not copied; nobody changes them.
     *
     * @param data {@code N^-1/2 d}, ln|Z| then phase
     * @param shared G d, ln|Z| then phase
     * @param answered {@code L^-1 J^T C^-1 d} with {@code H = L L^T}
     */
    record Whitened(double[] data, double[] shared, double[] answered) {
        double inner(Whitened other) {
            return dot(data, other.data) - dot(shared, other.shared) - dot(answered, other.answered);
        }

        Whitened times(double factor) {
            return new Whitened(scaled(data, factor), scaled(shared, factor), scaled(answered, factor));
        }

        private static double[] scaled(double[] values, double factor) {
            return java.util.Arrays.stream(values).map(v -> v * factor).toArray();
        }

        private static double dot(double[] a, double[] b) {
            double sum = 0;
            for (int i = 0; i < a.length; i++) {
                sum += a[i] * b[i];
            }
            return sum;
        }
    }

    /**
     * Signature of a change.
     *
     * @param faulty circuit with the change; its first parameters are those of the healthy one
     * @param faultyX its parameters
     * @return how it would change the curve, weighed against what the healthy fit leaves over
     */
    public Signature signature(PointCircuit faulty, double[] faultyX) {
        int n = data.size();
        int p = x.length;
        int bumps = data.discrepancy().bumps();
        double[] log = new double[n];
        double[] phase = new double[n];
        double[] logarithm = new double[2];
        double[] whitened = new double[2 * n];
        double[] missLog = new double[n];
        double[] missPhase = new double[n];
        double pull = 0;
        double[] answer = new double[p];
        faulty.prepare(faultyX);
        for (int i = 0; i < n; i++) {
            faulty.evaluate(data.frequencyHz()[i], logarithm, null, null);
            double weight = data.discrepancy().weight(i);
            log[i] = logarithm[0] - healthyLog[i];
            phase[i] = Math.IEEEremainder(logarithm[1] - healthyPhase[i], 2 * Math.PI);
            missLog[i] = data.logOhm()[i] - healthyLog[i];
            missPhase[i] = Math.IEEEremainder(data.phaseRad()[i] - healthyPhase[i], 2 * Math.PI);
            whitened[i] = Math.sqrt(weight) * log[i];
            whitened[n + i] = Math.sqrt(weight) * phase[i];
            pull += weight * (log[i] * missLog[i] + phase[i] * missPhase[i]);
            for (int j = 0; j < p; j++) {
                answer[j] += weight * (log[i] * rowsLog[i * width + j] + phase[i] * rowsPhase[i * width + j]);
            }
        }
        double[] shared = new double[2 * bumps];
        double[] product = new double[bumps];
        double[] missProduct = new double[bumps];
        pull -= part(log, missLog, sharedLog, product, missProduct, answer);
        System.arraycopy(product, 0, shared, 0, bumps);
        pull -= part(phase, missPhase, sharedPhase, product, missProduct, answer);
        System.arraycopy(product, 0, shared, bumps, bumps);
        Whitened parts = new Whitened(whitened, shared, normal.forward(answer));
        return new Signature(pull, parts.inner(parts), parts);
    }

    private double part(
            double[] d, double[] miss, double[] sharedRows, double[] product, double[] missProduct, double[] answer) {
        data.discrepancy().multiply(d, 1, product);
        data.discrepancy().multiply(miss, 1, missProduct);
        double sum = 0;
        int p = x.length;
        for (int a = 0; a < product.length; a++) {
            sum += product[a] * missProduct[a];
            for (int j = 0; j < p; j++) {
                answer[j] -= product[a] * sharedRows[a * width + j];
            }
        }
        return sum;
    }

    /**
     * Signature of a change of one healthy parameter.
     *
     * @param index parameter
     * @param by change of the carried quantity
     * @return its signature
     */
    public Signature signatureOfChange(int index, double by) {
        double[] changed = x.clone();
        changed[index] += by;
        return signature(circuit, changed);
    }
}
