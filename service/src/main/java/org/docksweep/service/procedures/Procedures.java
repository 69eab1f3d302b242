package org.docksweep.service.procedures;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.ProcedureCard;
import org.docksweep.fleet.ProcedureCards;
import org.docksweep.fleet.ProcedurePurpose;
import org.docksweep.service.models.Models;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Procedure cards and the numbers they are made with. */
@Service
@Transactional
public class Procedures {
    private static final int MOST_CHARACTERS = 100_000;

    private final BenchDataRows rows;
    private final Models models;

    Procedures(BenchDataRows rows, Models models) {
        this.rows = rows;
        this.models = models;
    }

    @Transactional(readOnly = true)
    List<DriverBenchData> all() {
        return rows.findAll().stream()
                .map(BenchDataRow::data)
                .sorted(Comparator.comparing(DriverBenchData::driverModelCode))
                .toList();
    }

    @Transactional(readOnly = true)
    DriverBenchData find(String driverModelCode) {
        return rows.findById(driverModelCode)
                .orElseThrow(() -> Refusal.notFound(
                        "driverModel",
                        "there are no numbers of driver model " + driverModelCode + " on record",
                        "Read them off a driver and have a manager enter them."))
                .data();
    }

    PutAnswer<DriverBenchData> put(String driverModelCode, DriverBenchData data) {
        models.driverModel(driverModelCode, "driverModel");
        new Check()
                .that(
                        driverModelCode.equals(data.driverModelCode()),
                        "driverModelCode",
                        "must be " + driverModelCode + " as in the address, but is " + data.driverModelCode())
                .that(
                        StoredJson.write(data).length() <= MOST_CHARACTERS,
                        "notes",
                        "are too long: at most " + MOST_CHARACTERS + " characters are kept for a driver model")
                .refuseIfWrong();
        requireKnownSteps(data);
        Optional<BenchDataRow> before = rows.findById(driverModelCode);
        if (before.isEmpty()) {
            rows.save(new BenchDataRow(data));
            return new PutAnswer<>(true, data);
        }
        if (!before.get().says(data)) {
            before.get().replace(data);
        }
        return new PutAnswer<>(false, data);
    }

    /** A note at a step that no card has would never be read. */
    private static void requireKnownSteps(DriverBenchData data) {
        Set<String> known = new TreeSet<>();
        for (ProcedurePurpose purpose : ProcedurePurpose.values()) {
            ProcedureCards.generic(purpose).steps().forEach(s -> known.add(s.code()));
        }
        Check check = new Check();
        data.notes()
                .keySet()
                .forEach(step -> check.that(
                        known.contains(step), "notes." + step, "no procedure has this step; the steps are " + known));
        check.refuseIfWrong();
    }

    /**
     * The card of a purpose with the numbers of a driver model.
     *
     * @param purpose purpose
     * @param driverModelCode driver model, or null for the generic card
     * @return the card
     * @throws Refusal if there is no such driver model
     */
    @Transactional(readOnly = true)
    public ProcedureCard card(ProcedurePurpose purpose, String driverModelCode) {
        if (driverModelCode == null) {
            return ProcedureCards.generic(purpose);
        }
        DriverModel driver = models.driverModel(driverModelCode, "driverModel");
        DriverBenchData data =
                rows.findById(driverModelCode).map(BenchDataRow::data).orElse(null);
        return ProcedureCards.of(purpose, driver, data);
    }

    /**
     * Usual effort of a purpose by driver model, for a caller that estimates many jobs.
     *
     * @return numbers on record, by driver model
     */
    @Transactional(readOnly = true)
    public Map<String, DriverBenchData> byDriverModel() {
        return all().stream().collect(Collectors.toMap(DriverBenchData::driverModelCode, Function.identity()));
    }
}
