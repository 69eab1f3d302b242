package org.docksweep.circuit;

/**
 * A change of structure that a fault makes to a circuit.
 *
 * @param kind kind of change
 * @param target driver position, network element id or enclosure id it happens to; empty for NONE
 */
public record CircuitFault(Kind kind, String target) {
    /** Healthy. */
    public static final CircuitFault NONE = new CircuitFault(Kind.NONE, "");

    /** Kinds of change. */
    public enum Kind {
        NONE,
        /** A driver's coil is open; its cone goes on moving with the air of a shared box. */
        DRIVER_OPEN,
        /** A driver's terminals are shorted, its coil brakes the cone; free severity {@code fault.short}, what the short leaves. */
        DRIVER_SHORTED,
        /**
         * A driver's joints are bridged and its coil carries nothing, so that nothing brakes the cone; free severity {@code fault.short}.
         */
        DRIVER_BRIDGED,
        /** All of a driver's impedance is doubled. */
        DRIVER_DOUBLED,
        /** All of a driver's impedance is halved. */
        DRIVER_HALVED,
        /** A driver's coil cannot move; free severity {@code fault.seized}, the resistance of what still moves. */
        COIL_SEIZED,
        /** A driver has shorted turns; free severity {@code fault.turns}. */
        SHORTED_TURNS,
        /** A resistance in series with a driver; free severity {@code fault.series}. */
        SERIES_RESISTANCE,
        /** A driver's magnet is weak; free severity {@code fault.magnet}, ln of the factor on its force factor. */
        MAGNET_WEAK,
        /** A driver is wired the wrong way round; seen only where cones share their air. */
        POLARITY_REVERSED,
        /** A network element is open. */
        ELEMENT_OPEN,
        /** A network element is shorted; free severity {@code fault.short}. */
        ELEMENT_SHORTED,
        /** The port of a vented box is blocked. */
        PORT_BLOCKED
    }
}
