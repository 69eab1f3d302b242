package org.docksweep.service.bench;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.docksweep.contract.FitAnswer;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;
import org.docksweep.service.cabinets.Fittings;
import org.docksweep.service.parts.Catalogue;
import org.docksweep.service.parts.MovingPart;
import org.docksweep.service.parts.Stock;
import org.docksweep.service.site.Site;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Component;

/** Carries out a part exchange: checks that it can be, books the stock, moves drivers and their moving parts. */
@Component
class Exchanges {
    private final Catalogue catalogue;
    private final Stock stock;
    private final Fittings fittings;
    private final JobEvents events;
    private final Site site;

    Exchanges(Catalogue catalogue, Stock stock, Fittings fittings, JobEvents events, Site site) {
        this.catalogue = catalogue;
        this.stock = stock;
        this.fittings = fittings;
        this.events = events;
        this.site = site;
    }

    void carryOut(BenchJob job, PartExchangeBody exchange) {
        Part part = exchange.fitted() == null
                ? null
                : catalogue.known(exchange.fitted().partNumber(), "fitted.partNumber");
        InstalledDriver there = exchange.positionCode() == null
                ? null
                : fittings.at(job.tag(), exchange.positionCode()).orElse(null);
        requireThere(job, exchange, there);
        requirePossible(job, exchange, part, there);
        if (part != null) {
            requireFit(job, exchange, part);
        }
        MovingPart inside = part == null
                ? null
                : stock.consume(exchange.id(), exchange.fitted(), exchange.at(), exchange.by(), job.jobCode());
        Timeline.Stay out = null;
        if (exchange.removed() != null && exchange.removed().what() != PartExchangeBody.What.OTHER) {
            out = fittings.takeOut(job.tag(), exchange.positionCode(), exchange.at(), job.jobCode());
            settle(job, exchange, out);
        }
        if (part != null) {
            putIn(job, exchange, part, inside, out);
        }
        events.exchanged(job, exchange, out);
    }

    /** Nothing can be taken out that is not there. */
    private static void requireThere(BenchJob job, PartExchangeBody exchange, InstalledDriver there) {
        PartExchangeBody.Removed removed = exchange.removed();
        if (removed == null || removed.what() == PartExchangeBody.What.OTHER) {
            return;
        }
        String place = job.tag() + " at " + exchange.positionCode();
        if (there == null) {
            throw Refusal.wrongState(
                    "removed",
                    "nothing sits in " + place + ", so nothing can be taken out of it",
                    "Check the position; when it is right, have a manager enter the driver that was there.");
        }
        boolean unit = removed.what() == PartExchangeBody.What.DRIVER_UNIT;
        String known = unit ? there.driverSerial() : there.diaphragmSerial();
        if (known != null && !known.equals(removed.serial())) {
            throw Refusal.wrongState(
                    "removed.serial",
                    (unit ? "driver " : "diaphragm ") + known + " is on record in " + place + ", not "
                            + (removed.serial() == null ? "one without a serial" : removed.serial()),
                    "Read the serial again; when the record is wrong, a manager corrects the cabinet first.");
        }
    }

    private static void requirePossible(BenchJob job, PartExchangeBody exchange, Part part, InstalledDriver there) {
        PartExchangeBody.What out =
                exchange.removed() == null ? null : exchange.removed().what();
        boolean movingPart = part != null && (part.kind() == PartKind.DIAPHRAGM || part.kind() == PartKind.RECONE_KIT);
        boolean unit = part != null && part.kind() == PartKind.DRIVER_UNIT;
        String place = job.tag() + " at " + exchange.positionCode();
        if (movingPart && there == null && exchange.positionCode() != null) {
            throw Refusal.wrongState(
                    "positionCode", "no driver sits in " + place, "Fit a driver first, or correct the position.");
        }
        if (movingPart && exchange.positionCode() != null && out != PartExchangeBody.What.DIAPHRAGM) {
            throw Refusal.badField(
                    "removed",
                    "part " + part.number() + " takes the place of the moving part in " + place
                            + "; that must be taken out in the same record",
                    "Give removed with what DIAPHRAGM and the serial of the old part.");
        }
        if (out == PartExchangeBody.What.DIAPHRAGM && !movingPart) {
            throw Refusal.badField(
                    "fitted",
                    "a driver without its moving part cannot stay in " + place,
                    "Record the old and the new moving part together, or take the whole driver out.");
        }
        if (unit && there != null && out != PartExchangeBody.What.DRIVER_UNIT) {
            throw Refusal.wrongState(
                    "removed",
                    "driver " + there.driverModelCode() + " "
                            + Objects.requireNonNullElse(there.driverSerial(), "without a serial") + " sits in "
                            + place,
                    "Take it out in the same record.");
        }
        if (unit && exchange.fitted().serial() == null) {
            throw Refusal.badField(
                    "fitted.serial", "a whole driver is fitted with its serial", "Read it from the driver.");
        }
    }

    private void requireFit(BenchJob job, PartExchangeBody exchange, Part part) {
        FitAnswer fit = catalogue.fit(part, job.tag(), exchange.positionCode(), exchange.elementId());
        if (!fit.fits()) {
            throw doesNotFit(fit.reason());
        }
    }

    static Refusal doesNotFit(Reason reason) {
        return Refusal.of(
                ProblemTypes.PART_DOES_NOT_FIT,
                "Part does not fit",
                409,
                Reasons.text(reason, Locale.ENGLISH),
                "Put it back and take a part that fits; nothing was booked.");
    }

    private void settle(BenchJob job, PartExchangeBody exchange, Timeline.Stay out) {
        PartExchangeBody.Removed removed = exchange.removed();
        if (removed.what() == PartExchangeBody.What.DIAPHRAGM) {
            stock.scrapMovingPart(out.partNumber(), out.diaphragmSerial(), exchange.at());
            return;
        }
        boolean keep = removed.fate() == PartExchangeBody.Fate.KEPT_FOR_REPAIR;
        Optional<Part> unit = catalogue.driverUnit(out.driverModelCode(), removed.serial());
        if (keep && unit.isEmpty()) {
            throw Refusal.badField(
                    "removed.fate",
                    "driver model " + out.driverModelCode() + " is no whole driver of the catalogue, so it cannot"
                            + " become a spare",
                    "Have a manager enter it as a part of kind DRIVER_UNIT first, or scrap it.");
        }
        String serial = removed.serial();
        if (unit.isPresent() && serial != null) {
            stock.takenOut(
                    unit.get(),
                    serial,
                    new MovingPart(out.partNumber(), out.diaphragmSerial(), out.diaphragmSource(), out.installedOn()),
                    keep,
                    exchange.at());
            events.unitTakenOut(job, exchange, out.driverModelCode(), serial, keep);
        }
    }

    private void putIn(BenchJob job, PartExchangeBody exchange, Part part, MovingPart inside, Timeline.Stay out) {
        LocalDate day = LocalDate.ofInstant(exchange.at(), site.zone());
        String serial = exchange.fitted().serial();
        switch (part.kind()) {
            case DIAPHRAGM, RECONE_KIT ->
                fittings.putIn(
                        job.tag(),
                        new InstalledDriver(
                                exchange.positionCode(),
                                out.driverModelCode(),
                                out.driverSerial(),
                                serial,
                                part.source(),
                                day),
                        part.number(),
                        job.jobCode());
            case DRIVER_UNIT ->
                fittings.putIn(
                        job.tag(),
                        new InstalledDriver(
                                exchange.positionCode(),
                                part.fitsDriverModels().get(0),
                                serial,
                                inside.serial(),
                                inside.source() == null ? part.source() : inside.source(),
                                day),
                        inside.partNumber(),
                        job.jobCode());
            case CROSSOVER_PART, CONNECTOR, SEAL, MAGNETIC_FLUID, OTHER -> {
                // Belongs to no position that is kept track of: the stock move and the event are its record.
            }
        }
    }
}
