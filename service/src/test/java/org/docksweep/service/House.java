package org.docksweep.service;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.OrderedId;
import org.docksweep.contract.ReturnList;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.MotionalResonance;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.fleet.Way;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.PositionState;
import org.docksweep.judge.Prompt;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;
import org.docksweep.sweep.ImpedanceCurve;

/** A small invented house for tests. Every model and tag is new, so that tests share a service without meeting. */
final class House {
    static final Instant NIGHT = Instant.parse("2026-03-14T02:10:00.123456Z");
    private static final AtomicInteger NEXT = new AtomicInteger(1);

    private House() {}

    static int next() {
        return NEXT.getAndIncrement();
    }

    static AssetTag newTag() {
        return new AssetTag(String.format("MCH-%06d", next()));
    }

    static JobCode newCode() {
        return JobCode.of(7, next());
    }

    /** Registers a new two-way model and returns its code. */
    static String newModel(Api api) {
        String code = "TERN-" + next();
        Api.Answer answer = api.put(ApiPaths.MODEL_BOOK, book(code));
        if (answer.status() != 201) {
            throw new AssertionError(answer);
        }
        return code;
    }

    /** A powered model of the same drivers. */
    static String newPoweredModel(Api api) {
        String code = "SALT-" + next();
        CabinetModel like = twoWay(code);
        CabinetModel powered = new CabinetModel(
                code,
                like.name(),
                Feed.POWERED,
                like.widthMm(),
                like.heightMm(),
                like.massKg(),
                like.positions(),
                like.enclosures(),
                List.of(new TestPoint(
                        "LINE",
                        TestPointKind.LINE_INPUT,
                        "line in, pin 2 hot",
                        List.of("LF", "HF"),
                        0,
                        new LevelMask(List.of(new LevelMask.Point(30, 0.05), new LevelMask.Point(20_000, 0.05))),
                        List.of())));
        Api.Answer answer = api.put(
                ApiPaths.MODEL_BOOK, new ModelBook(List.of(powered), book(code).driverModels()));
        if (answer.status() != 201 && answer.status() != 200) {
            throw new AssertionError(answer);
        }
        return code;
    }

    static ModelBook book(String code) {
        return new ModelBook(
                List.of(twoWay(code)),
                List.of(driver("DUNE-12", DriverKind.CONE), driver("REED-1", DriverKind.COMPRESSION)));
    }

    private static DriverModel driver(String code, DriverKind kind) {
        return new DriverModel(
                code, code, kind, 8, 5.6, 0.02, 0.7, List.of(new MotionalResonance(52, 6, 40)), "red", List.of("K-1"));
    }

    private static CabinetModel twoWay(String code) {
        LevelMask mask = new LevelMask(List.of(new LevelMask.Point(20, 1), new LevelMask.Point(20000, 0.5)));
        return new CabinetModel(
                code,
                "Tern two-way",
                Feed.BIAMPED,
                400,
                700,
                28,
                List.of(
                        new DriverPosition("LF", Way.LF, "DUNE-12", 200, 450, 300, 300),
                        new DriverPosition("HF", Way.HF, "REED-1", 200, 120, 250, 150)),
                List.of(
                        new Enclosure("box", EnclosureKind.VENTED, List.of("LF"), 3, 50, 7),
                        new Enclosure("horn", EnclosureKind.HORN, List.of("HF"), 0, 0, 0)),
                List.of(point("LF", "1+ / 1-", mask), point("HF", "2+ / 2-", mask)));
    }

    private static TestPoint point(String code, String contacts, LevelMask mask) {
        return new TestPoint(
                code,
                TestPointKind.TERMINALS,
                contacts,
                List.of(code),
                8,
                mask,
                List.of(new NetworkElement.Driver("D", "in", "0", code)));
    }

    static CabinetBody cabinet(AssetTag tag, String model, CabinetStatus status) {
        return new CabinetBody(
                tag,
                model,
                "C-04",
                status,
                false,
                List.of(
                        new InstalledDriver(
                                "HF", "REED-1", "H" + tag, "D" + tag, PartSource.ORIGINAL, LocalDate.of(2024, 5, 1)),
                        new InstalledDriver("LF", "DUNE-12", "L" + tag, null, null, LocalDate.of(2023, 2, 1))));
    }

    /** Registers a new cabinet and returns its tag. */
    static AssetTag newCabinet(Api api, String model, CabinetStatus status) {
        AssetTag tag = newTag();
        Api.Answer answer = api.put(ApiPaths.CABINETS + "/" + tag, cabinet(tag, model, status));
        if (answer.status() != 201) {
            throw new AssertionError(answer);
        }
        return tag;
    }

    static ReturnList newList(Api api, String model, List<AssetTag> tags) {
        ReturnList list = new ReturnList(
                OrderedId.next(),
                "A-" + next(),
                "Harbour Players",
                LocalDate.of(2026, 3, 14),
                false,
                tags.stream().map(t -> new ReturnList.Line(t, model)).toList());
        Api.Answer answer = api.put(ApiPaths.RETURN_LISTS + "/" + list.id(), list);
        if (answer.status() != 201) {
            throw new AssertionError(answer);
        }
        return list;
    }

    static CheckInBody pass(AssetTag tag, String model) {
        return checkIn(tag, model, null, Verdict.PASS, Route.SHELF, null);
    }

    static CheckInBody fail(AssetTag tag, String model, JobCode code) {
        return checkIn(tag, model, null, Verdict.FAIL, Route.BENCH, code);
    }

    static CheckInBody checkIn(
            AssetTag tag, String model, UUID returnListId, Verdict verdict, Route route, JobCode code) {
        boolean failed = verdict == Verdict.FAIL;
        Reason reason = failed ? Reason.of("verdict-driver-open", "HF", "REED-1") : Reason.of("verdict-pass");
        Set<VisualItem> damage = route == Route.SAFETY_HOLD ? Set.of(VisualItem.RIGGING, VisualItem.GRILLE) : Set.of();
        List<MeasurementBody> measurements = new ArrayList<>();
        if (verdict != null) {
            measurements.add(measurement("LF", Verdict.PASS));
            measurements.add(measurement("HF", verdict));
        }
        return new CheckInBody(
                OrderedId.next(),
                tag,
                model,
                returnListId,
                "dock-1",
                "Ines Duna",
                NIGHT,
                NIGHT.plusSeconds(21),
                damage,
                verdict,
                route,
                false,
                reason,
                failed ? "HF" : null,
                List.of(
                        new PositionState("LF", ReadingState.OK, Reason.of("verdict-pass"), "5.6 \u03a9"),
                        new PositionState(
                                "HF", failed ? ReadingState.FAULT : ReadingState.OK, Reason.of("verdict-pass"), null)),
                failed ? List.of(suspect()) : List.of(),
                code,
                verdict == null ? null : "1",
                1,
                measurements);
    }

    private static Suspect suspect() {
        return new Suspect(
                FaultKind.DRIVER_OPEN, "HF", "HF", null, 0.9, Reason.of("verdict-pass"), Reason.of("verdict-pass"));
    }

    private static MeasurementBody measurement(String point, Verdict verdict) {
        ImpedanceCurve curve = new ImpedanceCurve(
                new double[] {20, 200, 2000, 20000},
                new double[] {5.6, 6.1, 7.123456789012345, 9},
                new double[] {0.1, -0.5, 1.5, 6},
                new double[] {0.01, 0.01, 0.01, 0.02});
        return new MeasurementBody(
                OrderedId.next(),
                NIGHT.plusSeconds(5),
                1,
                "ab".repeat(32),
                11.5,
                new PointJudgement(
                        point,
                        verdict,
                        Prompt.NONE,
                        Reason.of("verdict-pass"),
                        curve,
                        null,
                        List.of(),
                        List.of(),
                        List.of()));
    }

    static Api.Answer put(Api api, CheckInBody body) {
        return api.put(ApiPaths.CHECK_INS + "/" + body.id(), body);
    }
}
