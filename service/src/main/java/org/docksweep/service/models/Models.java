package org.docksweep.service.models;

import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What the house knows of its models: the book, the references, the limits in force. */
@Service
@Transactional
public class Models {
    private final CabinetModelRows cabinetModels;
    private final DriverModelRows driverModels;
    private final PointReferenceRows references;
    private final LimitSetRows limits;
    private final Clock clock;

    Models(
            CabinetModelRows cabinetModels,
            DriverModelRows driverModels,
            PointReferenceRows references,
            LimitSetRows limits,
            Clock clock) {
        this.cabinetModels = cabinetModels;
        this.driverModels = driverModels;
        this.references = references;
        this.limits = limits;
        this.clock = clock;
    }

    /**
     * All models.
     *
     * @return the book, by code
     */
    @Transactional(readOnly = true)
    public ModelBook book() {
        return new ModelBook(
                cabinetModels.findAll().stream()
                        .map(CabinetModelRow::model)
                        .sorted(java.util.Comparator.comparing(CabinetModel::code))
                        .toList(),
                driverModels.findAll().stream()
                        .map(DriverModelRow::model)
                        .sorted(java.util.Comparator.comparing(DriverModel::code))
                        .toList());
    }

    /** Merges by code: what is new is added, what is there is replaced, what is not named stays. */
    PutAnswer<ModelBook> merge(ModelBook book) {
        requirePlainCodes(book);
        Map<String, DriverModelRow> drivers = byCode(driverModels.findAllById(
                book.driverModels().stream().map(DriverModel::code).toList()));
        for (DriverModel model : book.driverModels()) {
            if (drivers.containsKey(model.code())) {
                drivers.get(model.code()).replace(model);
            } else {
                driverModels.save(new DriverModelRow(model));
            }
        }
        Map<String, CabinetModelRow> cabinets = byCode(cabinetModels.findAllById(
                book.cabinetModels().stream().map(CabinetModel::code).toList()));
        boolean created = false;
        for (CabinetModel model : book.cabinetModels()) {
            if (cabinets.containsKey(model.code())) {
                cabinets.get(model.code()).replace(model);
            } else {
                cabinetModels.save(new CabinetModelRow(model));
                created = true;
            }
        }
        return new PutAnswer<>(created, book());
    }

    private static void requirePlainCodes(ModelBook book) {
        book.driverModels().forEach(m -> requireCode("driverModels", m.code()));
        book.cabinetModels().forEach(m -> requireCode("cabinetModels", m.code()));
    }

    private static void requireCode(String field, String code) {
        if (!code.matches("[A-Za-z0-9][A-Za-z0-9._-]{0,39}")) {
            throw Refusal.badField(
                    field,
                    "model code \"" + code + "\" must be 1 to 40 letters, digits, dots, hyphens or underscores",
                    "Give the model a plain code; its name may say anything.");
        }
    }

    private static <R extends org.docksweep.service.store.Stored<String>> Map<String, R> byCode(List<R> rows) {
        return rows.stream().collect(Collectors.toMap(R::getId, Function.identity(), (a, b) -> a, TreeMap::new));
    }

    /**
     * A cabinet model.
     *
     * @param code its code
     * @param field field that named it, for the refusal
     * @return the model
     * @throws Refusal if there is none
     */
    @Transactional(readOnly = true)
    public CabinetModel cabinetModel(String code, String field) {
        return (code == null ? java.util.Optional.<CabinetModelRow>empty() : cabinetModels.findById(code))
                .orElseThrow(() -> Refusal.badField(
                        field,
                        "there is no cabinet model " + code,
                        "Use a code from the model book, or put the model into it first."))
                .model();
    }

    /**
     * A driver model.
     *
     * @param code its code
     * @param field field that named it, for the refusal
     * @return the model
     * @throws Refusal if there is none
     */
    @Transactional(readOnly = true)
    public DriverModel driverModel(String code, String field) {
        return (code == null ? java.util.Optional.<DriverModelRow>empty() : driverModels.findById(code))
                .orElseThrow(() -> Refusal.badField(
                        field,
                        "there is no driver model " + code,
                        "Use a code from the model book, or put the model into it first."))
                .model();
    }

    /**
     * Codes of all cabinet models.
     *
     * @return the codes
     */
    @Transactional(readOnly = true)
    public java.util.Set<String> cabinetModelCodes() {
        return cabinetModels.codes();
    }

    /**
     * Codes of all driver models.
     *
     * @return the codes
     */
    @Transactional(readOnly = true)
    public java.util.Set<String> driverModelCodes() {
        return driverModels.codes();
    }

    /**
     * References now in force.
     *
     * @return one per model and test point
     */
    @Transactional(readOnly = true)
    public List<PointReference> references() {
        return references.newest().stream().map(PointReferenceRow::reference).toList();
    }

    @Transactional(readOnly = true)
    PointReference reference(String modelCode, String testPointCode) {
        return references
                .newest(modelCode, testPointCode)
                .orElseThrow(() -> Refusal.notFound(
                        "testPoint",
                        "model " + modelCode + " has no reference at test point " + testPointCode,
                        "Teach it from known-good units."))
                .reference();
    }

    /** Stores the next revision, unless the newest says the same. */
    PutAnswer<PointReference> put(String modelCode, String testPointCode, PointReference reference) {
        if (!modelCode.equals(reference.cabinetModelCode()) || !testPointCode.equals(reference.testPointCode())) {
            throw Refusal.badField(
                    "cabinetModelCode",
                    "the address says " + modelCode + " " + testPointCode + ", the body " + reference.cabinetModelCode()
                            + " " + reference.testPointCode(),
                    "Make both the same.");
        }
        try {
            cabinetModel(modelCode, "cabinetModelCode").testPoint(testPointCode);
        } catch (IllegalArgumentException e) {
            throw Refusal.badField("testPointCode", e.getMessage(), "Use a test point of the model.");
        }
        var newest = references.newest(modelCode, testPointCode);
        if (newest.isPresent() && newest.get().says(reference)) {
            return new PutAnswer<>(false, reference);
        }
        int revision = newest.map(PointReferenceRow::revision).orElse(0) + 1;
        references.save(new PointReferenceRow(reference, revision, StoredJson.cut(clock.instant())));
        return new PutAnswer<>(newest.isEmpty(), reference);
    }

    /**
     * Limits in force.
     *
     * @return the newest version; a new house starts with {@link LimitSet#initial()}
     */
    @Transactional(readOnly = true)
    public LimitSet limits() {
        return limits.findFirstByOrderByVersionDesc().map(LimitSetRow::limits).orElseGet(LimitSet::initial);
    }
}
