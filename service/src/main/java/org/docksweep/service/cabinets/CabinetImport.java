package org.docksweep.service.cabinets;

import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.ImportReceipt;
import org.docksweep.contract.OrderedId;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Reason;
import org.docksweep.service.imports.CsvTable;
import org.docksweep.service.models.Models;
import org.docksweep.service.store.StoredJson;
import org.springframework.stereotype.Component;

/** Imports cabinets from CSV, all or nothing. A cabinet that is there already must say the same. */
@Component
class CabinetImport {
    private static final List<String> NEEDED = List.of("tag", "model");
    private static final Set<String> OPTIONAL = Set.of("shelf_place", "status", "safety_test_due");
    private static final int ROWS_AT_ONCE = 500;

    private final Cabinets cabinets;
    private final Models models;
    private final EntityManager entities;
    private final Clock clock;

    CabinetImport(Cabinets cabinets, Models models, EntityManager entities, Clock clock) {
        this.cabinets = cabinets;
        this.models = models;
        this.entities = entities;
        this.clock = clock;
    }

    /** Runs within the caller's transaction. */
    ImportReceipt run(byte[] file, String contentType, String by) {
        CsvTable table = CsvTable.read(file, contentType, NEEDED, OPTIONAL);
        List<CabinetBody> read = parse(table);
        Map<String, Cabinet> before = existing(read);
        List<CabinetBody> fresh = new ArrayList<>();
        for (int i = 0; i < read.size(); i++) {
            CabinetBody body = read.get(i);
            Cabinet cabinet = body == null ? null : before.get(body.tag().value());
            if (body != null && cabinet == null) {
                fresh.add(body);
            } else if (cabinet != null && !says(cabinet, body)) {
                table.error(
                        table.lines().get(i).number(),
                        "tag",
                        "cabinet " + body.tag() + " is in the fleet already, as " + cabinet.modelCode() + " at "
                                + cabinet.shelfPlace() + "; an import does not change it");
            }
        }
        table.refuseIfWrong();
        store(fresh, by);
        return new ImportReceipt(read.size(), fresh.size(), read.size() - fresh.size());
    }

    private List<CabinetBody> parse(CsvTable table) {
        Set<String> modelCodes = models.cabinetModelCodes();
        Map<String, CabinetModel> ofTests = new HashMap<>();
        Map<AssetTag, Integer> firstLines = new HashMap<>();
        List<CabinetBody> bodies = new ArrayList<>();
        for (CsvTable.Line line : table.lines()) {
            bodies.add(parse(line, modelCodes, firstLines, table, ofTests));
        }
        return bodies;
    }

    private CabinetBody parse(
            CsvTable.Line line,
            Set<String> modelCodes,
            Map<AssetTag, Integer> firstLines,
            CsvTable table,
            Map<String, CabinetModel> ofTests) {
        String place = line.cell("shelf_place");
        if (place.length() > 40 || place.chars().anyMatch(Character::isISOControl)) {
            table.error(line.number(), "shelf_place", "must be at most 40 plain characters");
        }
        if (!modelCodes.contains(line.cell("model"))) {
            table.error(
                    line.number(),
                    "model",
                    "there is no cabinet model \"" + CsvTable.printable(line.cell("model")) + "\" in the model book");
        }
        CabinetStatus status = CabinetStatus.READY;
        if (!line.cell("status").isEmpty()) {
            try {
                status = CabinetStatus.valueOf(line.cell("status"));
            } catch (IllegalArgumentException e) {
                table.error(
                        line.number(),
                        "status",
                        "\"" + CsvTable.printable(line.cell("status")) + "\" must be one of "
                                + List.of(CabinetStatus.values()));
            }
        }
        LocalDate safetyTestDue = safetyTestDue(line, modelCodes, table, ofTests);
        try {
            AssetTag tag = new AssetTag(line.cell("tag"));
            Integer first = firstLines.putIfAbsent(tag, line.number());
            if (first != null) {
                table.error(line.number(), "tag", "tag " + tag + " is in line " + first + " already");
            }
            return new CabinetBody(
                    tag, line.cell("model"), place.isEmpty() ? null : place, status, false, List.of(), safetyTestDue);
        } catch (IllegalArgumentException e) {
            table.error(line.number(), "tag", e.getMessage());
            return null;
        }
    }

    private LocalDate safetyTestDue(
            CsvTable.Line line, Set<String> modelCodes, CsvTable table, Map<String, CabinetModel> ofTests) {
        String cell = line.cell("safety_test_due");
        if (cell.isEmpty()) {
            return null;
        }
        try {
            LocalDate dueOn = LocalDate.parse(cell);
            String code = line.cell("model");
            if (modelCodes.contains(code)) {
                CabinetModel model = ofTests.computeIfAbsent(code, c -> models.cabinetModel(c, "model"));
                Register.safetyTestProblem(model, dueOn)
                        .ifPresent(problem -> table.error(line.number(), "safety_test_due", problem));
            }
            return dueOn;
        } catch (DateTimeParseException e) {
            table.error(
                    line.number(),
                    "safety_test_due",
                    "\"" + CsvTable.printable(cell) + "\" must be a date like 2027-03-31");
            return null;
        }
    }

    private Map<String, Cabinet> existing(List<CabinetBody> read) {
        List<String> tags = read.stream()
                .filter(java.util.Objects::nonNull)
                .map(b -> b.tag().value())
                .distinct()
                .toList();
        Map<String, Cabinet> found = new HashMap<>();
        for (int from = 0; from < tags.size(); from += ROWS_AT_ONCE) {
            found.putAll(cabinets.findAllById(tags.subList(from, Math.min(tags.size(), from + ROWS_AT_ONCE))).stream()
                    .collect(Collectors.toMap(Cabinet::getId, c -> c)));
        }
        return found;
    }

    private static boolean says(Cabinet cabinet, CabinetBody body) {
        return cabinet.modelCode().equals(body.modelCode())
                && java.util.Objects.equals(cabinet.shelfPlace(), body.shelfPlace())
                && (body.safetyTestDue() == null || body.safetyTestDue().equals(cabinet.safetyTestDue()));
    }

    private void store(List<CabinetBody> fresh, String by) {
        Instant now = StoredJson.cut(clock.instant());
        int count = 0;
        for (CabinetBody body : fresh) {
            entities.persist(new Cabinet(body));
            entities.persist(new EventRow(new HistoryEvent(
                    OrderedId.next(),
                    body.tag(),
                    null,
                    now,
                    by,
                    HistoryEvent.Kind.REGISTERED,
                    Reason.of("history-registered", body.modelCode()))));
            if (++count % ROWS_AT_ONCE == 0) {
                entities.flush();
                entities.clear();
            }
        }
    }
}
