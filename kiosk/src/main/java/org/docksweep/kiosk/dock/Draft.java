package org.docksweep.kiosk.dock;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.OrderedId;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.VisualItem;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.JudgeRequest.PointCapture;
import org.docksweep.judge.PointJudgement;
import org.docksweep.sweep.Capture;

/** The check-in under way: everything that is gathered until it is recorded. Lives on the dock's thread only. */
final class Draft {
    /** First sweep and two repeats; after that a person decides. */
    static final int MAX_ATTEMPTS = 3;

    final CabinetBody cabinet;
    final CabinetModel model;
    final UUID returnListId;
    Set<VisualItem> damage = Set.of();
    CabinetJudgement judgement;

    private final UUID id = OrderedId.next();
    private final Instant startedAt;
    private final Map<String, Capture> captures = new LinkedHashMap<>();
    private final List<MeasurementBody> measurements = new ArrayList<>();
    private int pointIndex = -1;
    private int attempt;
    private boolean askedToPlug;
    private boolean askedForSocket;
    private boolean askedForLabel;

    Draft(CabinetBody cabinet, CabinetModel model, UUID returnListId, Instant startedAt) {
        this.cabinet = cabinet;
        this.model = model;
        this.returnListId = returnListId;
        this.startedAt = startedAt;
    }

    /** Goes to the next test point; false when all have been swept. */
    boolean nextPoint() {
        pointIndex++;
        attempt = 1;
        askedToPlug = false;
        askedForSocket = false;
        return pointIndex < model.testPoints().size();
    }

    TestPoint point() {
        return model.testPoints().get(pointIndex);
    }

    boolean sweeping() {
        return pointIndex >= 0;
    }

    boolean atFirstPoint() {
        return pointIndex == 0;
    }

    boolean atLastPoint() {
        return pointIndex == model.testPoints().size() - 1;
    }

    int attempt() {
        return attempt;
    }

    /** Counts another attempt at this test point; false when all are used up. */
    boolean anotherAttempt() {
        if (attempt >= MAX_ATTEMPTS) {
            return false;
        }
        attempt++;
        return true;
    }

    /** True the first time; a second answer of the same kind must not ask again. */
    boolean mayAskToPlug() {
        boolean first = !askedToPlug;
        askedToPlug = true;
        return first;
    }

    boolean mayAskForSocket() {
        boolean first = !askedForSocket;
        askedForSocket = true;
        return first;
    }

    boolean mayAskForLabel() {
        boolean first = !askedForLabel;
        askedForLabel = true;
        return first;
    }

    /** Captures with one more, in the order of the model's test points. */
    List<PointCapture> capturesWith(Capture newest) {
        Map<String, Capture> all = new LinkedHashMap<>(captures);
        all.put(point().code(), newest);
        return model.testPoints().stream()
                .filter(p -> all.containsKey(p.code()))
                .map(p -> new PointCapture(p.code(), all.get(p.code())))
                .toList();
    }

    /** Takes a judged sweep in. */
    PointJudgement swept(Capture capture, String recordingSha256, CabinetJudgement judged) {
        captures.put(point().code(), capture);
        judgement = judged;
        PointJudgement ofPoint = judged.points().stream()
                .filter(p -> p.testPointCode().equals(point().code()))
                .findFirst()
                .orElseThrow(
                        () -> new IllegalStateException("the gate gave no judgement of test point " + point().code()));
        measurements.add(new MeasurementBody(
                OrderedId.next(),
                capture.header().capturedAt().truncatedTo(ChronoUnit.MICROS),
                sweepsOf(point().code()) + 1,
                recordingSha256,
                capture.header().ambientCelsius(),
                ofPoint));
        return ofPoint;
    }

    private int sweepsOf(String testPointCode) {
        return (int) measurements.stream()
                .filter(m -> m.judgement().testPointCode().equals(testPointCode))
                .count();
    }

    /** A spoiled capture no longer counts, so that the repeat is judged without it. */
    void dropSpoiled() {
        captures.remove(point().code());
    }

    /** A clock that was set back meanwhile must not end a check-in before it began: the service would refuse it. */
    private Instant notBeforeStart(Instant now) {
        return now.isBefore(startedAt) ? startedAt : now;
    }

    CheckInBody body(Routing.Routed routed, JobCode jobCode, int limitsVersion, DockSettings settings, Instant now) {
        return new CheckInBody(
                id,
                cabinet.tag(),
                model.code(),
                returnListId,
                settings.kioskId(),
                settings.operator(),
                startedAt.truncatedTo(ChronoUnit.MICROS),
                notBeforeStart(now).truncatedTo(ChronoUnit.MICROS),
                damage,
                routed.verdict(),
                routed.route(),
                routed.watch(),
                routed.reason(),
                routed.faultPositionCode(),
                routed.positions(),
                routed.suspects(),
                jobCode,
                routed.judgeVersion(),
                limitsVersion,
                finalMeasurements());
    }

    /** The last sweep of a test point carries what was said of it once all test points were known. */
    private List<MeasurementBody> finalMeasurements() {
        List<MeasurementBody> result = new ArrayList<>(measurements);
        if (judgement == null) {
            return result;
        }
        for (PointJudgement last : judgement.points()) {
            for (int i = result.size() - 1; i >= 0; i--) {
                MeasurementBody m = result.get(i);
                if (m.judgement().testPointCode().equals(last.testPointCode())) {
                    result.set(
                            i,
                            new MeasurementBody(
                                    m.id(), m.takenAt(), m.attempt(), m.recordingSha256(), m.ambientCelsius(), last));
                    break;
                }
            }
        }
        return List.copyOf(result);
    }
}
