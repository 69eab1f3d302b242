package org.docksweep.kiosk.teaching;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.SignOn;
import org.docksweep.contract.TaughtPoint;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TagReading;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.docksweep.kiosk.teaching.TeachingState.Activity;
import org.docksweep.kiosk.teaching.TeachingState.LessonAtHand;
import org.docksweep.kiosk.teaching.TeachingState.Message;

/**
 * The state machine of the fleet page. Lives on the page's thread only; asking the service, sweeping and teaching happen there too
 * and are told as busy.
 */
final class TeachingFlow {
    private static final double PROGRESS_STEP = 0.02;

    private final TeachingParts parts;
    private final TeachingOffice office;
    private final Runnable publish;
    private final AtomicInteger stops;
    private List<TaughtPoint> taught = List.of();
    private int marked;
    private Activity activity = Activity.MODELS;
    private TemplateDraft draft = TemplateDraft.usual();
    private Lesson lesson;
    private UnitSweep unit;
    private String badge;
    private Message message;
    private Double share;
    private boolean busy;

    TeachingFlow(TeachingParts parts, AtomicInteger stops, Runnable publish) {
        this.parts = parts;
        this.office = new TeachingOffice(parts.client());
        this.stops = stops;
        this.publish = publish;
    }

    private List<ModelStanding> models() {
        LocalFleet fleet = parts.fleet().get();
        return ModelStanding.of(
                fleet, taught, LocalDate.ofInstant(parts.dock().clock().instant(), fleet.zone()));
    }

    private void tell(ReadingState state, Reason text) {
        message = new Message(state, text);
    }

    /** Something slow: the page shows that it goes on. */
    private void busily(Runnable work) {
        busy = true;
        publish.run();
        try {
            work.run();
        } finally {
            busy = false;
        }
    }

    void refresh() {
        if (activity != Activity.MODELS) {
            return;
        }
        busily(() -> {
            try {
                taught = office.taught();
            } catch (ServiceProblem | ServiceUnreachable e) {
                // The list shows what the local copy knows; only who taught is missing.
                tell(ReadingState.WATCH, Reason.of("teach-who-unknown", e.getMessage()));
            }
        });
    }

    void mark(int index) {
        if (activity == Activity.MODELS && index >= 0 && index < models().size()) {
            marked = index;
        }
    }

    void scanned(String raw) {
        String text = raw.strip();
        message = null;
        switch (activity) {
            case MODELS -> lookedFor(text);
            case DRAWING -> named(text);
            case UNITS -> scannedUnit(text);
            case SIGN_ON -> signedOn(text);
        }
    }

    /** A model by its code, or by the tag of a cabinet. */
    private void lookedFor(String text) {
        Optional<String> ofTag = TagReading.read(text) instanceof TagReading.One one
                ? parts.fleet().get().cabinet(one.tag()).map(CabinetBody::modelCode)
                : Optional.empty();
        List<ModelStanding> models = models();
        for (int i = 0; i < models.size(); i++) {
            String code = models.get(i).model().code();
            if (code.equalsIgnoreCase(text) || code.equals(ofTag.orElse(null))) {
                marked = i;
                return;
            }
        }
        tell(ReadingState.WATCH, Reason.of("teach-no-such-model", text));
    }

    private void named(String text) {
        if (!text.matches("[A-Za-z0-9][A-Za-z0-9._-]{0,36}")) {
            tell(ReadingState.FAULT, Reason.of("teach-code-wrong", text));
        } else if (taken(text)) {
            tell(ReadingState.FAULT, Reason.of("teach-code-taken", text));
        } else {
            draft = draft.named(text);
        }
    }

    private boolean taken(String code) {
        return parts.fleet().get().snapshot().book().cabinetModels().stream()
                .anyMatch(m -> m.code().equalsIgnoreCase(code));
    }

    private void scannedUnit(String text) {
        if (!(TagReading.read(text) instanceof TagReading.One one)) {
            tell(ReadingState.FAULT, Reason.of("teach-not-a-tag", text));
            return;
        }
        AssetTag tag = one.tag();
        LocalFleet fleet = parts.fleet().get();
        Optional<CabinetBody> known = fleet.cabinet(tag);
        if (known.isPresent() && !known.get().modelCode().equals(lesson.model().code())) {
            tell(
                    ReadingState.FAULT,
                    Reason.of(
                            "teach-other-model",
                            tag.value(),
                            fleet.modelOf(known.get()).name(),
                            lesson.model().name()));
            return;
        }
        if (lesson.full()) {
            tell(ReadingState.WATCH, Reason.of("teach-full"));
            return;
        }
        unit = new UnitSweep(parts.dock(), tag, lesson.model());
        if (lesson.lines().stream().anyMatch(l -> l.tag().equals(tag))) {
            tell(ReadingState.WATCH, Reason.of("teach-swept-before", tag.value()));
        }
    }

    private void signedOn(String text) {
        if (badge == null) {
            badge = text;
            return;
        }
        String by = badge;
        badge = null;
        busily(() -> handIn(by, text));
    }

    private void handIn(String by, String pin) {
        String code = lesson.model().code();
        try {
            SignOn person = office.handIn(by, pin, code, lesson.body());
            tell(
                    ReadingState.OK,
                    Reason.of(
                            "teach-stored",
                            code,
                            person.name(),
                            Integer.toString(lesson.progress().orElseThrow().kept())));
            leave();
            taught = office.taught();
        } catch (ServiceProblem e) {
            boolean notAllowed = e.type().equals(ProblemTypes.NOT_ALLOWED);
            tell(
                    ReadingState.FAULT,
                    notAllowed ? Reason.of("teach-not-allowed", by) : Reason.of("teach-refused", e.getMessage()));
        } catch (ServiceUnreachable e) {
            if (lesson == null) {
                // It is stored; only the list could not be read again.
                return;
            }
            activity = Activity.UNITS;
            tell(ReadingState.FAULT, Reason.of("teach-no-service", e.getMessage()));
        }
    }

    void step(TeachingStep step) {
        if (!steps().contains(step)) {
            return;
        }
        message = null;
        switch (step) {
            case TEACH ->
                begin(
                        models().get(marked).model(),
                        parts.fleet().get().snapshot().book(),
                        false);
            case NEW_MODEL -> {
                draft = TemplateDraft.usual();
                activity = Activity.DRAWING;
            }
            case OTHER_DRAWING, OTHER_IMPEDANCE, OTHER_CROSSOVER, OTHER_SLOPE, OTHER_SIZE, OTHER_PAD ->
                draft = draft.with(step);
            case BEGIN -> begin(draft.model(), withHouse(draft.book()), true);
            case SWEEP -> sweep();
            case DROP_LAST -> busily(() -> lesson = lesson.withoutLast());
            case FINISH -> {
                badge = null;
                activity = Activity.SIGN_ON;
                tellIfWithoutSound();
            }
            case BACK -> back();
        }
    }

    private void tellIfWithoutSound() {
        List<AssetTag> without = lesson.withoutSound();
        if (!without.isEmpty()) {
            String tags = without.stream().map(AssetTag::value).collect(Collectors.joining(", "));
            tell(ReadingState.WATCH, Reason.of("teach-no-sound", tags));
        }
    }

    /** The house's models with a new one; drivers of the same code are the new model's, until it is stored. */
    private ModelBook withHouse(ModelBook drawn) {
        ModelBook house = parts.fleet().get().snapshot().book();
        List<CabinetModel> cabinets = new ArrayList<>(house.cabinetModels());
        cabinets.addAll(drawn.cabinetModels());
        List<DriverModel> drivers = new ArrayList<>(house.driverModels());
        drivers.removeIf(
                d -> drawn.driverModels().stream().anyMatch(n -> n.code().equals(d.code())));
        drivers.addAll(drawn.driverModels());
        return new ModelBook(cabinets, drivers);
    }

    private void begin(CabinetModel model, ModelBook book, boolean isNew) {
        lesson = Lesson.of(book, model, isNew);
        unit = null;
        activity = Activity.UNITS;
    }

    private void sweep() {
        if (!parts.dock().standing().get().maySweep()) {
            tell(ReadingState.FAULT, parts.dock().standing().get().refusal());
            return;
        }
        int stopsBefore = stops.get();
        busily(() -> {
            do {
                share = 0.0;
                publish.run();
                Optional<Reason> not = unit.sweepNext(() -> stops.get() != stopsBefore, this::progress);
                share = null;
                if (not.isPresent()) {
                    tell(ReadingState.WATCH, not.get());
                    return;
                }
            } while (!unit.complete() && parts.dock().lead().movesByItself());
            if (unit.complete()) {
                publish.run();
                learn();
            }
        });
    }

    private void progress(double done) {
        if (share != null && done - share >= PROGRESS_STEP) {
            share = done;
            publish.run();
        }
    }

    private void learn() {
        AssetTag tag = unit.tag();
        Lesson.Unit swept = unit.unit();
        unit = null;
        try {
            lesson = lesson.with(swept);
        } catch (IllegalArgumentException e) {
            tell(ReadingState.FAULT, Reason.of("teach-cannot", tag.value(), String.valueOf(e.getMessage())));
            return;
        }
        boolean leftOut = lesson.lines().stream().anyMatch(l -> l.tag().equals(tag) && l.state() == ReadingState.FAULT);
        if (leftOut) {
            tell(ReadingState.FAULT, Reason.of("teach-left-out", tag.value()));
        } else if (swept.soundLeftOut()) {
            tell(ReadingState.WATCH, Reason.of("teach-taken-current", tag.value()));
        } else {
            tell(ReadingState.OK, Reason.of("teach-taken", tag.value()));
        }
    }

    private void back() {
        switch (activity) {
            case SIGN_ON -> activity = Activity.UNITS;
            case UNITS -> {
                if (unit != null) {
                    unit = null;
                } else {
                    leave();
                }
            }
            case DRAWING, MODELS -> activity = Activity.MODELS;
        }
        badge = null;
    }

    private void leave() {
        lesson = null;
        unit = null;
        badge = null;
        activity = Activity.MODELS;
    }

    /** Something went wrong that nobody foresaw: say so; nothing was stored. */
    void defect(RuntimeException e) {
        busy = false;
        share = null;
        unit = null;
        badge = null;
        tell(ReadingState.FAULT, Reason.of("teach-defect", e.getMessage() == null ? e.toString() : e.getMessage()));
    }

    private List<TeachingStep> steps() {
        if (busy) {
            return List.of();
        }
        return switch (activity) {
            case MODELS ->
                models().isEmpty()
                        ? List.of(TeachingStep.NEW_MODEL)
                        : List.of(TeachingStep.TEACH, TeachingStep.NEW_MODEL);
            case DRAWING -> {
                List<TeachingStep> steps = new ArrayList<>();
                if (!draft.code().isEmpty()) {
                    steps.add(TeachingStep.BEGIN);
                }
                steps.addAll(List.of(
                        TeachingStep.OTHER_DRAWING,
                        TeachingStep.OTHER_IMPEDANCE,
                        TeachingStep.OTHER_CROSSOVER,
                        TeachingStep.OTHER_SLOPE,
                        TeachingStep.OTHER_SIZE,
                        TeachingStep.OTHER_PAD,
                        TeachingStep.BACK));
                yield steps;
            }
            case UNITS -> {
                List<TeachingStep> steps = new ArrayList<>();
                if (unit != null) {
                    steps.add(TeachingStep.SWEEP);
                } else if (!lesson.isEmpty()) {
                    steps.add(TeachingStep.FINISH);
                    steps.add(TeachingStep.DROP_LAST);
                }
                steps.add(TeachingStep.BACK);
                yield steps;
            }
            case SIGN_ON -> List.of(TeachingStep.BACK);
        };
    }

    TeachingState state() {
        List<ModelStanding> models = models();
        marked = models.isEmpty() ? -1 : Math.max(0, Math.min(marked, models.size() - 1));
        return new TeachingState(
                activity,
                models,
                marked,
                activity == Activity.DRAWING ? Optional.of(drawing()) : Optional.empty(),
                lesson == null ? Optional.empty() : Optional.of(atHand()),
                prompt(),
                Optional.ofNullable(message),
                steps(),
                Optional.ofNullable(share),
                activity == Activity.SIGN_ON && badge != null,
                busy);
    }

    private TeachingState.Drawing drawing() {
        return new TeachingState.Drawing(
                draft.model(),
                !draft.code().isEmpty(),
                draft.impedanceOhm(),
                draft.crossoverHz(),
                draft.slopeDb(),
                draft.box(),
                draft.woofers(),
                draft.inches(),
                draft.padDb());
    }

    private LessonAtHand atHand() {
        return new LessonAtHand(
                lesson.model(),
                lesson.isNew(),
                lesson.lines(),
                lesson.progress(),
                Optional.ofNullable(unit).map(UnitSweep::tag),
                Optional.ofNullable(unit)
                        .filter(u -> !u.complete())
                        .map(u -> u.next().contacts()),
                lesson.curve());
    }

    private Reason prompt() {
        if (busy && share == null) {
            return Reason.of("teach-working");
        }
        return switch (activity) {
            case MODELS -> Reason.of("teach-ask-model");
            case DRAWING -> Reason.of(draft.code().isEmpty() ? "teach-ask-code" : "teach-ask-drawing", draft.code());
            case UNITS ->
                unit == null || unit.complete()
                        ? Reason.of("teach-ask-unit", lesson.model().name())
                        : Reason.of(
                                "teach-ask-plug",
                                unit.tag().value(),
                                unit.next().contacts());
            case SIGN_ON -> Reason.of(badge == null ? "teach-ask-badge" : "teach-ask-pin", badge == null ? "" : badge);
        };
    }
}
