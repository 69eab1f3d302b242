package org.docksweep.kiosk.night;

import java.nio.file.Path;

/**
 * How a night is run.
 *
 * @param folder folder of the night; emptied first when {@link DockNight} made it, refused when it is somebody else's
 * @param seed seed of the house, the rig and the truckload
 * @param serviceJar executable jar of the service, or null to run without a service
 * @param realTime whether sweeps take their real time
 */
public record NightOptions(Path folder, long seed, Path serviceJar, boolean realTime) {}
