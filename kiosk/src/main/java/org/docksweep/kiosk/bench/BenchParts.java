package org.docksweep.kiosk.bench;

import java.util.function.Supplier;
import org.docksweep.kiosk.dock.DockParts;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.listening.Listening;
import org.docksweep.kiosk.service.ServiceClient;

/**
 * What the bench works with. It closes none of these.
 *
 * @param dock rig, gate, recordings, papers, clock and person: the same as the dock's
 * @param client way to the service
 * @param fleet fleet as known now
 * @param benchName name of this bench
 * @param listening lets a person hear what was heard besides the sweep
 */
public record BenchParts(
        DockParts dock, ServiceClient client, Supplier<LocalFleet> fleet, String benchName, Listening listening) {}
