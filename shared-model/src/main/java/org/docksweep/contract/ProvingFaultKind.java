package org.docksweep.contract;

/**
 * What may be wrong with a return of a proving run, in the terms in which its figures are promised. Each constant says
 * what target and severity mean; how the fault acts is the simulator's business.
 */
public enum ProvingFaultKind {
    /** Driver open, alone in its way. Target: position. No severity. */
    DRIVER_OPEN(Group.HARD),
    /** One of several drivers in parallel open. Target: position. No severity. */
    ONE_OF_TWO_OPEN(Group.HARD),
    /** Short across the contacts. Target: test point. Severity: what is left, in ohm. */
    TERMINALS_SHORTED(Group.HARD),
    /** Coil shorted at the driver. Target: position. Severity: what is left, in ohm. */
    COIL_SHORTED(Group.HARD),
    /** Replacement of another rated impedance. Target: position. Severity: factor, 2 or 0.5. */
    WRONG_IMPEDANCE(Group.HARD),
    /** Coil that cannot move. Target: position. No severity. */
    SEIZED(Group.HARD),
    /** Crossover part open. Target: element. No severity. */
    PART_OPEN(Group.HARD),
    /** Crossover part shorted. Target: element. No severity. */
    PART_SHORTED(Group.HARD),
    /** Resistance in series with a driver. Target: position. Severity: share of that driver's rated Re. */
    CONTACT_RESISTANCE(Group.SOFT),
    /** Shorted turns. Target: position. Severity: share of the turns. */
    SHORTED_TURNS(Group.SOFT),
    /** Crossover part off its value. Target: element. Severity: share of the value, either sign. */
    PART_OFF_VALUE(Group.SOFT),
    /** Air leak. Target: enclosure. Severity: factor on the leakage loss Q, below 1. */
    LEAK(Group.SOFT),
    /** Port stuffed shut. Target: enclosure. No severity. */
    PORT_BLOCKED(Group.SOFT),
    /** Way that has lost level. Target: position. Severity: loss in dB. */
    WAY_WEAK(Group.SOFT),
    /** Driver wired the wrong way round. Target: position. No severity. */
    POLARITY(Group.SOFT),
    /** Rubbing coil. Target: position. Severity: peak of its bursts re the sweep's peak in 1 to 15 kHz, in dB. */
    RUB(Group.SOFT),
    /** Weakened magnet. Target: position. Severity: share of Bl that is lost. */
    MAGNET_WEAK(Group.SOFT),
    /** The lead is not in. Target: test point. No severity. */
    NOTHING_CONNECTED(Group.NOT_A_FAULT),
    /** The pairs of a bi-amped cabinet are exchanged. Target: test point. No severity. */
    PAIRS_SWAPPED(Group.NOT_A_FAULT),
    /** A healthy cabinet of another model under this label. Target: the other model. No severity. */
    WRONG_LABEL(Group.NOT_A_FAULT),
    /** A healthy cabinet of a model for which no reference was taught. Target: its model. No severity. */
    UNTAUGHT_MODEL(Group.NOT_A_FAULT);

    /** Which promise covers a kind. */
    public enum Group {
        /** Must practically never be missed. */
        HARD,
        /** Promised at fixed severities. */
        SOFT,
        /** Nothing is broken: a person is asked to do something. */
        NOT_A_FAULT
    }

    private final Group group;

    ProvingFaultKind(Group group) {
        this.group = group;
    }

    /**
     * Which promise covers it.
     *
     * @return group
     */
    public Group group() {
        return group;
    }
}
