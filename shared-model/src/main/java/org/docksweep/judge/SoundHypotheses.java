package org.docksweep.judge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.acoustic.SoundEvidence;
import org.docksweep.acoustic.WayBand;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
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

    /** At a powered cabinet: a part of the double impedance in a way, or of half of it, each. */
    private static final double WRONG_PART = 0.002;

    /** An amplifier gives a coil of the double impedance half the power, one of half of it the double, in dB. */
    private static final double WRONG_PART_DB = 3;

    private static final double TOUCHING = 0.006;

    /** Share of rubs among touching parts; where in the sweep they touch says the rest. */
    private static final double RUB = 2.0 / 3;

    private final TestPoint point;
    private final SoundEvidence evidence;
    private final SoundPrint print;
    private final ModelBook book;
    private final CabinetModel model;

    SoundHypotheses(ModelBook book, CabinetModel model, TestPoint point, SoundEvidence evidence, SoundPrint print) {
        this.book = book;
        this.model = model;
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
                if (heardAgainstAnother() && behindAmplifier()) {
                    all.add(new Weighed(
                            loud(w, position),
                            StrictMath.log(WRONG_PART / drivers) + evidence.levelsBy(w, -WRONG_PART_DB)));
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
        if (!behindAmplifier()) {
            return any;
        }
        double wrong = StrictMath.log(WRONG_PART) + evidence.levelsBy(way, WRONG_PART_DB);
        double most = Math.max(any, wrong);
        return most + StrictMath.log(StrictMath.exp(any - most) + StrictMath.exp(wrong - most));
    }

    /** With a gain knob between, one way alone has no level of its own. */
    private boolean heardAgainstAnother() {
        return evidence.ways().size() > 1 || !behindAmplifier();
    }

    private boolean behindAmplifier() {
        return point.kind() == TestPointKind.LINE_INPUT;
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

    /** A part of half the impedance makes its way the louder one; against each other, the other looks weak. */
    private Suspect loud(int way, String position) {
        return new Suspect(
                FaultKind.WRONG_IMPEDANCE_PART,
                point.code(),
                position,
                null,
                0,
                Reason.of("suspect-way-loud", position, Rounding.decibel(shownDb(way))),
                Reason.of("next-wrong-impedance-part", position));
    }

    /** Level as it is told: against the other way behind a gain knob, else against the way's own. */
    double shownDb(int way) {
        double change = evidence.ways().get(way).changeDb();
        return behindAmplifier() ? change - evidence.sharedDb() : change;
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
        Map<String, Double> shares = shares(event);
        shares.forEach((position, share) -> all.add(new Weighed(
                position.isEmpty() ? loosePart(where, level) : rubbing(position, where, level),
                log + StrictMath.log(TOUCHING * share))));
    }

    /** How what touches divides among the drivers and a loose part (the empty position): where it was heard decides. */
    private Map<String, Double> shares(SoundPrint.Event event) {
        TouchingPlaces places = new TouchingPlaces(book, model, point);
        Map<String, Double> shares = new LinkedHashMap<>();
        for (String position : places.positions()) {
            shares.put(position, RUB / places.size() * places.ofDriver(position, event.fromHz(), event.toHz()));
        }
        shares.put("", (1 - RUB) * places.ofLoosePart(event.fromHz(), event.toHz()));
        double sum = shares.values().stream().mapToDouble(Double::doubleValue).sum();
        shares.replaceAll((position, share) -> share / sum);
        return shares;
    }

    private Suspect rubbing(String position, String where, String level) {
        return new Suspect(
                FaultKind.COIL_RUBS,
                point.code(),
                position,
                null,
                0,
                Reason.of("suspect-coil-rubs", position, where, level),
                Reason.of("next-coil-rubs", position));
    }

    private Suspect loosePart(String where, String level) {
        return new Suspect(
                FaultKind.LOOSE_PART,
                point.code(),
                null,
                null,
                0,
                Reason.of("suspect-loose-part", where, level),
                Reason.of("next-loose-part"));
    }
}
