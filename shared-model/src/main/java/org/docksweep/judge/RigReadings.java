package org.docksweep.judge;

import java.util.Optional;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.rigcal.RigRepeatability;
import org.docksweep.suspect.Explanation;

/** What a judgement says of the rig: the contact of its plug, and what was held of its repeatability. */
final class RigReadings {
    /**
     * A curve that knows the contact no better says nothing of the plug, in ohm. Points behind a network know it to 0.02 to 0.05;
     * where the drivers sit at the terminals the coils' temperature looks like a contact (0.1 and more), and a whole truck has it.
     */
    private static final double MOST_UNCERTAIN_OHM = 0.08;

    private final TestPoint point;
    private final boolean baseline;

    RigReadings(TestPoint point, boolean baseline) {
        this.point = point;
        this.baseline = baseline;
    }

    /**
     * Contact of the plug in series, of a point that passed. Only against a baseline: with the model's reference alone units
     * differ in their coils by more than plugs do. The fit shrinks the contact towards the usual one; what the curve alone says
     * follows from prior and posterior by division of the normal distributions,
     * {@code 1/u^2 = 1/s^2 - 1/s0^2, c = m + (x - m) s0^2 / (s0^2 - s^2)}.
     *
     * @param knowledge what was known before
     * @param explanation healthy fit
     * @return the contact in ohm; empty when the curve does not tell it from coils and their temperature
     */
    Optional<Reading> contact(Knowledge knowledge, Explanation explanation) {
        int at = knowledge.circuit().indexOf("contact");
        double usual = knowledge.prior().mean()[at];
        double before = Math.pow(knowledge.prior().spread()[at], 2);
        double after = Math.pow(explanation.healthySpread()[at], 2);
        double information = 1 / after - 1 / before;
        if (!baseline || !(information > 1 / (MOST_UNCERTAIN_OHM * MOST_UNCERTAIN_OHM))) {
            return Optional.empty();
        }
        return Optional.of(new Reading(
                ReadingKind.PLUG_CONTACT,
                point.code(),
                null,
                Rounding.significant(usual + (explanation.healthyX()[at] - usual) * before / (before - after)),
                Rounding.significant(1 / Math.sqrt(information)),
                Rounding.significant(usual),
                null,
                null,
                ReadingState.OK));
    }

    /**
     * What was held of the rig, when it has a study.
     *
     * @param rig what its study found
     * @return relative standard deviation of |Z| in per cent, WATCH when it widened anything; empty without a study
     */
    Optional<Reading> repeatability(RigRepeatability rig) {
        if (!rig.known()) {
            return Optional.empty();
        }
        double share = rig.impedanceOf(baseline ? 2 : 1);
        double held = 100 * Math.max(share, Knowledge.RIG_SHARE);
        return Optional.of(new Reading(
                ReadingKind.RIG_REPEATABILITY,
                point.code(),
                null,
                Rounding.significant(held),
                // Relative standard uncertainty of a standard deviation, JCGM 100:2008, E.4.3.
                share > Knowledge.RIG_SHARE ? Rounding.significant(held / Math.sqrt(2.0 * rig.freedom())) : 0,
                Rounding.significant(100 * Knowledge.RIG_SHARE),
                null,
                null,
                share > Knowledge.RIG_SHARE ? ReadingState.WATCH : ReadingState.OK));
    }
}
