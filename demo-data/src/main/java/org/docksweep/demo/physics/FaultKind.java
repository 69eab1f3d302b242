package org.docksweep.demo.physics;

/** What can be broken in a virtual cabinet; each constant says what target and severity of a {@link Fault} mean. */
public enum FaultKind {
    /** Coil or lead-in open. Target: position. Severity unused. */
    DRIVER_OPEN(Target.POSITION),
    /** Coil shorted at the driver. Target: position. Severity: what is left, in ohm. */
    DRIVER_SHORTED(Target.POSITION),
    /** Short across the contacts. Target: test point. Severity: what is left, in ohm. */
    TERMINALS_SHORTED(Target.TEST_POINT),
    /** Replacement of another rated impedance. Target: position. Severity: factor on everything behind, 2 or 0.5. */
    WRONG_IMPEDANCE(Target.POSITION),
    /** Coil cannot move. Target: position. Severity unused. */
    SEIZED(Target.POSITION),
    /** Turns shorted among themselves. Target: position. Severity: share of the turns, above 0 to 0.6. */
    SHORTED_TURNS(Target.POSITION),
    /** Resistance of a joint or contact in series with the driver. Target: position. Severity: ohm. */
    CONTACT_RESISTANCE(Target.POSITION),
    /** Lead-in that lets go for moments. Target: position. Severity: moments per second of playback. */
    INTERMITTENT(Target.POSITION),
    /** Crossover part open. Target: element. Severity unused. */
    PART_OPEN(Target.ELEMENT),
    /** Crossover part shorted. Target: element. Severity unused. */
    PART_SHORTED(Target.ELEMENT),
    /** Crossover part off its value. Target: element. Severity: factor on its value. */
    PART_DRIFT(Target.ELEMENT),
    /** Air leak. Target: enclosure. Severity: factor on the leakage loss Q, below 1. */
    LEAK(Target.ENCLOSURE),
    /** Port stuffed shut. Target: enclosure. Severity unused. */
    PORT_BLOCKED(Target.ENCLOSURE),
    /** Cracked or tired diaphragm: less sound, small shift. Target: position. Severity: loss in dB. */
    WAY_WEAK(Target.POSITION),
    /** Coil rubs. Target: position. Severity: peak of the burst re the sweep's peak in 1 to 15 kHz, in dB (negative). */
    RUB(Target.POSITION),
    /** Loose part. Target: enclosure. Severity: peak of a strike re the sweep's peak in 1 to 15 kHz, in dB (negative). */
    BUZZ(Target.ENCLOSURE),
    /** Weakened magnet. Target: position. Severity: factor on Bl, below 1. */
    MAGNET_WEAK(Target.POSITION),
    /** Driver wired the wrong way round. Target: position. Severity unused. */
    POLARITY_REVERSED(Target.POSITION),
    /** Way of a powered cabinet whose amplifier is dead. Target: position. Severity unused. */
    WAY_DEAD(Target.POSITION),
    /** The lead is not in, or in a dead socket. Target: test point. Severity unused. */
    NOTHING_CONNECTED(Target.TEST_POINT),
    /** The pairs of two test points are exchanged inside the cabinet. Target: test point. Severity unused. */
    PAIRS_SWAPPED(Target.TEST_POINT);

    /** What a fault points at. */
    public enum Target {
        POSITION,
        TEST_POINT,
        ELEMENT,
        ENCLOSURE
    }

    private final Target target;

    FaultKind(Target target) {
        this.target = target;
    }

    /**
     * What a fault of this kind points at.
     *
     * @return kind of target
     */
    public Target target() {
        return target;
    }
}
