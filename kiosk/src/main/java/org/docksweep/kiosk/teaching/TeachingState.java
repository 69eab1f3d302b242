package org.docksweep.kiosk.teaching;

import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.CurvePicture;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.TeachingProgress.Grade;

/**
 * What the fleet page shows: one immutable picture at a time.
 *
 * @param activity what is being done
 * @param models all models, by code
 * @param marked index of the marked model, or -1 when there is none
 * @param drawing drawing being filled in; present in activity DRAWING
 * @param lesson lesson at hand; present in activities UNITS and SIGN_ON
 * @param prompt what is asked for now
 * @param message what came of the last step; empty when there is nothing to say
 * @param steps steps that can be taken, the expected one first
 * @param sweepShare how far the sweep has come, 0 to 1; present while one plays
 * @param secret whether what is typed now must not be shown
 * @param busy whether something slow goes on, so that only stop is heard
 */
public record TeachingState(
        Activity activity,
        List<ModelStanding> models,
        int marked,
        Optional<Drawing> drawing,
        Optional<LessonAtHand> lesson,
        Reason prompt,
        Optional<Message> message,
        List<TeachingStep> steps,
        Optional<Double> sweepShare,
        boolean secret,
        boolean busy) {

    /** What is being done. */
    public enum Activity {
        /** Looking at the models. */
        MODELS,
        /** Filling in a drawing. */
        DRAWING,
        /** Sweeping known-good units. */
        UNITS,
        /** A manager signs on to hand the lesson in. */
        SIGN_ON
    }

    public TeachingState {
        models = List.copyOf(models);
        steps = List.copyOf(steps);
        if (marked < -1 || marked >= models.size()) {
            throw new IllegalArgumentException("model " + marked + " is marked, but there are " + models.size());
        }
        if ((activity == Activity.DRAWING) != drawing.isPresent()) {
            throw new IllegalArgumentException("a drawing belongs to activity DRAWING and to no other");
        }
        if ((activity == Activity.UNITS || activity == Activity.SIGN_ON) != lesson.isPresent()) {
            throw new IllegalArgumentException("a lesson belongs to activities UNITS and SIGN_ON and to no other");
        }
    }

    /**
     * A sentence with its weight.
     *
     * @param state weight
     * @param text sentence
     */
    public record Message(ReadingState state, Reason text) {}

    /**
     * A drawing being filled in.
     *
     * @param model what it comes to
     * @param named whether it has a code yet
     * @param impedanceOhm rated impedance
     * @param crossoverHz crossover frequency
     * @param slopeDb slope in dB per octave
     * @param box closed or vented
     * @param woofers cones
     * @param inches size of a cone
     * @param padDb pad before the horn, 0 for none
     */
    public record Drawing(
            CabinetModel model,
            boolean named,
            double impedanceOhm,
            double crossoverHz,
            int slopeDb,
            EnclosureKind box,
            int woofers,
            double inches,
            double padDb) {}

    /**
     * A lesson.
     *
     * @param model model taught
     * @param isNew whether the house does not know it yet
     * @param units units swept so far, in order
     * @param progress what they teach; empty before the first
     * @param unit unit being swept; empty between units
     * @param contacts where to plug in now; empty between units
     * @param curve curve of the unit swept last over what was taught
     */
    public record LessonAtHand(
            CabinetModel model,
            boolean isNew,
            List<UnitLine> units,
            Optional<Progress> progress,
            Optional<AssetTag> unit,
            Optional<String> contacts,
            Optional<CurvePicture> curve) {
        public LessonAtHand {
            units = List.copyOf(units);
        }
    }

    /**
     * A unit.
     *
     * @param tag its tag
     * @param state OK when it teaches, FAULT when it is left out
     * @param words why it is left out; empty when it teaches
     */
    public record UnitLine(AssetTag tag, ReadingState state, Optional<Reason> words) {}

    /**
     * How far a lesson has come; of several test points the one that has come least.
     *
     * @param kept units that teach
     * @param grade what a gate taught so far is good for
     * @param unfitted what the drawing alone leaves of the curves, relative
     * @param unexplained what the reference leaves, relative
     * @param faults faults looked for
     * @param missed those that may be missed, least visible first
     * @param alike faults that look like another one
     * @param soundOnly whether there is nothing but the sound to judge by
     */
    public record Progress(
            int kept,
            Grade grade,
            double unfitted,
            double unexplained,
            int faults,
            List<Missed> missed,
            int alike,
            boolean soundOnly) {
        public Progress {
            missed = List.copyOf(missed);
        }
    }

    /**
     * A fault that may be missed.
     *
     * @param kind what
     * @param where driver position, part or box; empty for the plug
     * @param deviations standard deviations by which it stands out
     */
    public record Missed(FaultKind kind, String where, double deviations) {}
}
