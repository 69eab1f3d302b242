package org.docksweep.demo.physics;

import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Require;

/**
 * One fault of one cabinet.
 *
 * @param kind what is broken
 * @param target position, element, enclosure or test point, as {@link FaultKind} says
 * @param severity meaning and unit as {@link FaultKind} says; 0 where unused
 */
public record Fault(FaultKind kind, String target, double severity) {
    public Fault {
        if (kind == null) {
            throw new IllegalArgumentException("fault: kind is missing");
        }
        Require.text("fault " + kind + " target", target);
        switch (kind) {
            case WRONG_IMPEDANCE, PART_DRIFT -> Require.positive("fault " + kind + " factor", severity);
            case LEAK, MAGNET_WEAK -> Require.inRange("fault " + kind + " factor", severity, 0.01, 1);
            case SHORTED_TURNS -> Require.inRange("fault " + kind + " share", severity, 0.001, 0.6);
            case RUB, BUZZ -> Require.inRange("fault " + kind + " level in dB", severity, -90, 0);
            default -> Require.notNegative("fault " + kind + " severity", severity);
        }
    }

    /**
     * A fault without severity.
     *
     * @param kind kind
     * @param target target
     * @return the fault
     */
    public static Fault of(FaultKind kind, String target) {
        return new Fault(kind, target, 0);
    }

    /**
     * A fault with severity.
     *
     * @param kind kind
     * @param target target
     * @param severity severity
     * @return the fault
     */
    public static Fault of(FaultKind kind, String target, double severity) {
        return new Fault(kind, target, severity);
    }

    /**
     * Checks that a cabinet model has the target.
     *
     * @param model the model
     * @throws IllegalArgumentException if it has not
     */
    void requireTargetIn(CabinetModel model) {
        boolean known = switch (kind.target()) {
            case POSITION -> model.positions().stream().anyMatch(p -> p.code().equals(target));
            case TEST_POINT ->
                model.testPoints().stream().anyMatch(t -> t.code().equals(target));
            case ELEMENT ->
                model.testPoints().stream().flatMap(t -> t.elements().stream()).anyMatch(e -> e.id().equals(target));
            case ENCLOSURE -> model.enclosures().stream().anyMatch(e -> e.id().equals(target));
        };
        if (!known) {
            throw new IllegalArgumentException("fault " + kind + ": cabinet model " + model.code() + " has no "
                    + kind.target() + " named " + target);
        }
    }
}
