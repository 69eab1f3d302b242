package org.docksweep.gate;

/**
 * A number read from a measurement, with its uncertainty, its reference and its limits.
 *
 * @param kind quantity
 * @param testPointCode test point it was read at
 * @param positionCode driver position it belongs to, or null when it belongs to the whole test point
 * @param value value in the unit of the kind
 * @param standardUncertainty standard uncertainty in the same unit, at least 0
 * @param reference value expected, or null without a reference
 * @param lowerLimit lowest value that passes, or null
 * @param upperLimit highest value that passes, or null
 * @param state how it stands
 */
public record Reading(
        ReadingKind kind,
        String testPointCode,
        String positionCode,
        double value,
        double standardUncertainty,
        Double reference,
        Double lowerLimit,
        Double upperLimit,
        ReadingState state) {}
