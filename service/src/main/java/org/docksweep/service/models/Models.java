package org.docksweep.service.models;

import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.docksweep.contract.LessonBody;
import org.docksweep.contract.TaughtPoint;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.ModelBook;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.SharedScatter;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
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
        return (code == null ? Optional.<CabinetModelRow>empty() : cabinetModels.findById(code))
                .orElseThrow(() -> noCabinetModel(code, field))
                .model();
    }

    static Refusal noCabinetModel(String code, String field) {
        return Refusal.badField(
                field,
                "there is no cabinet model " + code,
                "Use a code from the model book, or put the model into it first.");
    }

    /**
     * Driver models that belong into cabinet models.
     *
     * @param codes codes of cabinet models
     * @param field field that named them, for the refusal
     * @return codes of driver models
     * @throws Refusal if there is no cabinet model of such a code
     */
    @Transactional(readOnly = true)
    public Set<String> driversOf(Collection<String> codes, String field) {
        return codes.stream()
                .flatMap(code -> cabinetModel(code, field).positions().stream())
                .map(DriverPosition::driverModelCode)
                .collect(Collectors.toSet());
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

    /**
     * Everything a lesson taught, or nothing: its model first, then a reference for every test point of it.
     *
     * @param modelCode cabinet model
     * @param lesson what was taught
     * @param by person or kiosk that hands it in
     * @return the references now in force
     */
    PutAnswer<List<TaughtPoint>> teach(String modelCode, LessonBody lesson, String by) {
        boolean created = lesson.book() != null && drawn(modelCode, lesson);
        CabinetModel model = cabinetModel(modelCode, "model");
        List<PointReference> sent = lesson.references() == null ? List.of() : lesson.references();
        Check check = new Check();
        for (var point : model.testPoints()) {
            long given = sent.stream()
                    .filter(r -> r != null && point.code().equals(r.testPointCode()))
                    .count();
            check.that(
                    given == 1,
                    "references",
                    "must hold one reference of test point " + point.code() + ", but hold " + given);
        }
        check.that(
                sent.size() == model.testPoints().size(),
                "references",
                "must be as many as the model has test points, "
                        + model.testPoints().size() + ", but are " + sent.size());
        check.refuseIfWrong();
        for (PointReference reference : sent) {
            requireFits(model, reference);
            created |= put(modelCode, reference.testPointCode(), reference, by).created();
        }
        return new PutAnswer<>(
                created,
                references.newest().stream()
                        .map(PointReferenceRow::taught)
                        .filter(t -> t.modelCode().equals(modelCode))
                        .toList());
    }

    /** Takes the lesson's model in; whether it is new. */
    private boolean drawn(String modelCode, LessonBody lesson) {
        if (lesson.book().cabinetModels().size() != 1
                || !lesson.book().cabinetModels().get(0).code().equals(modelCode)) {
            throw Refusal.badField(
                    "book.cabinetModels",
                    "a lesson brings the one cabinet model it teaches, " + modelCode,
                    "Send other models to the model book.");
        }
        Optional<CabinetModel> before = cabinetModels.findById(modelCode).map(CabinetModelRow::model);
        boolean other = before.isPresent()
                && !before.get().equals(lesson.book().cabinetModels().get(0));
        if (lesson.newModel() && other) {
            throw Refusal.wrongState(
                    "model",
                    "there is a cabinet model " + modelCode + " already, and it is drawn otherwise",
                    "Give the new model a code of its own, or teach the model that is there.");
        }
        return merge(lesson.book()).created();
    }

    /** A reference that was taught for another drawing would be refused at every dock. */
    private void requireFits(CabinetModel model, PointReference reference) {
        if (reference.taught() == null) {
            return;
        }
        try {
            Knowledge.nominal(book(), model, model.testPoint(reference.testPointCode()))
                    .taughtBy(reference);
        } catch (IllegalArgumentException e) {
            throw Refusal.badField("references", e.getMessage(), "Teach the reference for the model that is sent.");
        }
    }

    /**
     * References in force, with who taught them.
     *
     * @return one per model and test point
     */
    @Transactional(readOnly = true)
    public List<TaughtPoint> taught() {
        return references.newest().stream().map(PointReferenceRow::taught).toList();
    }

    /**
     * A reference and since when it was there.
     *
     * @param reference the reference
     * @param storedAt since when
     */
    public record Revision(PointReference reference, Instant storedAt) {}

    /**
     * All revisions of all references stored before an instant.
     *
     * @param before instant
     * @return oldest first
     */
    @Transactional(readOnly = true)
    public List<Revision> revisions(Instant before) {
        return references.storedBefore(before).stream()
                .map(r -> new Revision(r.reference(), r.storedAt()))
                .toList();
    }

    /** Stores the next revision, unless the newest says the same. */
    PutAnswer<PointReference> put(String modelCode, String testPointCode, PointReference reference, String by) {
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
        try {
            // one that cannot be weighed with the others would stop every dock
            SharedScatter.over(List.of(reference));
        } catch (IllegalArgumentException e) {
            throw Refusal.badField("taught.scatter", e.getMessage(), "Send the reference as it was taught.");
        }
        var newest = references.newest(modelCode, testPointCode);
        if (newest.isPresent() && newest.get().says(reference)) {
            return new PutAnswer<>(false, reference);
        }
        int revision = newest.map(PointReferenceRow::revision).orElse(0) + 1;
        references.save(new PointReferenceRow(reference, revision, StoredJson.cut(clock.instant()), by));
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

    /**
     * A version of the limits.
     *
     * @param version its number
     * @return the limits; empty when there never was such a version
     */
    @Transactional(readOnly = true)
    public Optional<LimitSet> limits(int version) {
        LimitSet initial = LimitSet.initial();
        return limits.findById(version)
                .map(LimitSetRow::limits)
                .or(() -> version == initial.version() ? Optional.of(initial) : Optional.empty());
    }

    /** Puts the next version in force. Versions are never changed. */
    PutAnswer<LimitSet> put(int version, LimitSet next) {
        if (next.version() != version) {
            throw Refusal.badField(
                    "version",
                    "the address says version " + version + ", the body " + next.version(),
                    "Make both the same.");
        }
        Optional<LimitSet> before = limits(version);
        if (before.isPresent()) {
            if (before.get().equals(next)) {
                return new PutAnswer<>(false, next);
            }
            throw Refusal.wrongState(
                    "version",
                    "limits of version " + version + " are stored already and say something else",
                    "Limits are never changed, only succeeded: the next version is " + (limits().version() + 1) + ".");
        }
        int following = limits().version() + 1;
        if (version != following) {
            throw Refusal.wrongState(
                    "version",
                    "the next version of the limits is " + following + ", but this is " + version,
                    "Somebody may have changed the limits meanwhile: read them again.");
        }
        limits.save(new LimitSetRow(next, StoredJson.cut(clock.instant())));
        return new PutAnswer<>(true, next);
    }
}
