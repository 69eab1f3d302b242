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
 *   <li>The low end of the coils' inductance: {@code K (j w)^n} would grow without bound over {@code j w L} towards DC, a real
 *       coil does not, so an inductor lies across it that takes over below f_b: {@code K (j w)^n / (1 + (j f / f_b)^(n-1))}. One f_b
 *       for all coils of the point, only for cones without a network (a horn driver is swept far above it). At each frequency this equals another K and n.
 *   <li>What the inductance law still misses: a chain of resistors and inductors in parallel, in series with all,
 *       {@code sum c_k j f / (f_k + j f)}. It vanishes at DC.
 * </ul>
 *
 * <p>Parameters: those of the circuit, then beta, then ln Q_P, then ln f_b, then the c_k in ohm.
 */
final class MeasuringModel {
    private final PointCircuit circuit;
    private final double[] cornersHz;
    private final int[] fs;
    private final int[] qms;
    private final int[] tuning;
    private final int[] leak;
    private final int[] coil;
    private final int[] exponent;
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
        this.coil = IntStream.range(0, circuitSize)
                .filter(i -> cornersHz.length > 0
                        && qms.length > 0
                        && parameters.get(i).id().endsWith(".K"))
                .toArray();
        this.exponent = Arrays.stream(coil)
                .map(i -> circuit.indexOf(parameters.get(i).id().replace(".K", ".n")))
                .toArray();
        this.fs = Arrays.stream(qms)
                .map(i -> circuit.indexOf(parameters.get(i).id().replace(".Qms", ".fs")))
                .toArray();
    }

    int size() {
        return circuitSize + 3 + cornersHz.length;
    }

    int creepIndex() {
        return circuitSize;
    }

    int portIndex() {
        return circuitSize + 1;
    }

    int bypassIndex() {
        return circuitSize + 2;
    }

    int firstLink() {
        return circuitSize + 3;
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
        Coil[] coils = new Coil[coil.length];
        for (int c = 0; c < coil.length; c++) {
            coils[c] = new Coil(frequencyHz, theta[coil[c]], theta[exponent[c]], theta[bypassIndex()]);
            x[coil[c]] = coils[c].plainLogK;
            x[exponent[c]] = StrictMath.log(coils[c].plainExponent);
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
        for (int c = 0; c < coil.length; c++) {
            coils[c].chain(slopesRe, coil[c], exponent[c], bypassIndex());
            coils[c].chain(slopesIm, coil[c], exponent[c], bypassIndex());
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
            double logRatio = StrictMath.log(frequencyHz) - logFs;
            double ratio = StrictMath.exp(logRatio);
            double power = StrictMath.exp((beta - 1) * logRatio);
            double cos = StrictMath.cos(beta * Math.PI / 2);
            double sin = StrictMath.sin(beta * Math.PI / 2);
            double loss = StrictMath.exp(-logQms) + power * sin;
            double detune = ratio - power * cos;
            double plainRatio = detune >= 0
                    ? (detune + Math.sqrt(detune * detune + 4)) / 2
                    : 2 / (Math.sqrt(detune * detune + 4) - detune);
            plainLogFs = StrictMath.log(frequencyHz / plainRatio);
            plainLogQms = -StrictMath.log(loss);
            double spread = plainRatio + 1 / plainRatio;
            fsByFs = (ratio - (beta - 1) * power * cos) / spread;
            fsByBeta = power * (logRatio * cos - Math.PI / 2 * sin) / spread;
            qmsByFs = (beta - 1) * power * sin / loss;
            qmsByQms = StrictMath.exp(-logQms) / loss;
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
            double logRatio = logTuning - StrictMath.log(frequencyHz);
            double square = StrictMath.exp(2 * (logRatio - logPortQ));
            double share = square / (1 + square);
            double m = Math.sqrt(1 + square);
            double leakage = m * StrictMath.exp(-logLeakQ);
            double friction = StrictMath.exp(2 * logRatio - logPortQ) / m;
            double loss = leakage + friction;
            plainLogTuning = logTuning - StrictMath.log(m);
            plainLogLeakQ = -StrictMath.log(loss);
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

    /** The K and n that do at one frequency what a bypassed inductance does. */
    private static final class Coil {
        final double plainLogK;
        final double plainExponent;
        private final double[] logKBy = new double[3];
        private final double[] exponentBy = new double[3];

        Coil(double frequencyHz, double logK, double logN, double logBypass) {
            double n = StrictMath.exp(logN);
            double logOmega = StrictMath.log(2 * Math.PI * frequencyHz);
            double logRatio = StrictMath.log(frequencyHz) - logBypass;
            double size = StrictMath.exp((n - 1) * logRatio);
            double uRe = size * StrictMath.cos((n - 1) * Math.PI / 2);
            double uIm = size * StrictMath.sin((n - 1) * Math.PI / 2);
            double norm = (1 + uRe) * (1 + uRe) + uIm * uIm;
            // u / (1 + u)
            double shareRe = (uRe * (1 + uRe) + uIm * uIm) / norm;
            double shareIm = uIm / norm;
            double logSize = logK + n * logOmega - 0.5 * StrictMath.log(norm);
            double phase = n * Math.PI / 2 - StrictMath.atan2(uIm, 1 + uRe);
            plainExponent = 2 / Math.PI * phase;
            plainLogK = logSize - plainExponent * logOmega;
            slopes(0, 1, 0, logOmega);
            slopes(
                    1,
                    n * (logOmega - shareRe * logRatio + shareIm * Math.PI / 2),
                    n * (Math.PI / 2 - shareIm * logRatio - shareRe * Math.PI / 2),
                    logOmega);
            slopes(2, (n - 1) * shareRe, (n - 1) * shareIm, logOmega);
        }

        private void slopes(int index, double byLogSize, double byPhase, double logOmega) {
            double byExponent = 2 / Math.PI * byPhase;
            logKBy[index] = byLogSize - byExponent * logOmega;
            exponentBy[index] = byExponent / plainExponent;
        }

        void chain(double[] slopes, int coil, int exponent, int bypass) {
            double byK = slopes[coil];
            double byN = slopes[exponent];
            slopes[coil] = byK * logKBy[0] + byN * exponentBy[0];
            slopes[exponent] = byK * logKBy[1] + byN * exponentBy[1];
            slopes[bypass] += byK * logKBy[2] + byN * exponentBy[2];
        }
    }
}
