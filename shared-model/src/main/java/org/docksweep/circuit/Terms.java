package org.docksweep.circuit;

/** The kinds of {@link Term}. Parameters named in the constructors are indices into the parameter vector. */
final class Terms {
    /** Temperature coefficient of copper at 20 C, per kelvin (IEC 60028). */
    static final double COPPER_PER_KELVIN = Copper.PER_KELVIN;

    private static final double TWO_PI = 2 * Math.PI;

    private Terms() {}

    /** A fixed conductance, for shorts. */
    static final class Fixed extends Term {
        Fixed(int[] nodes, double[] weights, double resistanceOhm) {
            super(nodes, weights);
            yRe = 1 / resistanceOhm;
        }

        @Override
        void evaluate(double frequencyHz, double[] x) {
            // constant
        }
    }

    /** R = exp(x). */
    static final class Resistor extends Term {
        Resistor(int[] nodes, double[] weights, int value) {
            super(nodes, weights, value);
        }

        @Override
        void evaluate(double frequencyHz, double[] x) {
            double resistanceOhm = Math.exp(x[parameters()[0]]);
            slopeRe[0] = resistanceOhm;
            slopeIm[0] = 0;
            invert(resistanceOhm, 0);
        }
    }

    /** z = R (1 + a dT) + j w L. */
    static final class Coil extends Term {
        Coil(int[] nodes, double[] weights, int value, int winding, int temperature) {
            super(nodes, weights, value, winding, temperature);
        }

        @Override
        void evaluate(double frequencyHz, double[] x) {
            double reactanceOhm = TWO_PI * frequencyHz * Math.exp(x[parameters()[0]]);
            double coldOhm = Math.exp(x[parameters()[1]]);
            double windingOhm = coldOhm * (1 + COPPER_PER_KELVIN * x[parameters()[2]]);
            slopeRe[0] = 0;
            slopeIm[0] = reactanceOhm;
            slopeRe[1] = windingOhm;
            slopeIm[1] = 0;
            slopeRe[2] = coldOhm * COPPER_PER_KELVIN;
            slopeIm[2] = 0;
            invert(windingOhm, reactanceOhm);
        }
    }

    /** z = ESR + 1 / (j w C). */
    static final class Capacitor extends Term {
        Capacitor(int[] nodes, double[] weights, int value, int seriesResistance) {
            super(nodes, weights, value, seriesResistance);
        }

        @Override
        void evaluate(double frequencyHz, double[] x) {
            double reactanceOhm = 1 / (TWO_PI * frequencyHz * Math.exp(x[parameters()[0]]));
            double seriesOhm = Math.exp(x[parameters()[1]]);
            slopeRe[0] = 0;
            slopeIm[0] = reactanceOhm;
            slopeRe[1] = seriesOhm;
            slopeIm[1] = 0;
            invert(seriesOhm, -reactanceOhm);
        }
    }

    /** What a driver does to its blocked impedance under a fault. */
    record CoilFault(double scale, int seriesResistance, int turnShare) {
        static final CoilFault NONE = new CoilFault(1, -1, -1);
    }

    /**
     * Blocked coil, and for a horn driver its motional resonances as well:
     * {@code z = g Re (1 + a dT) + g K (jw)^n + sum g R / (1 + jQ(f/f0 - f0/f)) + Rseries}.
     *
     * <p>Shorted turns, share s: Re (1-s), K (1-s)^2 shunted by (1-s)^2 Re / s, motional part (1-s)^2 (a transformer
     * with a shorted secondary).
     */
    static final class Coils extends Term {
        private final int resonances;
        private final CoilFault fault;

        /** Parameters: Re, K, n, temperature, then f0, Q, R per resonance, then the fault's own, if it has one. */
        Coils(int[] nodes, double[] weights, int resonances, CoilFault fault, int... parameters) {
            super(nodes, weights, parameters);
            this.resonances = resonances;
            this.fault = fault;
        }

        @Override
        void evaluate(double frequencyHz, double[] x) {
            int[] p = parameters();
            java.util.Arrays.fill(slopeRe, 0);
            java.util.Arrays.fill(slopeIm, 0);
            double share = fault.turnShare() >= 0 ? Math.min(0.9, Math.exp(x[fault.turnShare()])) : 0;
            double left = 1 - share;
            double coldOhm = fault.scale() * Math.exp(x[p[0]]) * left;
            double resistanceOhm = coldOhm * (1 + COPPER_PER_KELVIN * x[p[3]]);
            slopeRe[0] = resistanceOhm;
            slopeRe[3] = coldOhm * COPPER_PER_KELVIN;

            double exponent = Math.exp(x[p[2]]);
            double omega = TWO_PI * frequencyHz;
            double size = fault.scale() * left * left * Math.exp(x[p[1]]) * Math.pow(omega, exponent);
            double angle = exponent * Math.PI / 2;
            double lossyRe = size * Math.cos(angle);
            double lossyIm = size * Math.sin(angle);
            double logOmega = Math.log(omega);
            slopeRe[1] = lossyRe;
            slopeIm[1] = lossyIm;
            slopeRe[2] = exponent * (logOmega * lossyRe - Math.PI / 2 * lossyIm);
            slopeIm[2] = exponent * (logOmega * lossyIm + Math.PI / 2 * lossyRe);
            double bySeverityRe = 0;
            double bySeverityIm = 0;
            if (share > 0) {
                double shuntOhm = left * left * fault.scale() * Math.exp(x[p[0]]) / share;
                shunt(lossyRe, lossyIm, shuntOhm);
                double shrink = -2 * share / left;
                bySeverityRe = shrink * throughRe + (shrink - 1) * acrossRe;
                bySeverityIm = shrink * throughIm + (shrink - 1) * acrossIm;
                slopeRe[0] += acrossRe;
                slopeIm[0] += acrossIm;
                lossyRe = shuntedRe;
                lossyIm = shuntedIm;
            }

            double motionRe = 0;
            double motionIm = 0;
            for (int k = 0; k < resonances; k++) {
                int at = 4 + 3 * k;
                double resonanceHz = Math.exp(x[p[at]]);
                double q = Math.exp(x[p[at + 1]]);
                double peakOhm = fault.scale() * left * left * Math.exp(x[p[at + 2]]);
                double detune = q * (frequencyHz / resonanceHz - resonanceHz / frequencyHz);
                double norm = 1 + detune * detune;
                double termRe = peakOhm / norm;
                double termIm = -peakOhm * detune / norm;
                motionRe += termRe;
                motionIm += termIm;
                // dz = -R j d(detune) / (1 + j detune)^2
                double squareRe = (1 - detune * detune) / (norm * norm);
                double squareIm = -2 * detune / (norm * norm);
                double byResonance = -q * (frequencyHz / resonanceHz + resonanceHz / frequencyHz);
                slopeRe[at] = peakOhm * byResonance * squareIm;
                slopeIm[at] = -peakOhm * byResonance * squareRe;
                slopeRe[at + 1] = peakOhm * detune * squareIm;
                slopeIm[at + 1] = -peakOhm * detune * squareRe;
                slopeRe[at + 2] = termRe;
                slopeIm[at + 2] = termIm;
            }

            double seriesOhm = fault.seriesResistance() >= 0 ? Math.exp(x[fault.seriesResistance()]) : 0;
            int last = p.length - 1;
            if (fault.seriesResistance() >= 0) {
                slopeRe[last] = seriesOhm;
            } else if (share > 0) {
                slopeRe[last] = -share / left * (resistanceOhm + 2 * motionRe) + bySeverityRe;
                slopeIm[last] = -share / left * 2 * motionIm + bySeverityIm;
            }
            invert(resistanceOhm + lossyRe + motionRe + seriesOhm, lossyIm + motionIm);
        }

        private double shuntedRe;
        private double shuntedIm;
        /** d(z || R) / d ln z. */
        private double throughRe;

        private double throughIm;
        /** d(z || R) / d ln R. */
        private double acrossRe;

        private double acrossIm;

        /** z || R; slopes by z pass through (R / (R + z))^2, slopes by R through (z / (R + z))^2. */
        private void shunt(double zRe, double zIm, double shuntOhm) {
            double sumRe = shuntOhm + zRe;
            double norm = sumRe * sumRe + zIm * zIm;
            double ratioRe = shuntOhm * sumRe / norm;
            double ratioIm = -shuntOhm * zIm / norm;
            shuntedRe = ratioRe * zRe - ratioIm * zIm;
            shuntedIm = ratioRe * zIm + ratioIm * zRe;
            double squareRe = ratioRe * ratioRe - ratioIm * ratioIm;
            double squareIm = 2 * ratioRe * ratioIm;
            throughRe = squareRe * zRe - squareIm * zIm;
            throughIm = squareRe * zIm + squareIm * zRe;
            double otherRe = 1 - ratioRe;
            acrossRe = shuntOhm * (otherRe * otherRe - ratioIm * ratioIm);
            acrossIm = -shuntOhm * 2 * otherRe * ratioIm;
            for (int i = 1; i <= 2; i++) {
                double dRe = slopeRe[i];
                double dIm = slopeIm[i];
                slopeRe[i] = squareRe * dRe - squareIm * dIm;
                slopeIm[i] = squareRe * dIm + squareIm * dRe;
            }
        }
    }

    /**
     * Motion of a cone seen from its coil: {@code y = (q + 1/q + 1/Qms) / (g Z0) + brake}, q = j f / fs, Z0 = Res / Qms.
     * With shorted turns, share s, an eddy brake s / (Re (1-s)^2) is added and Z0 shrinks by (1-s)^2.
     */
    static final class Motion extends Term {
        private final double scale;
        private final boolean turns;

        /** Parameters: fs, Qms, Z0, then, if turns are shorted, their share and Re. */
        Motion(int[] nodes, double[] weights, double scale, int... parameters) {
            super(nodes, weights, parameters);
            this.scale = scale;
            this.turns = parameters.length > 3;
        }

        @Override
        void evaluate(double frequencyHz, double[] x) {
            int[] p = parameters();
            double ratio = frequencyHz / Math.exp(x[p[0]]);
            double losses = Math.exp(-x[p[1]]);
            double share = turns ? Math.min(0.9, Math.exp(x[p[3]])) : 0;
            double left = 1 - share;
            double impedanceOhm = scale * left * left * Math.exp(x[p[2]]);
            double freeRe = losses / impedanceOhm;
            double freeIm = (ratio - 1 / ratio) / impedanceOhm;
            double brake = turns ? share / (scale * left * left * Math.exp(x[p[4]])) : 0;
            yRe = freeRe + brake;
            yIm = freeIm;
            slopeRe[0] = 0;
            slopeIm[0] = -(ratio + 1 / ratio) / impedanceOhm;
            slopeRe[1] = -freeRe;
            slopeIm[1] = 0;
            slopeRe[2] = -freeRe;
            slopeIm[2] = -freeIm;
            if (turns) {
                slopeRe[4] = -brake;
                slopeIm[4] = 0;
                slopeRe[3] = 2 * share / left * freeRe + brake * (1 + share) / left;
                slopeIm[3] = 2 * share / left * freeIm;
            }
        }
    }

    /**
     * Box air seen from the coils of the cones that share it: {@code y = S / (j w) qb^2 / (qb^2 + qb / QL + 1)} with
     * qb = j f / fb (Small 1973); closed: {@code y = S / (j w (1 + 1 / (j (f / f0) QL)))}. S carries the stiffness.
     */
    static final class BoxAir extends Term {
        private final boolean vented;
        private final double closedLeakHz;

        /** Parameters: S, QL, and for a vented box fb. */
        BoxAir(int[] nodes, double[] weights, boolean vented, double closedLeakHz, int... parameters) {
            super(nodes, weights, parameters);
            this.vented = vented;
            this.closedLeakHz = closedLeakHz;
        }

        @Override
        void evaluate(double frequencyHz, double[] x) {
            int[] p = parameters();
            double stiffness = Math.exp(x[p[0]]) / (TWO_PI * frequencyHz);
            double leak = Math.exp(-x[p[1]]);
            double ratio = vented ? frequencyHz / Math.exp(x[p[2]]) : frequencyHz / closedLeakHz;
            // factor = top / bottom
            double topRe = vented ? -ratio * ratio : 0;
            double topIm = vented ? 0 : ratio;
            double bottomRe = vented ? 1 - ratio * ratio : leak;
            double bottomIm = vented ? ratio * leak : ratio;
            double norm = bottomRe * bottomRe + bottomIm * bottomIm;
            double factorRe = (topRe * bottomRe + topIm * bottomIm) / norm;
            double factorIm = (topIm * bottomRe - topRe * bottomIm) / norm;
            // y = -j stiffness factor
            yRe = stiffness * factorIm;
            yIm = -stiffness * factorRe;
            slopeRe[0] = yRe;
            slopeIm[0] = yIm;
            // d ln y / d ln QL = +(leak part of the bottom) / bottom
            double leakRe = vented ? 0 : leak;
            double leakIm = vented ? ratio * leak : 0;
            setSlope(1, (leakRe * bottomRe + leakIm * bottomIm) / norm, (leakIm * bottomRe - leakRe * bottomIm) / norm);
            if (vented) {
                // d ln y / d ln fb = -(2 - (2 qb^2 + qb / QL) / bottom)
                double partRe = -2 * ratio * ratio;
                double partIm = ratio * leak;
                double shareRe = (partRe * bottomRe + partIm * bottomIm) / norm;
                double shareIm = (partIm * bottomRe - partRe * bottomIm) / norm;
                setSlope(2, shareRe - 2, shareIm);
            }
        }

        private void setSlope(int index, double logRe, double logIm) {
            slopeRe[index] = yRe * logRe - yIm * logIm;
            slopeIm[index] = yRe * logIm + yIm * logRe;
        }
    }
}
