package org.docksweep.judge;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.acoustic.SoundEvidence;
import org.docksweep.acoustic.WayBand;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Conformance;
import org.docksweep.gate.LimitSet;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;
import org.docksweep.sweep.SoundPrint;

/**
 * Faults that the current does not show, each with the logarithm of its prior weight times the likelihood of what was
 * heard. Prior weights stand beside 0.9 for healthy; common practice, no source.
 */
final class SoundHypotheses {
    static final double HEALTHY = 0.9;

    private static final double WEAK = 0.004;
    private static final double REVERSED = 0.002;

    /** At a powered cabinet: a part of the double impedance in this way, or of half of it in the other. */
    private static final double WRONG_PART = 0.004;

    /** An amplifier gives a coil of the double impedance half the power, in dB. */
    private static final double WRONG_PART_DB = 3;

    private static final double TOUCHING = 0.006;

    /** Share of a rub among touching parts where the excursion is largest, and elsewhere. */
    private static final double RUB_AT_THE_BOTTOM = 0.8;

    private static final double RUB_ELSEWHERE = 0.5;

    /** A driver of a way moves most this far below the band in which it speaks alone (common practice, no source). */
    private static final double MOVES_BELOW = 6;

    private final TestPoint point;
    private final SoundEvidence evidence;
    private final SoundPrint print;

    SoundHypotheses(TestPoint point, SoundEvidence evidence, SoundPrint print) {
        this.point = point;
        this.evidence = evidence;
        this.print = print;
    }

    /**
     * An explanation.
     *
     * @param suspect what is wrong; its probability is not yet known
     * @param log logarithm of prior weight and likelihood
     */
    record Weighed(Suspect suspect, double log) {}

    List<Weighed> all() {
        List<Weighed> all = new ArrayList<>();
        double atLevel = evidence.levelsHealthy(1);
        for (int w = 0; w < evidence.ways().size(); w++) {
            WayBand band = evidence.ways().get(w).band();
            int drivers = band.positionCodes().size();
            for (String position : band.positionCodes()) {
                if (heardAgainstAnother()) {
                    all.add(new Weighed(weak(w, position), weakLog(w) - StrictMath.log(drivers)));
                }
                double reversed = evidence.reversed(w);
                if (reversed > 0) {
                    all.add(new Weighed(
                            reversed(w, position),
                            StrictMath.log(REVERSED / drivers) + evidence.levelsTurned(w) + reversed));
                }
            }
        }
        if (evidence.touching() > 0) {
            touching(all, atLevel + evidence.touching());
        }
        return all;
    }

    private double weakLog(int way) {
        double any = StrictMath.log(WEAK) + evidence.levelsWith(way, 0);
        if (point.kind() != org.docksweep.fleet.TestPointKind.LINE_INPUT) {
            return any;
        }
        double wrong = StrictMath.log(WRONG_PART) + evidence.levelsBy(way, WRONG_PART_DB);
        double most = Math.max(any, wrong);
        return most + StrictMath.log(StrictMath.exp(any - most) + StrictMath.exp(wrong - most));
    }

    /** With a gain knob between, one way alone has no level of its own. */
    private boolean heardAgainstAnother() {
        return evidence.ways().size() > 1 || point.kind() != org.docksweep.fleet.TestPointKind.LINE_INPUT;
    }

    /**
     * Whether a way has lost more than the house allows, whatever its probability.
     *
     * @param limits limits
     * @return true if so
     */
    boolean overLimit(LimitSet limits) {
        double limitDb =
                Conformance.acceptanceLimit(limits.wayLevelLimitDb(), limits.guardFactor(), evidence.wayErrorDb());
        for (int w = 0; heardAgainstAnother() && w < evidence.ways().size(); w++) {
            if (shownDb(w) < -limitDb) {
                return true;
            }
        }
        return false;
    }

    private Suspect weak(int way, String position) {
        String change = Rounding.decibel(shownDb(way));
        return new Suspect(
                FaultKind.WAY_WEAK,
                point.code(),
                position,
                null,
                0,
                Reason.of("suspect-way-weak", position, change),
                Reason.of("next-way-weak", position));
    }

    /** Level as it is told: against the other way behind a gain knob, else against the way's own. */
    double shownDb(int way) {
        double change = evidence.ways().get(way).changeDb();
        return point.kind() == org.docksweep.fleet.TestPointKind.LINE_INPUT ? change - evidence.sharedDb() : change;
    }

    private Suspect reversed(int way, String position) {
        double ratio = evidence.turnedRatio(way);
        return new Suspect(
                FaultKind.WAY_REVERSED,
                point.code(),
                position,
                null,
                0,
                Reason.of("suspect-way-reversed", position, Rounding.plain(ratio)),
                Reason.of("next-way-reversed", position));
    }

    private void touching(List<Weighed> all, double log) {
        SoundPrint.Event event = print.event();
        String where = Rounding.hertz(Math.sqrt(event.fromHz() * event.toHz()));
        String level = Rounding.decibel(event.burstDb());
        boolean bottom = event.fromHz() < 1.5 * point.levelMask().lowestHz();
        double rub = bottom ? RUB_AT_THE_BOTTOM : RUB_ELSEWHERE;
        List<String> movers = movers(event);
        for (String position : movers) {
            all.add(new Weighed(
                    new Suspect(
                            FaultKind.COIL_RUBS,
                            point.code(),
                            position,
                            null,
                            0,
                            Reason.of("suspect-coil-rubs", position, where, level),
                            Reason.of("next-coil-rubs", position)),
                    log + StrictMath.log(TOUCHING * rub / movers.size())));
        }
        all.add(new Weighed(
                new Suspect(
                        FaultKind.LOOSE_PART,
                        point.code(),
                        null,
                        null,
                        0,
                        Reason.of("suspect-loose-part", where, level),
                        Reason.of("next-loose-part")),
                log + StrictMath.log(TOUCHING * (1 - rub))));
    }

    /** Drivers that move most at the frequency of the event: those of the highest way that has begun to move. */
    private List<String> movers(SoundPrint.Event event) {
        double hz = Math.sqrt(event.fromHz() * event.toHz());
        List<SoundEvidence.Way> ways = evidence.ways();
        WayBand mover = ways.get(0).band();
        for (SoundEvidence.Way way : ways) {
            if (way.band().fromHz() < MOVES_BELOW * hz) {
                mover = way.band();
            }
        }
        return mover.positionCodes();
    }
}
