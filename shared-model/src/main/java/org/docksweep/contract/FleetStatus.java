package org.docksweep.contract;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * What the fleet can do.
 *
 * @param siteName the house
 * @param asOf when this was true
 * @param models counts per cabinet model
 * @param bookings booked dispatches against what is there, by out date
 * @param benchQueue open bench jobs, most urgent first
 * @param faults failures of the last 30 days by driver model
 * @param drifting cabinets on the shelf or out that are on their way to a fault, most pressing first
 */
public record FleetStatus(
        String siteName,
        Instant asOf,
        List<ModelRow> models,
        List<BookingRow> bookings,
        List<BenchJobBody> benchQueue,
        List<FaultRow> faults,
        List<DriftRow> drifting) {

    /**
     * Counts of one model.
     *
     * @param modelCode model
     * @param modelName its name
     * @param ready on the shelf
     * @param out with customers
     * @param bench at the bench
     * @param safetyHold on safety hold
     * @param manualHold on manual hold
     * @param missing missing
     */
    public record ModelRow(
            String modelCode,
            String modelName,
            int ready,
            int out,
            int bench,
            int safetyHold,
            int manualHold,
            int missing) {}

    /**
     * One model of one dispatch.
     *
     * @param outOn day it must leave
     * @param orderNumber order
     * @param customer customer
     * @param modelCode model
     * @param booked how many are booked
     * @param available how many of these the shelf (and what is due back before) can serve, after earlier bookings
     */
    public record BookingRow(
            LocalDate outOn, String orderNumber, String customer, String modelCode, int booked, int available) {}

    /**
     * Failures of one driver model.
     *
     * @param driverModelCode driver model
     * @param checkIns check-ins of positions with this driver model
     * @param failures failures among them
     */
    public record FaultRow(String driverModelCode, int checkIns, int failures) {}
}
