package org.docksweep.circuit;

import java.util.Arrays;

/**
 * Blocked coil of a driver, and for a horn driver its motional resonances as well:
 * {@code z = g Re (1 + a dT) + g K (jw)^n + sum g Z Q / (1 + jQ(f/f0 - f0/f)) + Rseries}, Z Q the height of a resonance. Losses raise and
 * lower it together with Q; Z is the square of the force factor over the root of mass and stiffness, which losses leave alone.
 *
 * <p>Shorted turns, share s: Re (1-s), K (1-s)^2 shunted by (1-s)^2 Re / s, motional part (1-s)^2 (a transformer with a
 * shorted secondary); of a horn driver the shorted part also brakes like an eddy ring, {@code m -> m / (1 + m s / Re)}. A weak
 * magnet multiplies the motional part by the square of the force factor's factor. The coil's temperature is that of the body
 * plus its own; Z follows the magnet's ({@link Warmth}).
 */
final class CoilTerm extends Term {
    private static final int FIRST_RESONANCE = 5;

    private final int resonances;
    private final CoilFault fault;
    private final double[] resonanceOmega;
    private final double[] q;
    private final double[] peakOhm;

    private double share;
    private double left;
    private double coldOhm;
    private double resistanceOhm;
    private double exponent;
    private double logSize;
    private double cosine;
    private double sine;
    private double shuntOhm;
    private double seriesOhm;
    private double brakeS;

    private double lossyRe;
    private double lossyIm;
    private double motionRe;
    private double motionIm;
    private double bySeverityRe;
    private double bySeverityIm;

    /** Parameters: Re, K, n, temperature, climate, then f0, Q, Z per resonance, then the fault's own, if it has one. */
    CoilTerm(int[] nodes, double[] weights, int resonances, CoilFault fault, int... parameters) {
        super(nodes, weights, parameters);
        this.resonances = resonances;
        this.fault = fault;
        this.resonanceOmega = new double[resonances];
        this.q = new double[resonances];
        this.peakOhm = new double[resonances];
    }

    /** Magnitude of the motional part at the last frequency, in ohm. */
    double motionalOhm() {
        return Math.hypot(motionRe, motionIm);
    }

    /** Magnitude of the whole admittance at the last frequency, in siemens. */
    double admittanceS() {
        return Math.hypot(yRe, yIm);
    }

    @Override
    void prepare(double[] x) {
        int[] p = parameters();
        share = fault.shareOf(x);
        left = 1 - share;
        double nominalOhm = fault.scale() * StrictMath.exp(x[p[0]]);
        coldOhm = nominalOhm * left;
        resistanceOhm = coldOhm * (1 + Copper.PER_KELVIN * (x[p[3]] + x[p[4]]));
        exponent = StrictMath.exp(x[p[2]]);
        logSize = StrictMath.log(fault.scale() * left * left) + x[p[1]];
        cosine = StrictMath.cos(exponent * Math.PI / 2);
        sine = StrictMath.sin(exponent * Math.PI / 2);
        shuntOhm = share > 0 ? left * left * nominalOhm / share : Double.POSITIVE_INFINITY;
        seriesOhm = fault.seriesResistance() >= 0 ? StrictMath.exp(x[fault.seriesResistance()]) : 0;
        // across the motional part as it would be without shorted turns
        brakeS = share > 0 && resonances > 0 ? share / nominalOhm : 0;
        double logForce = Warmth.LOG_HORN * x[p[4]] + 2 * fault.logMagnetOf(x);
        for (int k = 0; k < resonances; k++) {
            int at = FIRST_RESONANCE + 3 * k;
            resonanceOmega[k] = 2 * Math.PI * StrictMath.exp(x[p[at]]);
            q[k] = StrictMath.exp(x[p[at + 1]]);
            peakOhm[k] = fault.scale() * StrictMath.exp(x[p[at + 1]] + x[p[at + 2]] + logForce);
        }
        Arrays.fill(slopeIm, 0);
    }

    @Override
    void evaluate(double omega, double logOmega) {
        slopeRe[0] = resistanceOhm;
        slopeIm[0] = 0;
        slopeRe[3] = coldOhm * Copper.PER_KELVIN;
        slopeIm[3] = 0;
        addInductance(logOmega);
        addResonances(omega);
        slopeRe[4] = slopeRe[3] + Warmth.LOG_HORN * motionRe;
        slopeIm[4] = Warmth.LOG_HORN * motionIm;
        if (brakeS > 0) {
            brakeResonances();
        }
        int last = slopeRe.length - 1;
        if (fault.seriesResistance() >= 0) {
            slopeRe[last] = seriesOhm;
            slopeIm[last] = 0;
        } else if (share > 0) {
            slopeRe[last] = -share / left * resistanceOhm + bySeverityRe;
            slopeIm[last] = bySeverityIm;
        } else if (fault.magnet() >= 0) {
            slopeRe[last] = 2 * motionRe;
            slopeIm[last] = 2 * motionIm;
        }
        invert(resistanceOhm + lossyRe + motionRe + seriesOhm, lossyIm + motionIm);
    }

    private void addInductance(double logOmega) {
        double size = StrictMath.exp(logSize + exponent * logOmega);
        lossyRe = size * cosine;
        lossyIm = size * sine;
        slopeRe[1] = lossyRe;
        slopeIm[1] = lossyIm;
        slopeRe[2] = exponent * (logOmega * lossyRe - Math.PI / 2 * lossyIm);
        slopeIm[2] = exponent * (logOmega * lossyIm + Math.PI / 2 * lossyRe);
        if (share > 0) {
            shuntInductance();
        }
    }

    /** z || R; slopes by z pass through (R / (R + z))^2, slopes by R through (z / (R + z))^2. */
    private void shuntInductance() {
        double sumRe = shuntOhm + lossyRe;
        double norm = sumRe * sumRe + lossyIm * lossyIm;
        double ratioRe = shuntOhm * sumRe / norm;
        double ratioIm = -shuntOhm * lossyIm / norm;
        double squareRe = ratioRe * ratioRe - ratioIm * ratioIm;
        double squareIm = 2 * ratioRe * ratioIm;
        double throughRe = squareRe * lossyRe - squareIm * lossyIm;
        double throughIm = squareRe * lossyIm + squareIm * lossyRe;
        double otherRe = 1 - ratioRe;
        double acrossRe = shuntOhm * (otherRe * otherRe - ratioIm * ratioIm);
        double acrossIm = -shuntOhm * 2 * otherRe * ratioIm;
        for (int i = 1; i <= 2; i++) {
            double dRe = slopeRe[i];
            double dIm = slopeIm[i];
            slopeRe[i] = squareRe * dRe - squareIm * dIm;
            slopeIm[i] = squareRe * dIm + squareIm * dRe;
        }
        double shrink = -2 * share / left;
        bySeverityRe = shrink * throughRe + (shrink - 1) * acrossRe;
        bySeverityIm = shrink * throughIm + (shrink - 1) * acrossIm;
        slopeRe[0] += acrossRe;
        slopeIm[0] += acrossIm;
        double shuntedRe = ratioRe * lossyRe - ratioIm * lossyIm;
        lossyIm = ratioRe * lossyIm + ratioIm * lossyRe;
        lossyRe = shuntedRe;
    }

    /**
     * m -> (1-s)^2 m / (1 + m c), c = s / Re: slopes by m pass through {@code (1-s)^2 / (1 + m c)^2}, slopes by c through
     * {@code -m^2} of that.
     */
    private void brakeResonances() {
        double dRe = 1 + motionRe * brakeS;
        double dIm = motionIm * brakeS;
        double squareRe = dRe * dRe - dIm * dIm;
        double squareIm = 2 * dRe * dIm;
        double norm = squareRe * squareRe + squareIm * squareIm;
        double passRe = left * left * squareRe / norm;
        double passIm = -left * left * squareIm / norm;
        for (int i = FIRST_RESONANCE; i < FIRST_RESONANCE + 3 * resonances; i++) {
            pass(i, passRe, passIm);
        }
        double warmRe = slopeRe[4] - slopeRe[3];
        double warmIm = slopeIm[4];
        slopeRe[4] = slopeRe[3] + passRe * warmRe - passIm * warmIm;
        slopeIm[4] = passRe * warmIm + passIm * warmRe;
        double mmRe = motionRe * motionRe - motionIm * motionIm;
        double mmIm = 2 * motionRe * motionIm;
        double byBrakeRe = -brakeS * (mmRe * passRe - mmIm * passIm);
        double byBrakeIm = -brakeS * (mmRe * passIm + mmIm * passRe);
        double normD = dRe * dRe + dIm * dIm;
        double brakedRe = left * left * (motionRe * dRe + motionIm * dIm) / normD;
        motionIm = left * left * (motionIm * dRe - motionRe * dIm) / normD;
        motionRe = brakedRe;
        bySeverityRe += byBrakeRe - 2 * share / left * motionRe;
        bySeverityIm += byBrakeIm - 2 * share / left * motionIm;
        slopeRe[0] -= byBrakeRe;
        slopeIm[0] -= byBrakeIm;
    }

    private void pass(int i, double factorRe, double factorIm) {
        double re = slopeRe[i];
        double im = slopeIm[i];
        slopeRe[i] = factorRe * re - factorIm * im;
        slopeIm[i] = factorRe * im + factorIm * re;
    }

    private void addResonances(double omega) {
        motionRe = 0;
        motionIm = 0;
        for (int k = 0; k < resonances; k++) {
            int at = FIRST_RESONANCE + 3 * k;
            double ratio = omega / resonanceOmega[k];
            double detune = q[k] * (ratio - 1 / ratio);
            double norm = 1 + detune * detune;
            double termRe = peakOhm[k] / norm;
            double termIm = -peakOhm[k] * detune / norm;
            motionRe += termRe;
            motionIm += termIm;
            // dz = -R j d(detune) / (1 + j detune)^2
            double squareRe = (1 - detune * detune) / (norm * norm);
            double squareIm = -2 * detune / (norm * norm);
            double byResonance = -q[k] * (ratio + 1 / ratio);
            slopeRe[at] = peakOhm[k] * byResonance * squareIm;
            slopeIm[at] = -peakOhm[k] * byResonance * squareRe;
            slopeRe[at + 1] = peakOhm[k] * detune * squareIm + termRe;
            slopeIm[at + 1] = -peakOhm[k] * detune * squareRe + termIm;
            slopeRe[at + 2] = termRe;
            slopeIm[at + 2] = termIm;
        }
    }
}
