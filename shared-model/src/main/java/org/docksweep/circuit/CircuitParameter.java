package org.docksweep.circuit;

import org.docksweep.fleet.Require;

/**
 * A free quantity of a circuit. Positive quantities are carried as their natural logarithm, so that relative tolerances
 * are standard deviations. Some are carried as they are: {@code contact} in ohm, {@code creep} and
 * {@code friction} without unit, {@code climate} (the cabinet's body) in kelvin above
 * 20 C, {@code temperature} (its coils) in kelvin above the body.
 *
 * @param id name, for example {@code LF1.fs}, {@code C2.value}, {@code BOX.tuning}, {@code contact}, {@code temperature}
 * @param nominal nominal value of the carried quantity (a logarithm, ohm or kelvin)
 * @param spread standard deviation of the carried quantity among healthy units, greater than 0
 */
public record CircuitParameter(String id, double nominal, double spread) {
    public CircuitParameter {
        Require.text("circuit parameter id", id);
        Require.positive("circuit parameter " + id + " spread", spread);
        if (!Double.isFinite(nominal)) {
            throw new IllegalArgumentException(
                    "circuit parameter " + id + " nominal must be finite, but is " + nominal);
        }
    }
}
