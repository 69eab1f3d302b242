package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingKind;
import org.docksweep.survival.Trend;

/**
 * Where one quantity of one cabinet is going, since its last repair.
 *
 * @param tag cabinet
 * @param modelCode its model
 * @param status where it stands, or null in a stored warning
 * @param testPointCode test point
 * @param positionCode driver position, or null where the quantity belongs to the whole test point
 * @param kind quantity
 * @param state which way it goes
 * @param returns returns over which the change came
 * @param change change over them: in decibel for levels, else as a share of the value before (0.1 for 10 % more)
 * @param concerns how many times the change that matters this is
 * @param start value at the start, in the unit of the kind
 * @param lowerLimit lower control limit of the weighted mean, in the unit of the kind
 * @param upperLimit upper control limit
 * @param points values so far, oldest first
 * @param words the sentence
 */
public record DriftRow(
        AssetTag tag,
        String modelCode,
        CabinetStatus status,
        String testPointCode,
        String positionCode,
        ReadingKind kind,
        Trend.State state,
        int returns,
        double change,
        double concerns,
        double start,
        double lowerLimit,
        double upperLimit,
        List<Point> points,
        Reason words) {

    /**
     * A value.
     *
     * @param at when
     * @param value value in the unit of the kind
     */
    public record Point(Instant at, double value) {}
}
