package org.docksweep.suspect;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.DrawingFit;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * Looks for faulty units among those a reference is taught from: each is judged by what the others teach; one or two units, by the
 * model's nominal values alone, which shows hard faults only.
 */
public final class TeachingCheck {
    private static final int OTHERS_NEEDED = 2;
    /**
     * Somebody called the unit good: one in a hundred of such is faulty, against one in ten of those that come back
     * ({@link HypothesisSet#HEALTHY}); both common practice, no source. Even odds after that are this after the gate's own
     * prior.
     */
    private static final double DOUBTFUL = evenOdds(0.01);
    /** Others from which even what no fault explains is believed; as many as the proving run teaches from. */
    private static final int ENOUGH_OTHERS = 5;
    /** Reduced chi squared of a healthy circuit that no healthy unit has; judgement of ours. */
    private static final double GROSS = 12;

    private TeachingCheck() {}

    private static double evenOdds(double faultyShare) {
        double odds = (1 - faultyShare) / faultyShare * (1 - HypothesisSet.HEALTHY) / HypothesisSet.HEALTHY;
        return odds / (1 + odds);
    }

    /**
     * A unit that had better not be taught from.
     *
     * @param unit its index in the list, from 0
     * @param faultProbability probability that something is wrong with it
     * @param misfit reduced chi squared of the healthy circuit: tells the worse of two units that are both certainly faulty
     * @param suspects what, most probable first
     */
    public record Doubt(int unit, double faultProbability, double misfit, List<Suspect> suspects) {
        /** Few others say little of how healthy units stray: then something must name what is wrong, or it must be gross. */
        boolean serious(int others) {
            return faultProbability >= DOUBTFUL && (named() || others >= ENOUGH_OTHERS || misfit > GROSS);
        }

        /** Whether a known fault explains the unit. */
        boolean named() {
            return !suspects.isEmpty() && suspects.get(0).kind() != FaultKind.UNKNOWN;
        }

        /** The same doubt of the same unit, counted in a longer list. */
        Doubt at(int index) {
            return new Doubt(index, faultProbability, misfit, suspects);
        }
    }

    /**
     * Judges the units of a lesson by one another.
     *
     * @param book models
     * @param model cabinet model
     * @param point test point with terminals
     * @param units known-good units, as for {@link ReferenceTeacher#teach}
     * @return doubtful units, in the order given; empty when all look alike
     * @throws IllegalArgumentException if the units cannot be taught from at all
     */
    public static List<Doubt> doubts(
            ModelBook book, CabinetModel model, TestPoint point, List<ReferenceTeacher.Unit> units) {
        return opinions(book, model, point, units).stream()
                .filter(o -> o.serious(units.size() - 1))
                .toList();
    }

    /** What a drawing whose values are guesses says of a unit by itself. */
    static Doubt byGuess(ModelBook book, CabinetModel model, TestPoint point, int index, ReferenceTeacher.Unit unit) {
        Explanation explanation = new SuspectRanking(
                        book,
                        model,
                        point,
                        DrawingFit.guessed(book, model, point).at(unit.ambientCelsius()))
                .explain(unit.impedance());
        return new Doubt(
                index, explanation.faultProbability(), explanation.healthyReducedChi2(), explanation.suspects());
    }

    /** What the others say of each unit, in the order given. */
    static List<Doubt> opinions(
            ModelBook book, CabinetModel model, TestPoint point, List<ReferenceTeacher.Unit> units) {
        List<Doubt> opinions = new ArrayList<>();
        for (int i = 0; i < units.size(); i++) {
            List<ReferenceTeacher.Unit> others = new ArrayList<>(units);
            ReferenceTeacher.Unit unit = others.remove(i);
            Knowledge nominal = Knowledge.nominal(book, model, point);
            Knowledge knowledge = others.size() < OTHERS_NEEDED
                    ? nominal
                    : nominal.taughtBy(ReferenceTeacher.teach(book, model.code(), point.code(), others));
            ImpedanceCurve curve = unit.impedance();
            Explanation explanation =
                    new SuspectRanking(book, model, point, knowledge.at(unit.ambientCelsius())).explain(curve);
            opinions.add(new Doubt(
                    i, explanation.faultProbability(), explanation.healthyReducedChi2(), explanation.suspects()));
        }
        return opinions;
    }
}
