package org.docksweep.suspect;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.docksweep.circuit.CircuitFit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.DrawingFit;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * How far the teaching of a test point has come after some units: which of them do not belong, how well the drawing fits the
 * others, and what a gate taught by them would miss. Every unit is looked at anew each time, so that one bad unit among the
 * first is found as soon as there are others to compare it with.
 *
 * @param book models, a guessed drawing's values replaced by those of the units
 * @param reference what the units that belong teach
 * @param doubts units that had better be left out, by their index; not part of the reference
 * @param unfitted root mean square of what the drawing alone leaves of the curves of the units kept, relative (0.01 is one per
 *     cent); 0 for a line input, which has no curve
 * @param unexplained the same of what the reference leaves: smaller, since what all units share is learned
 * @param groups faults with what they look like and by how much they would stand out; empty for a line input
 */
public record TeachingProgress(
        ModelBook book,
        PointReference reference,
        List<TeachingCheck.Doubt> doubts,
        double unfitted,
        double unexplained,
        List<AmbiguityGroups.Group> groups) {

    /** Units from which the figures of the proving run hold. */
    public static final int UNITS_FOR_SOFT_FAULTS = 5;

    /** A drawing that leaves more is believed no further than an untaught one ({@code gate.Knowledge}). */
    public static final double DRAWING_FITS = 0.03;

    /** Standard deviations from which a fault is missed in less than 2 % of cases (docs/gate.md, 8). */
    public static final double SURE = 6;

    public TeachingProgress {
        doubts = List.copyOf(doubts);
        groups = List.copyOf(groups);
    }

    /** What a gate taught so far is good for. */
    public enum Grade {
        /** The drawing does not describe these cabinets: what is wrong would be seen, its name be a guess. */
        WRONG_DRAWING,
        /** Dead drivers and parts are found; spreads are not learned yet. */
        HARD_FAULTS,
        /** As good as known-good units make it. */
        GOOD
    }

    /**
     * Looks at the units of a lesson.
     *
     * @param book models, with the one taught
     * @param model cabinet model
     * @param point test point
     * @param units units so far, 1 to {@link ReferenceTeacher#MAX_UNITS}
     * @param guessed whether the model's values are guesses from a plate, to be fitted to the units first
     * @return how far the lesson has come
     * @throws IllegalArgumentException if nothing can be taught from the units
     */
    public static TeachingProgress of(
            ModelBook book, CabinetModel model, TestPoint point, List<ReferenceTeacher.Unit> units, boolean guessed) {
        if (point.kind() == TestPointKind.LINE_INPUT) {
            PointReference reference = ReferenceTeacher.teach(book, model.code(), point.code(), units);
            return new TeachingProgress(book, reference, List.of(), 0, 0, List.of());
        }
        return new Sorting(book, model, point, units, guessed).sort();
    }

    /** Takes out who does not belong, the worst first, until those left agree. */
    private static final class Sorting {
        private final ModelBook book;
        private final CabinetModel model;
        private final TestPoint point;
        private final List<ReferenceTeacher.Unit> units;
        private final List<TeachingCheck.Doubt> doubts = new ArrayList<>();
        private final TreeSet<Integer> kept;
        private final DrawingFit drawing;
        private final List<DrawingFit.Unit> fits;

        Sorting(
                ModelBook book,
                CabinetModel model,
                TestPoint point,
                List<ReferenceTeacher.Unit> units,
                boolean guessed) {
            this.book = book;
            this.model = model;
            this.point = point;
            this.units = units;
            this.kept = new TreeSet<>(IntStream.range(0, units.size()).boxed().toList());
            this.drawing = guessed ? new DrawingFit(book, model, point) : null;
            this.fits = guessed ? units.stream().map(drawing::fit).toList() : List.of();
        }

        TeachingProgress sort() {
            if (drawing != null) {
                IntStream.range(0, units.size())
                        .mapToObj(i -> TeachingCheck.byGuess(book, model, point, i, units.get(i)))
                        .filter(d -> d.serious(0))
                        .sorted(Comparator.comparingDouble(TeachingCheck.Doubt::misfit)
                                .reversed())
                        .forEach(this::leaveOut);
            }
            ModelBook drawn = drawn();
            Optional<TeachingCheck.Doubt> worst = worst(drawn);
            while (worst.isPresent() && kept.size() > 1) {
                leaveOut(worst.get());
                drawn = drawn();
                worst = worst(drawn);
            }
            worst.ifPresent(doubts::add);
            return progress(drawn);
        }

        /** The last one has nobody beside it to be compared with, and somebody has to teach. */
        private void leaveOut(TeachingCheck.Doubt doubt) {
            if (kept.size() > 1) {
                kept.remove(doubt.unit());
            }
            doubts.add(doubt);
        }

        private ModelBook drawn() {
            return drawing == null
                    ? book
                    : drawing.redrawn(kept.stream().map(fits::get).toList());
        }

        /**
         * The most doubtful of those kept, by its index among all: one whose fault has a name before one that merely looks unlike
         * the others, since these are not to be trusted while the first is among them.
         */
        private Optional<TeachingCheck.Doubt> worst(ModelBook drawn) {
            List<Integer> places = List.copyOf(kept);
            CabinetModel redrawn = drawn.cabinetModel(model.code());
            return TeachingCheck.doubts(drawn, redrawn, redrawn.testPoint(point.code()), good()).stream()
                    .max(Comparator.comparing(TeachingCheck.Doubt::named)
                            .thenComparingDouble(TeachingCheck.Doubt::misfit))
                    .map(d -> d.at(places.get(d.unit())))
                    .filter(d -> doubts.stream().noneMatch(before -> before.unit() == d.unit()));
        }

        private List<ReferenceTeacher.Unit> good() {
            return kept.stream().map(units::get).toList();
        }

        private TeachingProgress progress(ModelBook drawn) {
            CabinetModel redrawn = drawn.cabinetModel(model.code());
            TestPoint at = redrawn.testPoint(point.code());
            PointReference reference = ReferenceTeacher.teach(drawn, model.code(), point.code(), good());
            Knowledge taught = Knowledge.nominal(drawn, redrawn, at).taughtBy(reference);
            double[] left = leftOver(taught, good());
            return new TeachingProgress(
                    drawn,
                    reference,
                    doubts.stream()
                            .sorted(Comparator.comparingInt(TeachingCheck.Doubt::unit))
                            .toList(),
                    left[0],
                    left[1],
                    AmbiguityGroups.of(drawn, redrawn, at, reference).groups());
        }
    }

    /** Root mean squares of what the circuit leaves, and of what is left when what units share is taken off. */
    private static double[] leftOver(Knowledge taught, List<ReferenceTeacher.Unit> units) {
        double circuit = 0;
        double rest = 0;
        int count = 0;
        for (ReferenceTeacher.Unit unit : units) {
            ImpedanceCurve curve = unit.impedance();
            double[] x = CircuitFit.fit(
                            taught.circuit(),
                            taught.dataOf(curve),
                            taught.at(unit.ambientCelsius()).prior(),
                            taught.start())
                    .x();
            double[][] fitted = CircuitFit.predict(taught.circuit(), curve.frequencyHz(), x);
            for (int i = 0; i < curve.size(); i++) {
                double log = Math.log(curve.magnitudeOhm(i)) - fitted[0][i];
                double phase = Math.IEEEremainder(
                        Math.atan2(curve.reactanceOhm()[i], curve.resistanceOhm()[i]) - fitted[1][i], 2 * Math.PI);
                circuit += log * log + phase * phase;
                log -= taught.offsets().logOhm()[i];
                phase -= taught.offsets().phaseRad()[i];
                rest += log * log + phase * phase;
                count += 2;
            }
        }
        return new double[] {Math.sqrt(circuit / count), Math.sqrt(rest / count)};
    }

    /**
     * What a gate taught so far is good for.
     *
     * @return the grade
     */
    public Grade grade() {
        if (unfitted > DRAWING_FITS) {
            return Grade.WRONG_DRAWING;
        }
        return reference.unitCount() < UNITS_FOR_SOFT_FAULTS ? Grade.HARD_FAULTS : Grade.GOOD;
    }

    /**
     * Faults that a gate taught so far may miss, at the severities that matter with a reference alone.
     *
     * @return those that stand out by less than {@link #SURE}, least first
     */
    public List<AmbiguityGroups.Member> missed() {
        return groups.stream()
                .flatMap(g -> g.members().stream())
                .filter(m -> m.deviations() < SURE)
                .sorted(Comparator.comparingDouble(AmbiguityGroups.Member::deviations))
                .toList();
    }

    /**
     * Number of faults looked for.
     *
     * @return all members of all groups
     */
    public int faultCount() {
        return groups.stream().mapToInt(g -> g.members().size()).sum();
    }
}
