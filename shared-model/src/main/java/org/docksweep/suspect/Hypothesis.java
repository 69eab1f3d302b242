package org.docksweep.suspect;

import org.docksweep.circuit.CircuitFault;

/**
 * One thing that could be wrong (or nothing), as a change of circuit structure or of a parameter's prior.
 *
 * @param kind kind of fault, or null for a healthy point
 * @param positionCode driver position concerned, or null
 * @param elementId crossover part or enclosure concerned, or null
 * @param structure change of structure
 * @param widenedParameter parameter whose value the fault sets free, or null
 * @param shift shift of that parameter's mean (logarithm)
 * @param spread standard deviation of that parameter under the fault (logarithm)
 * @param weight prior probability before normalisation
 */
record Hypothesis(
        FaultKind kind,
        String positionCode,
        String elementId,
        CircuitFault structure,
        String widenedParameter,
        double shift,
        double spread,
        double weight) {

    /** Whether the fault grows from nothing with its severity, so that small ones are small changes. */
    boolean grows() {
        return switch (structure.kind()) {
            case SHORTED_TURNS, SERIES_RESISTANCE, MAGNET_WEAK -> true;
            default -> false;
        };
    }

    /** Severity of a growing fault, 0 for none: share of turns, ohm, or loss of force factor. */
    double severityOf(double carried) {
        return structure.kind() == CircuitFault.Kind.MAGNET_WEAK
                ? 1 - StrictMath.exp(carried)
                : StrictMath.exp(carried);
    }

    /** The severity's carried parameter. */
    double carried(double severity) {
        return structure.kind() == CircuitFault.Kind.MAGNET_WEAK
                ? StrictMath.log(1 - severity)
                : StrictMath.log(severity);
    }

    double largestSeverity() {
        return structure.kind() == CircuitFault.Kind.SERIES_RESISTANCE ? Double.POSITIVE_INFINITY : 0.6;
    }

    /**
     * A severity below this is no fault of the kind: turns are shorted whole, and a voice coil has some 30 to 65 of them (common practice, no
     * source; long coils of low-frequency drivers have more).
     */
    double leastSeverity() {
        return structure.kind() == CircuitFault.Kind.SHORTED_TURNS ? 1.0 / 65 : 0;
    }

    /** Standard deviation of the severity's logarithm, from mean and spread of its carried parameter. */
    double logSpread(double carriedMean, double carriedSpread) {
        return structure.kind() == CircuitFault.Kind.MAGNET_WEAK
                ? carriedSpread / severityOf(carriedMean)
                : carriedSpread;
    }

    static Hypothesis healthy(double weight) {
        return new Hypothesis(null, null, null, CircuitFault.NONE, null, 0, 0, weight);
    }

    static Hypothesis driver(FaultKind kind, String position, CircuitFault.Kind structure, double weight) {
        return new Hypothesis(kind, position, null, new CircuitFault(structure, position), null, 0, 0, weight);
    }

    static Hypothesis element(FaultKind kind, String id, CircuitFault.Kind structure, double weight) {
        return new Hypothesis(kind, null, id, new CircuitFault(structure, id), null, 0, 0, weight);
    }

    static Hypothesis widened(
            FaultKind kind, String elementId, String parameter, double shift, double spread, double weight) {
        return new Hypothesis(kind, null, elementId, CircuitFault.NONE, parameter, shift, spread, weight);
    }
}
