package org.docksweep.fleet;

import static org.docksweep.fleet.Require.positive;

/**
 * One parallel R-L-C term of a driver's motional impedance (one term of a Foster sum):
 * {@code Z(f) = peakResistanceOhm / (1 + j Q (f/f0 - f0/f))}.
 *
 * <p>A cone driver in free air has exactly one, with {@code Q = Qms} and
 * {@code peakResistanceOhm = Re Qms / Qes}; a compression driver on its horn has a main term and ripples.
 *
 * @param frequencyHz resonance frequency f0, greater than 0
 * @param q quality factor of the term, greater than 0
 * @param peakResistanceOhm value at resonance, greater than 0
 */
public record MotionalResonance(double frequencyHz, double q, double peakResistanceOhm) {
    public MotionalResonance {
        positive("resonance frequencyHz", frequencyHz);
        positive("resonance q", q);
        positive("resonance peakResistanceOhm", peakResistanceOhm);
    }
}
