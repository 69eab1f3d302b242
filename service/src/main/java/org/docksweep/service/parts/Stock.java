package org.docksweep.service.parts;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.PartStock;
import org.docksweep.contract.PartUnit;
import org.docksweep.contract.StockMove;
import org.docksweep.contract.StockMoveBody;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartKind;
import org.docksweep.service.cabinets.Fittings;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.docksweep.service.web.Times;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The stock: what comes, goes, is used up by jobs and comes back repaired. Pieces with a serial are known one by one. */
@Service
@Transactional
public class Stock {
    private static final int MOST_PIECES = 100_000;

    private final PartRows rows;
    private final UnitRows units;
    private final MoveRows moves;
    private final Fittings fittings;
    private final Times times;
    private final Catalogue catalogue;

    Stock(PartRows rows, UnitRows units, MoveRows moves, Fittings fittings, Times times, Catalogue catalogue) {
        this.rows = rows;
        this.units = units;
        this.moves = moves;
        this.fittings = fittings;
        this.times = times;
        this.catalogue = catalogue;
    }

    PutAnswer<PartStock> book(UUID id, StockMoveBody sent) {
        StockMoveBody body = checked(id, sent);
        PartRow row = locked(body.partNumber(), "partNumber");
        String sha256 = StoredJson.sha256(body);
        Optional<MoveRow> before = moves.findById(id);
        if (before.isPresent()) {
            if (!before.get().bodySha256().equals(sha256)) {
                throw Refusal.idReused(
                        "stock move " + id + " is booked already, for part "
                                + before.get().partNumber() + ", and says something else",
                        "Give another move an id of its own; what is booked stays.");
            }
            return new PutAnswer<>(false, catalogue.find(body.partNumber()));
        }
        int change = switch (body.kind()) {
            case RECEIVED -> receive(body);
            case SCRAPPED -> scrap(body, row);
            case COUNTED -> count(body, row);
        };
        book(row, id, body.at(), body.by(), StockMove.Kind.valueOf(body.kind().name()), change, null, sha256);
        return new PutAnswer<>(true, catalogue.find(body.partNumber()));
    }

    private StockMoveBody checked(UUID id, StockMoveBody body) {
        List<String> serials = body.serials() == null ? List.of() : body.serials();
        Check check = new Check()
                .that(id.equals(body.id()), "id", "must be " + id + " as in the address, but is " + body.id())
                .text(body.partNumber(), 40, "partNumber")
                .text(body.by(), 120, "by")
                .present(body.kind(), "kind")
                .optionalText(body.text(), 500, "text");
        times.notInFuture(body.at(), "at", check);
        int least = body.kind() == StockMoveBody.Kind.COUNTED ? 0 : 1;
        check.that(
                        body.quantity() >= least && body.quantity() <= MOST_PIECES,
                        "quantity",
                        "must be from " + least + " to " + MOST_PIECES + ", but is " + body.quantity())
                .that(
                        serials.size() <= Math.max(0, body.quantity()),
                        "serials",
                        "must hold at most one serial per piece: " + serials.size() + " serials for " + body.quantity()
                                + " pieces")
                .that(
                        body.kind() != StockMoveBody.Kind.COUNTED || serials.isEmpty(),
                        "serials",
                        "must be empty for a count");
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < serials.size(); i++) {
            check.text(serials.get(i), 80, "serials[" + i + "]")
                    .that(seen.add(serials.get(i)), "serials[" + i + "]", serials.get(i) + " is given twice");
        }
        check.refuseIfWrong();
        return new StockMoveBody(
                id,
                body.partNumber(),
                StoredJson.cut(body.at()),
                body.by(),
                body.kind(),
                body.quantity(),
                List.copyOf(serials),
                body.text());
    }

    private PartRow locked(String number, String field) {
        catalogue.known(number, field);
        return rows.findLocked(number).orElseThrow();
    }

    private int receive(StockMoveBody body) {
        Part part = catalogue.known(body.partNumber(), "partNumber");
        for (String serial : body.serials()) {
            requireNew(part, serial, "serials");
            units.save(new UnitRow(part.number(), serial, PartUnit.State.IN_STOCK, body.at()));
        }
        units.flush();
        return body.quantity();
    }

    private int scrap(StockMoveBody body, PartRow row) {
        requireEnough(row, body.quantity(), "quantity");
        for (String serial : body.serials()) {
            UnitRow unit = units.findById(new UnitRow.Key(body.partNumber(), serial))
                    .filter(u -> u.state() == PartUnit.State.IN_STOCK)
                    .orElseThrow(() -> Refusal.wrongState(
                            "serials",
                            "serial " + serial + " of part " + body.partNumber() + " is not in stock",
                            "Read the serial again."));
            unit.move(PartUnit.State.SCRAPPED, body.at());
        }
        units.flush();
        requireKnownFit(row, row.inStock() - body.quantity(), "serials");
        return -body.quantity();
    }

    private int count(StockMoveBody body, PartRow row) {
        requireKnownFit(row, body.quantity(), "quantity");
        return body.quantity() - row.inStock();
    }

    /** Pieces known by serial cannot be more than there are. */
    private void requireKnownFit(PartRow row, int stockAfter, String field) {
        long known = units.inStock(row.getId());
        if (known > stockAfter) {
            throw Refusal.wrongState(
                    field,
                    "part " + row.getId() + ": " + known + " pieces are in stock by serial, more than the " + stockAfter
                            + " that would be left",
                    "Say which serials are gone: scrap them by serial.");
        }
    }

    private static void requireEnough(PartRow row, int quantity, String field) {
        if (quantity > row.inStock()) {
            throw Refusal.wrongState(
                    field,
                    "part " + row.getId() + ": " + row.inStock() + " in stock, " + quantity + " wanted",
                    "Count the shelf and book what is there, or let the job wait for the part.");
        }
    }

    private void book(
            PartRow row, UUID id, Instant at, String by, StockMove.Kind kind, int change, JobCode job, String sha256) {
        row.change(change);
        rows.flush();
        moves.saveAndFlush(new MoveRow(
                new StockMove(id, row.getId(), at, by, kind, change, row.inStock(), job), times.now(), sha256));
    }

    /** A serial that is on record anywhere is not that of a new piece. */
    private void requireNew(Part part, String serial, String field) {
        units.findById(new UnitRow.Key(part.number(), serial)).ifPresent(u -> {
            throw used(part, serial, field, stateWords(u.state()));
        });
        if (part.kind() == PartKind.DRIVER_UNIT) {
            fittings.placeOf(part.fitsDriverModels().get(0), serial).ifPresent(stay -> {
                throw used(part, serial, field, "it sits in " + stay.tag() + " at " + stay.positionCode());
            });
        } else if (part.kind().renewsMovingPart()) {
            fittings.staysOfDiaphragm(part.fitsDriverModels(), serial).stream()
                    .reduce((a, b) -> b)
                    .ifPresent(stay -> {
                        throw used(
                                part,
                                serial,
                                field,
                                (stay.removedAt() == null ? "it sits in " : "it was taken out of ") + stay.tag()
                                        + " at " + stay.positionCode());
                    });
            units.holding(part.number(), serial).stream().findFirst().ifPresent(u -> {
                throw used(
                        part, serial, field, "it sits in the spare " + u.unit().serial());
            });
        }
    }

    private static String stateWords(PartUnit.State state) {
        return switch (state) {
            case IN_STOCK -> "it is in stock already";
            case AWAITING_REPAIR -> "it awaits repair and is not proved";
            case FITTED -> "it was fitted before";
            case SCRAPPED -> "it was scrapped";
        };
    }

    private static Refusal used(Part part, String serial, String field, String where) {
        return Refusal.wrongState(
                field,
                "serial " + serial + " of part " + part.number() + " was used before: " + where,
                "Read the serial again; one piece is fitted once.");
    }

    /**
     * Books pieces out for a job or a spare repair. The caller has checked that they fit.
     *
     * @param id identity of the move
     * @param fitted what is put in
     * @param at when
     * @param by person
     * @param job job, or null for a spare repair
     * @return what is known of the moving part of a whole driver that was a repaired spare; nulls otherwise
     * @throws Refusal if there are not enough, or the serial is missing, used before, or not in stock
     */
    public MovingPart consume(UUID id, PartExchangeBody.Fitted fitted, Instant at, String by, JobCode job) {
        PartRow row = locked(fitted.partNumber(), "fitted.partNumber");
        Part part = row.part();
        requireEnough(row, fitted.quantity(), "fitted.quantity");
        MovingPart inside = new MovingPart(null, null, null, null);
        if (fitted.serial() != null) {
            inside = takePiece(part, row, fitted.serial(), at);
        } else if (part.serialised()) {
            throw Refusal.badField(
                    "fitted.serial",
                    "every piece of part " + part.number() + " carries a serial, but none was given",
                    "Read it from the part or its label.");
        }
        book(row, id, at, by, StockMove.Kind.FITTED, -fitted.quantity(), job, StoredJson.sha256(fitted));
        requireKnownFit(row, row.inStock(), "fitted.serial");
        return inside;
    }

    private MovingPart takePiece(Part part, PartRow row, String serial, Instant at) {
        UnitRow unit = units.findById(new UnitRow.Key(part.number(), serial)).orElse(null);
        if (unit == null) {
            requireNew(part, serial, "fitted.serial");
            if (units.inStock(part.number()) >= row.inStock()) {
                throw Refusal.wrongState(
                        "fitted.serial",
                        "serial " + serial + " of part " + part.number() + " is not in stock: all " + row.inStock()
                                + " pieces have other serials",
                        "Read the serial again; when it is right, book the piece as received first.");
            }
            unit = units.save(new UnitRow(part.number(), serial, PartUnit.State.FITTED, at));
        } else if (unit.state() == PartUnit.State.IN_STOCK) {
            unit.move(PartUnit.State.FITTED, at);
        } else {
            throw used(part, serial, "fitted.serial", stateWords(unit.state()));
        }
        units.flush();
        return unit.movingPart();
    }

    /**
     * Notes what becomes of a whole driver that was taken out.
     *
     * @param part the whole driver in the catalogue
     * @param serial its serial
     * @param inside what moves in it
     * @param keep whether it is kept for repair rather than scrapped
     * @param at when
     */
    public void takenOut(Part part, String serial, MovingPart inside, boolean keep, Instant at) {
        UnitRow unit = units.findById(new UnitRow.Key(part.number(), serial))
                .orElseGet(() -> new UnitRow(part.number(), serial, PartUnit.State.FITTED, at));
        unit.move(keep ? PartUnit.State.AWAITING_REPAIR : PartUnit.State.SCRAPPED, at);
        unit.holds(inside);
        units.saveAndFlush(unit);
    }

    /**
     * Notes that a moving part with a serial was taken out for good.
     *
     * @param partNumber its part number, or null when not known
     * @param serial its serial, or null
     * @param at when
     */
    public void scrapMovingPart(String partNumber, String serial, Instant at) {
        if (partNumber != null && serial != null) {
            units.findById(new UnitRow.Key(partNumber, serial))
                    .ifPresent(unit -> unit.move(PartUnit.State.SCRAPPED, at));
        }
    }

    /**
     * What moves in a driver that awaits repair.
     *
     * @param part the whole driver in the catalogue
     * @param serial its serial
     * @return its moving part
     * @throws Refusal if it does not await repair
     */
    public MovingPart awaitingRepair(Part part, String serial) {
        return units.findById(new UnitRow.Key(part.number(), serial))
                .filter(u -> u.state() == PartUnit.State.AWAITING_REPAIR)
                .orElseThrow(() -> Refusal.wrongState(
                        "driverSerial",
                        "driver " + serial + " of part " + part.number() + " does not await repair",
                        "Read the serial again; a driver is repaired after a job has taken it out and kept it."))
                .movingPart();
    }

    /**
     * Puts a repaired and proved driver into stock.
     *
     * @param id identity of the move
     * @param part the whole driver in the catalogue
     * @param serial its serial
     * @param inside what moves in it now
     * @param at when
     * @param by person
     */
    public void repaired(UUID id, Part part, String serial, MovingPart inside, Instant at, String by) {
        UnitRow unit = units.findById(new UnitRow.Key(part.number(), serial)).orElseThrow();
        unit.holds(inside);
        unit.repair(at);
        units.flush();
        book(
                locked(part.number(), "partNumber"),
                id,
                at,
                by,
                StockMove.Kind.REPAIRED,
                1,
                null,
                StoredJson.sha256(serial));
    }
}
