package org.docksweep.kiosk.night;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.docksweep.contract.DemoHouse;
import org.docksweep.fleet.Reasons;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.kiosk.rig.RigBook;
import org.docksweep.kiosk.rig.RigDay;
import org.docksweep.kiosk.rig.RigEntry;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.kiosk.rig.RigStandings;
import org.docksweep.kiosk.rig.RigStation;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.kiosk.rig.StandardSet;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.CurveCorrection;
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

    /** The rig at the dock, with what is put around it. */
    PracticeRig atTheDock() throws RigException {
        return around.apply(atTheDock(options));
    }

    /** The rig at the dock. */
    static PracticeRig atTheDock(NightOptions options) throws RigException {
        return (PracticeRig) Rigs.open(
                "virtual",
                Map.of(
                        "seed",
                        Long.toString(options.seed()),
                        "moment",
                        "at-return",
                        "realTime",
                        Boolean.toString(options.realTime())));
    }

    /**
     * How the rig stands in this night.
     *
     * @param calibration in force
     * @param standing may it judge, and with which correction
     */
    record Standing(RigCalibration calibration, RigStanding standing) {
        CurveCorrection correction() {
            return standing.correction();
        }
    }

    /** Calibrates the rig and checks it, as every day begins, and enters both into its book. */
    Standing check(Gate gate, DemoHouse house, NightReport report) throws IOException, RigException {
        try (PracticeRig rig = (PracticeRig) Rigs.open("virtual", settings("at-return"));
                RigBook book = RigBook.open(rigs(), rig.id())) {
            StandardSet standards = StandardSet.practice();
            RigDay day = new RigDay(rig, gate, standards, Clock.systemUTC());
            RigDay.Result result = day.calibrateAndCheck(ZoneId.of(house.timeZone()));
            RigCalibration calibration = result.calibration();
            book.append(
                    new RigEntry.Calibrated(calibration.takenAt(), house.dockHand(), standards.loadOhm(), calibration));
            book.append(new RigEntry.Checked(Instant.now(), house.dockHand(), result.readings()));
            RigStation.hear(rig, gate, book, house::dockHand, Clock.systemUTC(), calibration);
            result.checks().forEach(check -> report.say("Rig: %s", Reasons.text(check.reason(), Locale.ENGLISH)));
            report.say("Rig: %s", Reasons.text(result.standing().words(), Locale.ENGLISH));
            return new Standing(calibration, result.standing());
        }
    }

    /** As a kiosk finds it that starts again in the same night: what the book says holds. */
    Standing asItsBookSays(ZoneId zone) throws IOException, RigException {
        try (PracticeRig rig = (PracticeRig) Rigs.open("virtual", settings("at-return"));
                RigBook book = RigBook.open(rigs(), rig.id())) {
            RigEntry.Calibrated calibrated = book.calibrationInForce()
                    .orElseThrow(() -> new IOException("the rig was not calibrated in " + options.folder()));
            return new Standing(calibrated.calibration(), new RigStandings(book, Clock.systemUTC(), zone).get());
        }
    }

    private Path rigs() {
        return options.folder().resolve("rigs");
    }

    private Map<String, String> settings(String moment) {
        return Map.of("seed", Long.toString(options.seed()), "moment", moment);
    }
}
