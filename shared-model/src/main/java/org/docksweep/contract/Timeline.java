package org.docksweep.contract;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.Reading;

/**
 * The life of a cabinet, a position, a driver unit or a diaphragm. Lists are newest first.
 *
 * @param subject what it is the life of
 * @param asOf when this was true
 * @param stays where a driver or its moving part sat, and since when; all stays in the cabinet for a cabinet
 * @param entries what happened
 * @param trend readings of its measurements
 * @param lastOrder the order it was out on last: who had it when it broke; null when none is on record
 */
public record Timeline(
        Subject subject,
        Instant asOf,
        List<Stay> stays,
        List<Entry> entries,
        List<TrendPoint> trend,
        LastOrder lastOrder) {

    /**
     * What a timeline is about; what does not apply is null.
     *
     * @param tag cabinet
     * @param positionCode position
     * @param driverModelCode driver model
     * @param driverSerial serial of the driver unit
     * @param diaphragmSerial serial of the diaphragm or recone kit
     */
    public record Subject(
            AssetTag tag, String positionCode, String driverModelCode, String driverSerial, String diaphragmSerial) {}

    /**
     * A driver with one moving part in one place. A new diaphragm begins a new stay of the same driver.
     *
     * @param tag cabinet, or null while a spare
     * @param positionCode position, or null while a spare
     * @param driverModelCode driver model
     * @param driverSerial serial of the unit, or null
     * @param diaphragmSerial serial of the moving part, or null
     * @param diaphragmSource its source, or null when not known
     * @param partNumber part number of what was fitted, or null when not known
     * @param installedOn day it was fitted, or null when not known
     * @param removedAt when it was taken out, or null while it is there
     * @param fittedByJob job that fitted it, or null
     * @param removedByJob job that took it out, or null
     */
    public record Stay(
            AssetTag tag,
            String positionCode,
            String driverModelCode,
            String driverSerial,
            String diaphragmSerial,
            PartSource diaphragmSource,
            String partNumber,
            LocalDate installedOn,
            Instant removedAt,
            JobCode fittedByJob,
            JobCode removedByJob) {}

    /**
     * Something that happened.
     *
     * @param at when
     * @param tag cabinet, or null when a spare is concerned
     * @param positionCode position, or null for the whole cabinet
     * @param kind what kind of event
     * @param by person or kiosk
     * @param text in words
     */
    public record Entry(
            Instant at, AssetTag tag, String positionCode, HistoryEvent.Kind kind, String by, Reason text) {}

    /**
     * A reading of a past measurement.
     *
     * @param at when it was taken
     * @param checkInId check-in it belongs to, or null for a bench proof
     * @param reading the reading with its limits and state
     */
    public record TrendPoint(Instant at, UUID checkInId, Reading reading) {}

    /**
     * An order a cabinet was out on.
     *
     * @param orderNumber order
     * @param customer customer
     * @param at when it was sent out, or checked in against the order
     */
    public record LastOrder(String orderNumber, String customer, Instant at) {}
}
