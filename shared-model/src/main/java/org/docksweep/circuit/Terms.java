package org.docksweep.circuit;

/** {@link Term}s of network parts. Parameters named in the constructors are indices into the parameter vector. */
final class Terms {
    /** Temperature coefficient of copper at 20 C, per kelvin (IEC 60028). */
    static final double COPPER_PER_KELVIN = Copper.PER_KELVIN;

    private Terms() {}

    /** A fixed conductance, for shorts. */
    static final class Fixed extends Term {
        Fixed(int[] nodes, double[] weights, double resistanceOhm) {
            super(nodes, weights);
            yRe = 1 / resistanceOhm;
        }

        @Override
        void prepare(double[] x) {
            // constant
        }

        @Override
        void evaluate(double omega, double logOmega) {
            // constant
        }
    }

    /** R = exp(x). */
    static final class Resistor extends Term {
        Resistor(int[] nodes, double[] weights, int value) {
            super(nodes, weights, value);
        }

        @Override
        void prepare(double[] x) {
            double resistanceOhm = StrictMath.exp(x[parameters()[0]]);
            slopeRe[0] = resistanceOhm;
            slopeIm[0] = 0;
            invert(resistanceOhm, 0);
        }

        @Override
        void evaluate(double omega, double logOmega) {
            // the same at all frequencies
        }
    }

    /** z = R (1 + a dT) + j w L. */
    static final class Coil extends Term {
        Coil(int[] nodes, double[] weights, int value, int winding, int temperature) {
            super(nodes, weights, value, winding, temperature);
        }

        private double inductanceH;
        private double coldOhm;
        private double windingOhm;

        @Override
        void prepare(double[] x) {
            inductanceH = StrictMath.exp(x[parameters()[0]]);
            coldOhm = StrictMath.exp(x[parameters()[1]]);
            windingOhm = coldOhm * (1 + COPPER_PER_KELVIN * x[parameters()[2]]);
        }

        @Override
        void evaluate(double omega, double logOmega) {
            double reactanceOhm = omega * inductanceH;
            slopeRe[0] = 0;
            slopeIm[0] = reactanceOhm;
            slopeRe[1] = windingOhm;
            slopeIm[1] = 0;
            slopeRe[2] = coldOhm * COPPER_PER_KELVIN;
            slopeIm[2] = 0;
            invert(windingOhm, reactanceOhm);
        }
    }

    /** z = ESR + 1 / (j w C), ESR in ohm. */
    static final class Capacitor extends Term {
        Capacitor(int[] nodes, double[] weights, int value, int seriesResistance) {
            super(nodes, weights, value, seriesResistance);
        }

        private double capacitanceF;
        private double seriesOhm;

        @Override
        void prepare(double[] x) {
            capacitanceF = StrictMath.exp(x[parameters()[0]]);
            seriesOhm = x[parameters()[1]];
        }

        @Override
        void evaluate(double omega, double logOmega) {
            double reactanceOhm = 1 / (omega * capacitanceF);
            slopeRe[0] = 0;
            slopeIm[0] = reactanceOhm;
            slopeRe[1] = 1;
            slopeIm[1] = 0;
            invert(seriesOhm, -reactanceOhm);
        }
    }
}
