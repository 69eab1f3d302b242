package org.docksweep.suspect;

import java.util.List;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;

/** What tells faults apart that the sweep cannot. */
public enum Split {
    /** Another cable, or the plug cleaned and set again, and one more sweep: a fault of the cabinet stays. */
    SWAP_CABLE,
    /** A sweep 20 dB higher, or a tone while the lead is flexed: a bad contact changes, a resistor does not. */
    FLEX_OR_LOUDER,
    /** Ohms and a sweep at the driver's own terminals, with its leads off. */
    MEASURE_AT_DRIVER,
    /** One lead of the part lifted and the part measured. */
    MEASURE_PART,
    /** An ear near box and drivers: leaks hiss, weak drivers are quiet. */
    LISTEN;

    static Split of(List<AmbiguityGroups.Member> members, TestPoint point) {
        boolean plug =
                members.stream().anyMatch(m -> m.kind() == FaultKind.CONTACT_RESISTANCE && m.positionCode() == null);
        boolean contact = members.stream().anyMatch(m -> m.kind() == FaultKind.CONTACT_RESISTANCE);
        boolean resistor = members.stream()
                .anyMatch(m -> m.kind() == FaultKind.PART_DRIFTED
                        && AmbiguityGroups.element(point, m.elementId())
                                .filter(NetworkElement.Resistor.class::isInstance)
                                .isPresent());
        boolean box = members.stream().anyMatch(m -> m.kind() == FaultKind.LEAK || m.kind() == FaultKind.PORT_BLOCKED);
        boolean driver = members.stream().anyMatch(m -> m.positionCode() != null && m.elementId() == null);
        if (plug) {
            return SWAP_CABLE;
        }
        if (contact && resistor) {
            return FLEX_OR_LOUDER;
        }
        if (box) {
            return LISTEN;
        }
        return driver ? MEASURE_AT_DRIVER : MEASURE_PART;
    }
}
