package org.docksweep.suspect;

/** What can be wrong with a part of a cabinet. */
public enum FaultKind {
    /** Driver open: coil, lead-in or its joint. */
    DRIVER_OPEN,
    /** Driver or its terminals shorted. */
    DRIVER_SHORTED,
    /** Impedance of the driver about doubled or halved: a part of another rated impedance was fitted. */
    WRONG_IMPEDANCE_PART,
    /** Motional peak gone: the coil does not move. */
    COIL_SEIZED,
    /** Shorted turns. */
    SHORTED_TURNS,
    /** Weak magnet. */
    MAGNET_WEAK,
    /** One of several cones that share a box is wired the wrong way round. */
    POLARITY_REVERSED,
    /** Extra series resistance at a contact or joint. */
    CONTACT_RESISTANCE,
    /** Contact that comes and goes. */
    INTERMITTENT_CONTACT,
    /** Crossover part open. */
    PART_OPEN,
    /** Crossover part shorted. */
    PART_SHORTED,
    /** Crossover part off its value. */
    PART_DRIFTED,
    /** Box leaks. */
    LEAK,
    /** Port blocked. */
    PORT_BLOCKED,
    /** The way is silent or weak at the microphone. */
    WAY_WEAK,
    /** Terminals of the cabinet shorted. */
    TERMINALS_SHORTED,
    /** Nothing connected, or the lead into the cabinet is open. */
    NOTHING_CONNECTED,
    /** The curve is that of another test point of this cabinet. */
    WRONG_SOCKET,
    /** The curve is that of another cabinet model. */
    WRONG_LABEL,
    /** A way sounds the wrong way round. */
    WAY_REVERSED,
    /** The coil rubs in its gap. */
    COIL_RUBS,
    /** A part of the cabinet is loose and rattles. */
    LOOSE_PART,
    /** Out of limits, and no known fault explains it. */
    UNKNOWN
}
