package org.docksweep.circuit;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A {@link PointCircuit} with what it leaves out of a real loudspeaker, as far as measuring needs it.
 *
 * <ul>
 *   <li>Creep of the cones' suspensions: the spring follows {@code (j f / fs)^beta} (fractional viscoelasticity; after Knudsen
 *       and Jensen, "Low-frequency loudspeaker models that include suspension creep", JAES 41, 1993, whose logarithm is its first
 *       order; from memory). One beta for all cones of the point. At each frequency the motion then equals that of a plain
 *       spring with another fs and Qms, so the circuit itself is used.
 *   <li>Friction in the ports: Small's port loss Q_P beside the leakage loss Q_L the circuit has (Small, "Vented-Box Loudspeaker
 *       Systems" I, JAES 21, 1973; from memory). One Q_P for all boxes of the point. At each frequency such a box equals a
 *       frictionless one with another tuning and Q_L.
 *   <li>What the inductance law misses: a chain of resistors and inductors in parallel, in series with all,
 *       {@code sum c_k j f / (f_k + j f)}. It vanishes at DC.
 * </ul>
 *
 * <p>Parameters: those of the circuit, then beta, then ln Q_P, then the c_k in ohm.
 */
final class MeasuringModel {
    private final PointCircuit circuit;
    private final double[] cornersHz;
    private final int[] fs;
    private final int[] qms;
    private final int[] tuning;
    private final int[] leak;
    private final int circuitSize;

    MeasuringModel(PointCircuit circuit, double[] cornersHz) {
        this.circuit = circuit;
        this.cornersHz = cornersHz.clone();
        List<CircuitParameter> parameters = circuit.parameters();
        this.circuitSize = parameters.size();
        this.qms = IntStream.range(0, circuitSize)
                .filter(i -> parameters.get(i).id().endsWith(".Qms"))
                .toArray();
        this.tuning = IntStream.range(0, circuitSize)
                .filter(i -> parameters.get(i).id().endsWith(".tuning"))
                .toArray();
        this.leak = Arrays.stream(tuning)
                .map(i -> circuit.indexOf(parameters.get(i).id().replace(".tuning", ".QL")))
                .toArray();
        this.fs = Arrays.stream(qms)
                .map(i -> circuit.indexOf(parameters.get(i).id().replace(".Qms", ".fs")))
                .toArray();
    }

    int size() {
        return circuitSize + 2 + cornersHz.length;
    }

    int creepIndex() {
        return circuitSize;
    }

    int portIndex() {
        return circuitSize + 1;
    }

    int firstLink() {
        return circuitSize + 2;
    }

    PointCircuit circuit() {
        return circuit;
    }

    /** Impedance with its slopes by all parameters. */
    CircuitSlopes at(double frequencyHz, double[] theta) {
        double[] x = Arrays.copyOf(theta, circuitSize);
        Spring[] springs = new Spring[fs.length];
        for (int d = 0; d < fs.length; d++) {
            springs[d] = new Spring(frequencyHz, theta[fs[d]], theta[qms[d]], theta[circuitSize]);
            x[fs[d]] = springs[d].plainLogFs;
            x[qms[d]] = springs[d].plainLogQms;
        }
        Port[] ports = new Port[tuning.length];
        for (int b = 0; b < tuning.length; b++) {
            ports[b] = new Port(frequencyHz, theta[tuning[b]], theta[leak[b]], theta[portIndex()]);
            x[tuning[b]] = ports[b].plainLogTuning;
            x[leak[b]] = ports[b].plainLogLeakQ;
        }
        CircuitSlopes plain = CircuitSlopes.at(circuit, frequencyHz, x);
        double re = plain.resistanceOhm();
        double im = plain.reactanceOhm();
        double[] slopesRe = Arrays.copyOf(plain.resistanceSlopes(), theta.length);
        double[] slopesIm = Arrays.copyOf(plain.reactanceSlopes(), theta.length);
        for (int d = 0; d < fs.length; d++) {
            springs[d].chain(slopesRe, fs[d], qms[d], circuitSize);
            springs[d].chain(slopesIm, fs[d], qms[d], circuitSize);
        }
        for (int b = 0; b < tuning.length; b++) {
            ports[b].chain(slopesRe, tuning[b], leak[b], portIndex());
            ports[b].chain(slopesIm, tuning[b], leak[b], portIndex());
        }
        for (int k = 0; k < cornersHz.length; k++) {
            int at = firstLink() + k;
            double ratio = frequencyHz / cornersHz[k];
            double norm = 1 + ratio * ratio;
            slopesRe[at] = ratio * ratio / norm;
            slopesIm[at] = ratio / norm;
            re += theta[at] * slopesRe[at];
            im += theta[at] * slopesIm[at];
        }
        return new CircuitSlopes(re, im, slopesRe, slopesIm);
    }

    /**
     * The plain spring that does at one frequency what a creeping one does: with r = f / fs,
     * {@code 1/Q' = 1/Qms + r^(beta-1) sin(beta pi/2)} and {@code r' - 1/r' = r - r^(beta-1) cos(beta pi/2)}.
     */
    private static final class Spring {
        final double plainLogFs;
        final double plainLogQms;
        private final double fsByFs;
        private final double fsByBeta;
        private final double qmsByFs;
        private final double qmsByQms;
        private final double qmsByBeta;

        Spring(double frequencyHz, double logFs, double logQms, double beta) {
            double logRatio = Math.log(frequencyHz) - logFs;
            double ratio = Math.exp(logRatio);
            double power = Math.exp((beta - 1) * logRatio);
            double cos = Math.cos(beta * Math.PI / 2);
            double sin = Math.sin(beta * Math.PI / 2);
            double loss = Math.exp(-logQms) + power * sin;
            double detune = ratio - power * cos;
            double plainRatio = detune >= 0
                    ? (detune + Math.sqrt(detune * detune + 4)) / 2
                    : 2 / (Math.sqrt(detune * detune + 4) - detune);
            plainLogFs = Math.log(frequencyHz / plainRatio);
            plainLogQms = -Math.log(loss);
            double spread = plainRatio + 1 / plainRatio;
            fsByFs = (ratio - (beta - 1) * power * cos) / spread;
            fsByBeta = power * (logRatio * cos - Math.PI / 2 * sin) / spread;
            qmsByFs = (beta - 1) * power * sin / loss;
            qmsByQms = Math.exp(-logQms) / loss;
            qmsByBeta = -power * (logRatio * sin + Math.PI / 2 * cos) / loss;
        }

        void chain(double[] slopes, int fs, int qms, int beta) {
            double byFs = slopes[fs];
            double byQms = slopes[qms];
            slopes[fs] = byFs * fsByFs + byQms * qmsByFs;
            slopes[qms] = byQms * qmsByQms;
            slopes[beta] += byFs * fsByBeta + byQms * qmsByBeta;
        }
    }

    /**
     * The frictionless port that does at one frequency what one with friction does: with rho = fb / (f Q_P) and
     * m^2 = 1 + rho^2, {@code fb' = fb / m} and {@code 1/Q_L' = m/Q_L + (fb/f)^2 / (Q_P m)}.
     */
    private static final class Port {
        final double plainLogTuning;
        final double plainLogLeakQ;
        private final double tuningByTuning;
        private final double tuningByPort;
        private final double leakByTuning;
        private final double leakByLeak;
        private final double leakByPort;

        Port(double frequencyHz, double logTuning, double logLeakQ, double logPortQ) {
            double logRatio = logTuning - Math.log(frequencyHz);
            double square = Math.exp(2 * (logRatio - logPortQ));
            double share = square / (1 + square);
            double m = Math.sqrt(1 + square);
            double leakage = m * Math.exp(-logLeakQ);
            double friction = Math.exp(2 * logRatio - logPortQ) / m;
            double loss = leakage + friction;
            plainLogTuning = logTuning - Math.log(m);
            plainLogLeakQ = -Math.log(loss);
            tuningByTuning = 1 - share;
            tuningByPort = share;
            leakByTuning = -(leakage * share + friction * (2 - share)) / loss;
            leakByLeak = leakage / loss;
            leakByPort = (leakage * share + friction * (1 - share)) / loss;
        }

        void chain(double[] slopes, int tuning, int leak, int port) {
            double byTuning = slopes[tuning];
            double byLeak = slopes[leak];
            slopes[tuning] = byTuning * tuningByTuning + byLeak * leakByTuning;
            slopes[leak] = byLeak * leakByLeak;
            slopes[port] += byTuning * tuningByPort + byLeak * leakByPort;
        }
    }
}
