package org.docksweep.contract;

import java.time.LocalDate;
import org.docksweep.fleet.PartSource;

/**
 * The driver that sits in a position.
 *
 * @param positionCode position of the cabinet model
 * @param driverModelCode driver model fitted
 * @param driverSerial serial of the driver unit
 * @param diaphragmSerial serial of the diaphragm or recone kit, or null where the part carries none
 * @param diaphragmSource source of the diaphragm or recone kit
 * @param installedOn day it was fitted
 */
public record InstalledDriver(
        String positionCode,
        String driverModelCode,
        String driverSerial,
        String diaphragmSerial,
        PartSource diaphragmSource,
        LocalDate installedOn) {}
