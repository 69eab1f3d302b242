package org.docksweep.kiosk.dock;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.docksweep.contract.CheckInBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Verdict;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;

/**
 * Watches for a lead that was changed since the calibration: what it has in series then fails cabinet after cabinet for the contact
 * of their plugs, which sockets do not do. Lives on the dock's thread only.
 */
final class LeadWatch {
    /** Bad sockets in a row, of different cabinets: prior weight 0.002 each (common practice, no source), so two are no chance. */
    private static final int TOO_MANY = 2;

    private final Set<AssetTag> inARow = new HashSet<>();

    /**
     * Takes a finished check-in in.
     *
     * @return what to say of the lead; empty while nothing speaks against it
     */
    Optional<Reason> seen(CheckInBody body) {
        if (body.verdict() == Verdict.PASS) {
            inARow.clear();
        } else if (body.verdict() == Verdict.FAIL && accusesThePlug(body.suspects())) {
            inARow.add(body.tag());
        }
        return inARow.size() < TOO_MANY
                ? Optional.empty()
                : Optional.of(Reason.of("dock-lead-changed", Integer.toString(inARow.size())));
    }

    private static boolean accusesThePlug(List<Suspect> suspects) {
        return !suspects.isEmpty()
                && suspects.get(0).kind() == FaultKind.CONTACT_RESISTANCE
                && suspects.get(0).positionCode() == null
                && suspects.get(0).elementId() == null;
    }
}
