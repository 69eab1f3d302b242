package org.docksweep.kiosk.night;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.ReturnReport;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.docksweep.kiosk.spool.OutboxCounts;
import org.docksweep.rigcal.RigCalibration;

/** The end of a night: the list is closed, the service has everything, the sheets are printed. */
final class NightEnd {
    private final NightKiosk kiosk;
    private final NightReport report;

    NightEnd(NightKiosk kiosk, NightReport report) {
        this.kiosk = kiosk;
        this.report = report;
    }

    /** Closes the list, and writes an index of the recordings for whoever judges them again. */
    void close(DockHand hand, Path recordings, RigCalibration calibration) throws InterruptedException {
        ReturnReport back = kiosk.dock().report().orElseThrow();
        report.say(
                "Return list %s: %d of %d back, %d missing, %d unexpected",
                back.list().orderNumber(),
                back.back().size(),
                back.list().lines().size(),
                back.missing().size(),
                back.unexpected().size());
        hand.closeList();
        NightRecordings.index(
                recordings,
                kiosk.spool().snapshot().orElseThrow(),
                calibration,
                kiosk.spool().checkIns(),
                kiosk.recordings());
    }

    /** Waits until the service has everything, and prints the status sheet; fails if the service refused a record. */
    void send(ServiceClient client, Duration within)
            throws IOException, InterruptedException, ServiceProblem, ServiceUnreachable {
        kiosk.awaitSent(within);
        OutboxCounts counts = kiosk.spool().outbox().counts();
        report.say("Outbox: %d sent, %d waiting, %d refused", counts.sent(), counts.waiting(), counts.parked());
        for (var parked : kiosk.spool().outbox().parked()) {
            report.say("  refused: %s: %s", parked.item().path(), parked.words());
        }
        kiosk.papers().statusSheet(client.get(ApiPaths.FLEET_STATUS, FleetStatus.class));
        if (counts.parked() > 0) {
            throw new IOException(counts.parked() + " records were refused by the service");
        }
    }
}
