package org.docksweep.suspect;

import org.docksweep.circuit.CircuitFault;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;

/**
 * Severities of soft faults that the gate must find.
 *
 * @param contactShare contact resistance as a share of the driver's Re
 * @param turns share of shorted turns
 * @param partOff relative deviation of a crossover part
 * @param leakFactor factor on the leakage loss Q
 * @param magnetFactor factor on the force factor
 */
public record Severities(double contactShare, double turns, double partOff, double leakFactor, double magnetFactor) {
    /** With the cabinet's own baseline. */
    public static final Severities WITH_BASELINE = new Severities(0.1, 0.05, 0.15, 0.5, 0.9);
    /** With a reference of the model only. */
    public static final Severities WITH_REFERENCE = new Severities(0.25, 0.1, 0.35, 0.5, 0.9);

    /** Severity of a growing fault. */
    double of(Hypothesis hypothesis, ModelBook book, CabinetModel model) {
        return switch (hypothesis.structure().kind()) {
            case SERIES_RESISTANCE ->
                contactShare
                        * book.driverModelAt(model, hypothesis.positionCode()).dcResistanceOhm();
            case SHORTED_TURNS -> turns;
            case MAGNET_WEAK -> 1 - magnetFactor;
            default -> throw new IllegalArgumentException(hypothesis.kind() + " has no severity");
        };
    }

    /** Change of a healthy parameter's carried value. */
    double change(Hypothesis hypothesis, ModelBook book, CabinetModel model, TestPoint point) {
        if (hypothesis.structure().kind() != CircuitFault.Kind.NONE) {
            throw new IllegalArgumentException(hypothesis.kind() + " changes the circuit");
        }
        return switch (hypothesis.kind()) {
            case LEAK -> StrictMath.log(leakFactor);
            case PART_DRIFTED -> StrictMath.log(1 - partOff);
            case CONTACT_RESISTANCE ->
                contactShare
                        * point.positionCodes().stream()
                                .mapToDouble(p -> book.driverModelAt(model, p).dcResistanceOhm())
                                .min()
                                .orElseThrow();
            default -> throw new IllegalArgumentException(hypothesis.kind() + " has no severity");
        };
    }
}
