package org.docksweep.service.parts;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.FitAnswer;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.Page;
import org.docksweep.contract.PartStock;
import org.docksweep.contract.PartUnit;
import org.docksweep.contract.StockMove;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartFit;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.Reason;
import org.docksweep.service.cabinets.Fittings;
import org.docksweep.service.imports.CsvTable;
import org.docksweep.service.models.Models;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Paging;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The catalogue: parts, what is there of them, and what fits where. */
@Service
@Transactional
public class Catalogue {
    private final PartRows rows;
    private final UnitRows units;
    private final MoveRows moves;
    private final Models models;
    private final Fittings fittings;

    Catalogue(PartRows rows, UnitRows units, MoveRows moves, Models models, Fittings fittings) {
        this.rows = rows;
        this.units = units;
        this.moves = moves;
        this.models = models;
        this.fittings = fittings;
    }

    @Transactional(readOnly = true)
    List<PartStock> all(String fitsDriverModel) {
        Map<String, List<PartUnit>> byPart =
                units.newestFirst().stream().map(UnitRow::unit).collect(Collectors.groupingBy(PartUnit::partNumber));
        return rows.findAllByOrderByNumber().stream()
                .map(r -> new PartStock(r.part(), r.inStock(), byPart.getOrDefault(r.getId(), List.of())))
                .filter(s ->
                        fitsDriverModel == null || s.part().fitsDriverModels().contains(fitsDriverModel))
                .toList();
    }

    @Transactional(readOnly = true)
    PartStock find(String number) {
        PartRow row = rows.findById(number)
                .orElseThrow(() -> Refusal.notFound(
                        "number",
                        "there is no part " + CsvTable.printable(number) + " in the catalogue",
                        "Check the number; when it is right, a manager enters the part first."));
        return new PartStock(
                row.part(),
                row.inStock(),
                units.of(number).stream().map(UnitRow::unit).toList());
    }

    /** Enters a part or replaces its description. */
    PutAnswer<Part> put(String number, Part part) {
        Check check = new Check()
                .that(
                        number.equals(part.number()),
                        "number",
                        "must be " + number + " as in the address, but is " + part.number())
                .that(
                        part.number().matches("[A-Za-z0-9][A-Za-z0-9._-]{0,39}"),
                        "number",
                        "must be 1 to 40 letters, digits, dots, hyphens or underscores")
                .text(part.name(), 200, "name");
        Set<String> drivers = models.driverModelCodes();
        part.fitsDriverModels()
                .forEach(d -> check.that(
                        drivers.contains(d),
                        "fitsDriverModels",
                        "there is no driver model " + d + " in the model book"));
        Set<String> cabinets = models.cabinetModelCodes();
        part.fitsCabinetModels()
                .forEach(c -> check.that(
                        cabinets.contains(c),
                        "fitsCabinetModels",
                        "there is no cabinet model " + c + " in the model book"));
        check.refuseIfWrong();
        Optional<PartRow> before = rows.findLocked(number);
        if (before.isEmpty()) {
            rows.saveAndFlush(new PartRow(part));
            return new PutAnswer<>(true, part);
        }
        if (!before.get().says(part)) {
            before.get().replace(part);
        }
        return new PutAnswer<>(false, part);
    }

    /**
     * A part.
     *
     * @param number its number
     * @param field field that named it, for the refusal
     * @return the part
     * @throws Refusal if it is not in the catalogue
     */
    @Transactional(readOnly = true)
    public Part known(String number, String field) {
        return (number == null ? Optional.<PartRow>empty() : rows.findById(number))
                .orElseThrow(() -> Refusal.badField(
                        field,
                        "there is no part " + CsvTable.printable(String.valueOf(number)) + " in the catalogue",
                        "Check the number on the package; when it is right, a manager enters the part first."))
                .part();
    }

    /**
     * The part of the catalogue that a driver unit is a piece of: the one it came from, else the first by number.
     *
     * @param driverModelCode driver model
     * @param serial its serial, or null
     * @return the part; empty when there is none
     */
    @Transactional(readOnly = true)
    public Optional<Part> driverUnit(String driverModelCode, String serial) {
        List<Part> wholeDrivers = rows.findAllByOrderByNumber().stream()
                .map(PartRow::part)
                .filter(p ->
                        p.kind() == PartKind.DRIVER_UNIT && p.fitsDriverModels().contains(driverModelCode))
                .toList();
        return wholeDrivers.stream()
                .filter(p -> serial != null && units.existsById(new UnitRow.Key(p.number(), serial)))
                .findFirst()
                .or(() -> wholeDrivers.stream().findFirst());
    }

    /**
     * Costs of the parts.
     *
     * @return cost of one piece in hundredths of the house's currency by part number, where known
     */
    @Transactional(readOnly = true)
    public Map<String, Integer> unitCostsCents() {
        return rows.findAllByOrderByNumber().stream()
                .map(PartRow::part)
                .filter(p -> p.unitCostCents() != null)
                .collect(Collectors.toMap(Part::number, Part::unitCostCents));
    }

    /**
     * Whether a part fits a place.
     *
     * @param part part
     * @param tag cabinet
     * @param positionCode position, or null
     * @param elementId crossover part to be replaced, or null
     * @return yes or no, and why
     * @throws Refusal if there is no such cabinet or position
     */
    @Transactional(readOnly = true)
    public FitAnswer fit(Part part, AssetTag tag, String positionCode, String elementId) {
        CabinetBody cabinet = fittings.cabinet(tag);
        CabinetModel model = models.cabinetModel(cabinet.modelCode(), "tag");
        DriverPosition position = null;
        DriverModel driver = null;
        if (positionCode != null) {
            position = position(model, positionCode);
            String belongs = position.driverModelCode();
            driver = models.driverModel(
                    fittings.at(tag, positionCode)
                            .map(InstalledDriver::driverModelCode)
                            .orElse(belongs),
                    "position");
        }
        return PartFit.refusal(part, new PartFit.Place(model, position, driver, elementId))
                .map(reason -> new FitAnswer(false, reason))
                .orElseGet(() -> new FitAnswer(true, Reason.of("part-fit-ok", part.number())));
    }

    private static DriverPosition position(CabinetModel model, String positionCode) {
        return model.positions().stream()
                .filter(p -> p.code().equals(positionCode))
                .findFirst()
                .orElseThrow(() -> Refusal.badField(
                        "positionCode",
                        "model " + model.code() + " has positions "
                                + model.positions().stream()
                                        .map(DriverPosition::code)
                                        .toList() + ", but this is "
                                + CsvTable.printable(positionCode),
                        "Name a position of the cabinet."));
    }

    @Transactional(readOnly = true)
    Page<StockMove> moves(String number, String after, int limit) {
        Limit most = Limit.of(Paging.checked(limit) + 1);
        find(number);
        List<MoveRow> found;
        if (after.isEmpty()) {
            found = moves.newest(number, most);
        } else {
            String[] parts = after.split("~", 2);
            try {
                found = moves.newestAfter(
                        number, Instant.parse(parts[0]), UUID.fromString(parts.length == 2 ? parts[1] : ""), most);
            } catch (DateTimeParseException | IllegalArgumentException e) {
                throw Refusal.badField(
                        "after", "after must be \"next\" of the page before", "Leave it out for the first page.");
            }
        }
        return Paging.page(found, limit, MoveRow::move, MoveRow::key);
    }
}
