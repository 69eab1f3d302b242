package org.docksweep.contract;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.PartSource;

/**
 * The life of one moving part in one driver: the row that reliability is counted from.
 *
 * @param id identity of the first stay
 * @param tag cabinet it was fitted in, or sits in
 * @param positionCode position
 * @param driverModelCode driver model
 * @param driverSerial serial of the unit, or null
 * @param partNumber part number, or null when not known
 * @param partSerial serial of the part, or null
 * @param source original or aftermarket, or null when not known
 * @param fittedOn day it was fitted, or null when not known
 * @param endedAt when it was taken out, or null while in service
 * @param failed whether it was taken out because it failed; false while in service, or when taken out healthy
 * @param cause confirmed cause, or null
 * @param charge who bore it, or null
 * @param jobCode job that took it out, or null
 * @param lastPassAt last check-in that passed before it failed: the failure lies between this and endedAt; or null
 * @param returnCount check-ins of its cabinet while it was in
 * @param unitCostCents cost of the part, or null
 */
public record PartLife(
        UUID id,
        AssetTag tag,
        String positionCode,
        String driverModelCode,
        String driverSerial,
        String partNumber,
        String partSerial,
        PartSource source,
        LocalDate fittedOn,
        Instant endedAt,
        boolean failed,
        ConfirmedCause cause,
        ChargeClass charge,
        JobCode jobCode,
        Instant lastPassAt,
        int returnCount,
        Integer unitCostCents) {}
