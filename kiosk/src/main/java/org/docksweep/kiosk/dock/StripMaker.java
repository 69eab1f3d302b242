package org.docksweep.kiosk.dock;

import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.spool.OutboxCounts;
import org.docksweep.kiosk.spool.SpoolException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The line at the top: site, rig, what waits to be sent, who works, what time it is. Lives on the dock's thread only. */
final class StripMaker {
    private static final Logger LOG = LoggerFactory.getLogger(StripMaker.class);

    private final DockParts parts;
    private OutboxCounts counts = new OutboxCounts(0, 0, 0);

    StripMaker(DockParts parts) {
        this.parts = parts;
    }

    DockState.Strip strip(LocalFleet fleet) {
        var standing = parts.standing().get();
        OutboxCounts outbox = counts();
        return new DockState.Strip(
                fleet.snapshot().siteName(),
                standing.words(),
                standing.state(),
                outbox.notAtService(),
                outbox.parked(),
                parts.link().trouble(),
                parts.settings().operator(),
                parts.clock().instant());
    }

    /** While the disk refuses, what was counted last stays; what is not stored then is told where it is not stored. */
    private OutboxCounts counts() {
        try {
            counts = parts.spool().outbox().counts();
        } catch (SpoolException e) {
            LOG.warn("The outbox cannot be counted: {}", e.getMessage());
        }
        return counts;
    }
}
