package org.docksweep.kiosk.rig;

import java.util.Optional;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.kiosk.fleet.LocalFleet;

/**
 * A cabinet as a part of a repeatability study.
 *
 * @param tag its label
 * @param point its first test point with terminals
 */
public record StudyCabinet(AssetTag tag, TestPoint point) {

    /** Finds cabinets. */
    @FunctionalInterface
    public interface Finder {
        /** Knows none. */
        Finder NONE = tag -> Optional.empty();

        /**
         * Finds a cabinet.
         *
         * @param tag label
         * @return the cabinet; empty when it is unknown or has no terminals
         */
        Optional<StudyCabinet> find(AssetTag tag);
    }

    /**
     * A cabinet of a fleet.
     *
     * @param fleet the fleet
     * @param tag label
     * @return the cabinet; empty when it is unknown or has no terminals
     */
    public static Optional<StudyCabinet> of(LocalFleet fleet, AssetTag tag) {
        return fleet.cabinet(tag)
                .map(fleet::modelOf)
                .flatMap(model -> model.testPoints().stream()
                        .filter(p -> p.kind() == TestPointKind.TERMINALS)
                        .findFirst())
                .map(point -> new StudyCabinet(tag, point));
    }
}
