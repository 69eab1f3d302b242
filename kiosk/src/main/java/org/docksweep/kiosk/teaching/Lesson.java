package org.docksweep.kiosk.teaching;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.docksweep.contract.LessonBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReadingState;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.judge.DecidingCurve;
import org.docksweep.kiosk.dock.DockState.CurvePicture;
import org.docksweep.kiosk.teaching.TeachingState.Missed;
import org.docksweep.kiosk.teaching.TeachingState.Progress;
import org.docksweep.kiosk.teaching.TeachingState.UnitLine;
import org.docksweep.suspect.AmbiguityGroups;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.TeachingCheck;
import org.docksweep.suspect.TeachingProgress;

/** A model being taught: its drawing, the units swept so far, and what they come to. A value. */
final class Lesson {
    /** Parts of at least this tolerance are guesses from a plate ({@code fleet.template}). */
    private static final double GUESSED_FROM = 0.2;

    private static final double[] NOTHING = {};
    private static final double RIBBON_SPREADS = 2;

    private final ModelBook book;
    private final CabinetModel model;
    private final boolean isNew;
    private final List<Unit> units;
    private final Map<String, TeachingProgress> progress;

    /** A unit with its curves by test point, and whether what was heard of it was left out. */
    record Unit(AssetTag tag, Map<String, ReferenceTeacher.Unit> byPoint, boolean soundLeftOut) {}

    private Lesson(
            ModelBook book,
            CabinetModel model,
            boolean isNew,
            List<Unit> units,
            Map<String, TeachingProgress> progress) {
        this.book = book;
        this.model = model;
        this.isNew = isNew;
        this.units = List.copyOf(units);
        this.progress = progress;
    }

    /** A lesson without units. */
    static Lesson of(ModelBook book, CabinetModel model, boolean isNew) {
        return new Lesson(book, model, isNew, List.of(), Map.of());
    }

    CabinetModel model() {
        return model;
    }

    boolean isNew() {
        return isNew;
    }

    boolean isEmpty() {
        return units.isEmpty();
    }

    boolean full() {
        return units.size() >= ReferenceTeacher.MAX_UNITS;
    }

    /** With one more unit; one that was swept before is replaced. Looks at all units anew, which takes some seconds. */
    Lesson with(Unit unit) {
        List<Unit> more = new ArrayList<>(units);
        more.removeIf(u -> u.tag().equals(unit.tag()));
        more.add(unit);
        return taughtBy(more);
    }

    Lesson withoutLast() {
        return taughtBy(units.subList(0, units.size() - 1));
    }

    private Lesson taughtBy(List<Unit> by) {
        Map<String, TeachingProgress> each = new LinkedHashMap<>();
        ModelBook drawn = book;
        for (TestPoint point : by.isEmpty() ? List.<TestPoint>of() : model.testPoints()) {
            CabinetModel redrawn = drawn.cabinetModel(model.code());
            TeachingProgress progressed = TeachingProgress.of(
                    drawn,
                    redrawn,
                    redrawn.testPoint(point.code()),
                    heardOfAll(
                            by.stream().map(u -> u.byPoint().get(point.code())).toList()),
                    guessed(point));
            drawn = progressed.book();
            each.put(point.code(), progressed);
        }
        return new Lesson(book, model, isNew, by, each);
    }

    /** Sound of some units only would be told as that of all: then there is none. */
    private static List<ReferenceTeacher.Unit> heardOfAll(List<ReferenceTeacher.Unit> units) {
        return units.stream().allMatch(u -> u.acoustic() != null)
                ? units
                : units.stream()
                        .map(u -> new ReferenceTeacher.Unit(u.impedance(), null, u.ambientCelsius()))
                        .toList();
    }

    /** Units whose sound was left out, so that the lesson has none. */
    List<AssetTag> withoutSound() {
        return units.stream().filter(Unit::soundLeftOut).map(Unit::tag).toList();
    }

    private static boolean guessed(TestPoint point) {
        return point.elements().stream().anyMatch(e -> tolerance(e) >= GUESSED_FROM);
    }

    private static double tolerance(NetworkElement element) {
        if (element instanceof NetworkElement.Resistor r) {
            return r.toleranceRel();
        }
        if (element instanceof NetworkElement.Inductor l) {
            return l.toleranceRel();
        }
        return element instanceof NetworkElement.Capacitor c ? c.toleranceRel() : 0;
    }

    /** What is handed in. */
    LessonBody body() {
        boolean drawn = model.testPoints().stream().anyMatch(Lesson::guessed);
        List<PointReference> references =
                progress.values().stream().map(TeachingProgress::reference).toList();
        return new LessonBody(isNew || drawn ? drawnBook() : null, isNew, references);
    }

    /** The one model with its drivers, every test point as its units have drawn it. */
    private ModelBook drawnBook() {
        ModelBook drawn = progress.get(
                        model.testPoints().get(model.testPoints().size() - 1).code())
                .book();
        CabinetModel redrawn = drawn.cabinetModel(model.code());
        Set<String> drivers =
                redrawn.positions().stream().map(p -> p.driverModelCode()).collect(Collectors.toSet());
        return new ModelBook(
                List.of(redrawn),
                drawn.driverModels().stream()
                        .filter(d -> drivers.contains(d.code()))
                        .toList());
    }

    List<UnitLine> lines() {
        List<UnitLine> lines = new ArrayList<>();
        for (int i = 0; i < units.size(); i++) {
            int index = i;
            Optional<TeachingCheck.Doubt> doubt = progress.values().stream()
                    .flatMap(p -> p.doubts().stream())
                    .filter(d -> d.unit() == index)
                    .max(Comparator.comparingDouble(TeachingCheck.Doubt::faultProbability));
            lines.add(new UnitLine(
                    units.get(i).tag(),
                    doubt.isPresent() ? ReadingState.FAULT : ReadingState.OK,
                    doubt.map(Lesson::words)));
        }
        return lines;
    }

    private static Reason words(TeachingCheck.Doubt doubt) {
        return doubt.suspects().isEmpty() || doubt.suspects().get(0).kind() == FaultKind.UNKNOWN
                ? Reason.of("teach-differs")
                : doubt.suspects().get(0).evidence();
    }

    Optional<Progress> progress() {
        return progress.values().stream()
                .max(Comparator.comparingInt((TeachingProgress p) -> p.missed().size())
                        .thenComparing(p -> p.grade(), Comparator.reverseOrder()))
                .map(p -> new Progress(
                        p.reference().unitCount(),
                        p.grade(),
                        p.unfitted(),
                        p.unexplained(),
                        p.faultCount(),
                        p.missed().stream().map(Lesson::missed).toList(),
                        p.groups().stream()
                                .mapToInt(g -> g.members().size())
                                .filter(n -> n > 1)
                                .sum(),
                        model.testPoints().stream().allMatch(t -> t.kind() == TestPointKind.LINE_INPUT)));
    }

    private static Missed missed(AmbiguityGroups.Member member) {
        String where = member.elementId() != null
                ? member.elementId()
                : member.positionCode() == null ? "" : member.positionCode();
        return new Missed(member.kind(), where, member.deviations());
    }

    /** Curve of the unit swept last, at the first test point that has one, over the ribbon of what was taught. */
    Optional<CurvePicture> curve() {
        if (units.isEmpty()) {
            return Optional.empty();
        }
        Unit last = units.get(units.size() - 1);
        return progress.entrySet().stream()
                .filter(e -> last.byPoint().get(e.getKey()).impedance() != null)
                .findFirst()
                .map(e -> picture(
                        e.getKey(), e.getValue().reference(), last.byPoint().get(e.getKey())));
    }

    private static CurvePicture picture(String point, PointReference reference, ReferenceTeacher.Unit unit) {
        double[] hz = reference.frequencyHz();
        double[] low = new double[hz.length];
        double[] high = new double[hz.length];
        for (int i = 0; i < hz.length; i++) {
            double width = RIBBON_SPREADS * reference.spreadLog()[i];
            low[i] = Math.exp(reference.meanLogOhm()[i] - width);
            high[i] = Math.exp(reference.meanLogOhm()[i] + width);
        }
        return new CurvePicture(
                point,
                DecidingCurve.IMPEDANCE,
                unit.impedance().frequencyHz(),
                unit.impedance().magnitudesOhm(),
                hz.clone(),
                low,
                high,
                NOTHING,
                0,
                0);
    }
}
