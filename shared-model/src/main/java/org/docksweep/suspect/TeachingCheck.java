package org.docksweep.suspect;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * Looks for faulty units among those a reference is taught from: each is judged by what the others teach; one or two units, by the
 * model's nominal values alone, which shows hard faults only.
 */
public final class TeachingCheck {
    private static final int OTHERS_NEEDED = 2;
    private static final double DOUBTFUL = 0.5;

    private TeachingCheck() {}

    /**
     * A unit that had better not be taught from.
     *
     * @param unit its index in the list, from 0
     * @param faultProbability probability that something is wrong with it
     * @param suspects what, most probable first
     */
    public record Doubt(int unit, double faultProbability, List<Suspect> suspects) {}

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
        List<Doubt> doubts = new ArrayList<>();
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
            if (explanation.faultProbability() >= DOUBTFUL) {
                doubts.add(new Doubt(i, explanation.faultProbability(), explanation.suspects()));
            }
        }
        return doubts;
    }
}
