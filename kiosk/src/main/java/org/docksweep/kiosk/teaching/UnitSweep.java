package org.docksweep.kiosk.teaching;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.kiosk.dock.DockParts;
import org.docksweep.kiosk.dock.Measuring;
import org.docksweep.kiosk.dock.Measuring.Outcome;
import org.docksweep.sweep.SweepAnalysis;

/**
 * Sweeps the test points of one known-good unit, one by one: quiet probe, then sweep. While the microphone is not proved it teaches by its
 * current alone, and a powered one not at all. Blocking.
 */
final class UnitSweep {
    private final DockParts parts;
    private final Measuring measuring;
    private final AssetTag tag;
    private final CabinetModel model;
    private final Map<String, ReferenceTeacher.Unit> swept = new LinkedHashMap<>();
    private boolean soundLeftOut;

    UnitSweep(DockParts parts, AssetTag tag, CabinetModel model) {
        this.parts = parts;
        this.measuring = new Measuring(parts);
        this.tag = tag;
        this.model = model;
    }

    AssetTag tag() {
        return tag;
    }

    boolean complete() {
        return swept.size() == model.testPoints().size();
    }

    /** The test point to plug in and sweep next. */
    TestPoint next() {
        return model.testPoints().get(swept.size());
    }

    Lesson.Unit unit() {
        return new Lesson.Unit(tag, Map.copyOf(swept), soundLeftOut);
    }

    /** Sweeps the next test point; says why when it teaches nothing. */
    Optional<Reason> sweepNext(BooleanSupplier stopped, DoubleConsumer progress) {
        TestPoint point = next();
        boolean terminals = point.kind() != TestPointKind.LINE_INPUT;
        Optional<Reason> doubt = parts.standing().get().microphoneDoubt();
        if (!terminals && doubt.isPresent()) {
            return doubt;
        }
        int rateHz = parts.rig().sampleRateHz();
        Outcome probe = measuring.probe(
                new Measuring.Order(tag, point, parts.gate().probe(point, rateHz), stopped, share -> {}));
        if (probe instanceof Outcome.Failed failed) {
            return Optional.of(failed.reason());
        }
        SweepAnalysis quiet = ((Outcome.Probed) probe).analysis();
        if (terminals && quiet.load() == SweepAnalysis.Load.OPEN) {
            return Optional.of(Reason.of("dock-nothing-connected", tag.value(), point.contacts()));
        }
        if (terminals && quiet.load() == SweepAnalysis.Load.SHORT) {
            return Optional.of(Reason.of("teach-short", tag.value(), point.contacts()));
        }
        Outcome sweep =
                measuring.sweep(new Measuring.Order(tag, point, parts.gate().sweep(point, rateHz), stopped, progress));
        if (sweep instanceof Outcome.Failed failed) {
            return Optional.of(failed.reason());
        }
        var capture = ((Outcome.Captured) sweep).capture();
        return take(point, parts.gate().analyse(capture), capture.header().ambientCelsius());
    }

    private Optional<Reason> take(TestPoint point, SweepAnalysis analysis, Double ambientCelsius) {
        boolean terminals = point.kind() != TestPointKind.LINE_INPUT;
        if (!analysis.clean()) {
            return Optional.of(analysis.firstIssue().orElseThrow().reason());
        }
        if (terminals && analysis.load() != SweepAnalysis.Load.PRESENT) {
            return Optional.of(Reason.of("judge-no-curve", point.contacts()));
        }
        if (!terminals && analysis.acoustic() == null) {
            return Optional.of(Reason.of("teach-needs-microphone"));
        }
        if (terminals && !analysis.currentDropouts().isEmpty()) {
            return Optional.of(Reason.of("verdict-intermittent-contact", point.contacts()));
        }
        // What an unproved microphone hears would be held against every cabinet of the model.
        boolean proved = parts.standing().get().microphoneDoubt().isEmpty();
        if (!terminals && !proved) {
            return parts.standing().get().microphoneDoubt();
        }
        soundLeftOut |= !proved && analysis.acoustic() != null;
        swept.put(
                point.code(),
                new ReferenceTeacher.Unit(
                        terminals ? parts.standing().get().correction().correct(analysis.impedance()) : null,
                        proved ? analysis.acoustic() : null,
                        ambientCelsius));
        return Optional.empty();
    }
}
