package org.docksweep.kiosk.teaching;

import java.util.function.Supplier;
import org.docksweep.kiosk.dock.DockParts;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.service.ServiceClient;

/**
 * What the fleet page works with. It closes none of these.
 *
 * @param dock rig, gate, recordings, clock and person: the same as the dock's
 * @param client way to the service, with the kiosk's own token
 * @param fleet fleet as known now
 */
public record TeachingParts(DockParts dock, ServiceClient client, Supplier<LocalFleet> fleet) {}
