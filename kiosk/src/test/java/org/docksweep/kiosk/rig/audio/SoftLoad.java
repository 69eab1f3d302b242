package org.docksweep.kiosk.rig.audio;

import java.util.Arrays;
import org.hipparchus.complex.Complex;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * Loads stepped in time by the trapezoidal rule, {@code x' = A x + B u}, with an amplifier of 0.2 ohm and a sense resistor
 * of 0.1 ohm in series. The rule turns the load at s into the load at the warped {@code s = j 2 fs tan(pi f / fs)}, which
 * is why the truth is asked there: then both agree exactly.
 */
enum SoftLoad {
    /** 4.7 ohm in series with 15 ohm beside 22 uF. */
    RC {
        @Override
        double[][] system() {
            double series = SOURCE_OHM + 4.7;
            double c = 22e-6;
            return new double[][] {{-(1 / series + 1 / 15.0) / c}, {1 / series / c}, {-1 / series}, {1 / series}};
        }

        @Override
        Complex at(Complex s) {
            return new Complex(4.7).add(s.multiply(22e-6).add(1 / 15.0).reciprocal());
        }
    },
    /** A driver: 6.2 ohm, 0.45 mH, and 38 ohm beside 250 uF beside the inductance that resonates with it at 55 Hz. */
    DRIVER {
        private static final double COIL_H = 0.45e-3;
        private static final double MASS_F = 250e-6;
        private static final double COMPLIANCE_H = 1 / (Math.pow(2 * Math.PI * 55, 2) * MASS_F);

        @Override
        double[][] system() {
            double series = SOURCE_OHM + 6.2;
            return new double[][] {
                {-series / COIL_H, -1 / COIL_H, 0, 1 / MASS_F, -1 / (38 * MASS_F), -1 / MASS_F, 0, 1 / COMPLIANCE_H, 0},
                {1 / COIL_H, 0, 0},
                {1, 0, 0},
                {0}
            };
        }

        @Override
        Complex at(Complex s) {
            Complex motion = s.multiply(MASS_F)
                    .add(1 / 38.0)
                    .add(s.multiply(COMPLIANCE_H).reciprocal())
                    .reciprocal();
            return s.multiply(COIL_H).add(6.2).add(motion);
        }
    },
    /** Nothing at the end of the lead: a megohm leaks. */
    OPEN {
        @Override
        double[][] system() {
            return resistor(1e6);
        }

        @Override
        Complex at(Complex s) {
            return new Complex(1e6);
        }
    },
    /** A short at the end of a thin lead. */
    SHORT {
        @Override
        double[][] system() {
            return resistor(LEAD_OHM);
        }

        @Override
        Complex at(Complex s) {
            return new Complex(LEAD_OHM);
        }
    },
    /** 10 ohm at the end of the same lead. */
    TEN {
        @Override
        double[][] system() {
            return resistor(LEAD_OHM + 10);
        }

        @Override
        Complex at(Complex s) {
            return new Complex(LEAD_OHM + 10);
        }
    },
    /** 4.7 ohm at the end of the same lead. */
    FOUR_SEVEN {
        @Override
        double[][] system() {
            return resistor(LEAD_OHM + 4.7);
        }

        @Override
        Complex at(Complex s) {
            return new Complex(LEAD_OHM + 4.7);
        }
    };

    /** Keeps the current of the short within the input's full scale. */
    static final double LEAD_OHM = 1.3;

    static final double SOURCE_OHM = 0.3;

    /** A by rows, B, C and D, the output being the current. */
    abstract double[][] system();

    /** Impedance at a complex frequency. */
    abstract Complex at(Complex s);

    /** A resistor has no state; the one here stays 0. */
    private static double[][] resistor(double ohm) {
        return new double[][] {{0}, {0}, {0}, {1 / (SOURCE_OHM + ohm)}};
    }

    /** True impedance, in ohm, at a frequency of a load stepped at a sample rate. */
    Complex truth(double frequencyHz, double sampleRateHz) {
        return at(new Complex(0, 2 * sampleRateHz * Math.tan(Math.PI * frequencyHz / sampleRateHz)));
    }

    /** Steps a load sample by sample. */
    static final class Stepper {
        private final double[][] transition;
        private final double[] input;
        private final double[] output;
        private final double direct;
        private double[] state;
        private double before;

        Stepper(SoftLoad load, double sampleRateHz) {
            double[][] system = load.system();
            int n = system[1].length;
            RealMatrix a = MatrixUtils.createRealMatrix(n, n);
            for (int i = 0; i < n * n; i++) {
                a.setEntry(i / n, i % n, system[0][i] / (2 * sampleRateHz));
            }
            RealMatrix one = MatrixUtils.createRealIdentityMatrix(n);
            RealMatrix inverse = MatrixUtils.inverse(one.subtract(a));
            transition = inverse.multiply(one.add(a)).getData();
            double[] b =
                    Arrays.stream(system[1]).map(v -> v / (2 * sampleRateHz)).toArray();
            input = inverse.operate(b);
            output = system[2];
            direct = system[3][0];
            state = new double[n];
        }

        /** Current in amperes for the next sample of the amplifier's voltage. */
        double step(double volts) {
            double[] next = new double[state.length];
            double amperes = direct * volts;
            for (int i = 0; i < next.length; i++) {
                next[i] = input[i] * (before + volts);
                for (int j = 0; j < next.length; j++) {
                    next[i] += transition[i][j] * state[j];
                }
                amperes += output[i] * next[i];
            }
            state = next;
            before = volts;
            return amperes;
        }
    }
}
