package org.docksweep.kiosk.dock;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.kiosk.fleet.LocalFleet;

/** Which of the open return lists the truck at the dock belongs to: the last one that a scan was on, else the first. */
final class ListAtHand {
    /** Closed here; the service's next copy of the fleet no longer has them. */
    private final Set<UUID> closed = new HashSet<>();

    private UUID id;

    ListAtHand(LocalFleet fleet) {
        id = firstOpen(fleet);
    }

    /** Its id, or null while no list is open. */
    UUID id() {
        return id;
    }

    void take(UUID list) {
        id = list;
    }

    void close(UUID list) {
        closed.add(list);
    }

    void refreshed(LocalFleet fleet) {
        if (id == null || closed.contains(id)) {
            id = firstOpen(fleet);
        }
    }

    Optional<ReturnList> in(LocalFleet fleet) {
        return fleet.openLists().stream()
                .filter(l -> l.id().equals(id) && !closed.contains(id))
                .findFirst();
    }

    private UUID firstOpen(LocalFleet fleet) {
        return fleet.openLists().stream()
                .map(ReturnList::id)
                .filter(list -> !closed.contains(list))
                .findFirst()
                .orElse(null);
    }

    /** The sheet of the night's end says that the list is closed; the closing itself may still be on its way. */
    static ReturnReport asClosed(ReturnReport report) {
        ReturnList open = report.list();
        return new ReturnReport(
                new ReturnList(open.id(), open.orderNumber(), open.customer(), open.dueOn(), true, open.lines()),
                report.asOf(),
                report.back(),
                report.missing(),
                report.unexpected());
    }
}
