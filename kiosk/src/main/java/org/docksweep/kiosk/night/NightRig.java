package org.docksweep.kiosk.night;

import java.time.Clock;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.docksweep.fleet.Reasons;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.kiosk.rig.RigDay;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.kiosk.rig.StandardSet;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;

/** The virtual rig of a night: before the hire, at the rig check, and at the dock. */
final class NightRig {
    private final NightOptions options;
    private final UnaryOperator<PracticeRig> around;

    /**
     * Prepares it; each use opens a rig of its own.
     *
     * @param options seed, and whether the rig takes the time that a real one takes
     * @param around puts something around the rig at the dock
     */
    NightRig(NightOptions options, UnaryOperator<PracticeRig> around) {
        this.options = options;
        this.around = around;
    }

    /** Settings of the rig as it was when the known-good units were swept. */
    Map<String, String> beforeTheHire() {
        return settings("before-hire");
    }

    /** The rig at the dock. */
    PracticeRig atTheDock() throws RigException {
        return around.apply((PracticeRig) Rigs.open(
                "virtual",
                Map.of(
                        "seed",
                        Long.toString(options.seed()),
                        "moment",
                        "at-return",
                        "realTime",
                        Boolean.toString(options.realTime()))));
    }

    /** Calibrates the rig and checks it, as every day begins. */
    RigDay.Result check(Gate gate, ZoneId zone, NightReport report) throws RigException {
        try (PracticeRig rig = (PracticeRig) Rigs.open("virtual", settings("at-return"))) {
            RigDay day = new RigDay(rig, gate, StandardSet.practice(), Clock.systemUTC());
            RigDay.Result result = day.calibrateAndCheck(zone);
            result.checks().forEach(check -> report.say("Rig: %s", Reasons.text(check.reason(), Locale.ENGLISH)));
            report.say("Rig: %s", Reasons.text(result.standing().words(), Locale.ENGLISH));
            return result;
        }
    }

    private Map<String, String> settings(String moment) {
        return Map.of("seed", Long.toString(options.seed()), "moment", moment);
    }
}
