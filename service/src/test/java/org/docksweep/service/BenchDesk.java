package org.docksweep.service;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchActionBody;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.Page;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.PartStock;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.contract.StockMoveBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Sighting;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.Prompt;
import org.docksweep.sweep.ImpedanceCurve;
import tools.jackson.core.type.TypeReference;

/** A bench in the tests: fails a cabinet, works on its job over HTTP, and keeps parts for it. */
final class BenchDesk {
    static final String BENCH = "bench-1";
    static final String BY = "Ravn Sand";

    final Api api;
    final String model;
    final AssetTag tag;
    final JobCode code;
    /** Part of the horn driver of {@link House}, 8 ohm, with serials; new for every desk. */
    final Part diaphragm;

    private BenchDesk(Api api, String model) {
        this.api = api;
        this.model = model;
        this.tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody failed = House.fail(tag, model, House.newCode());
        expect(201, House.put(api, failed));
        this.code = failed.jobCode();
        this.diaphragm = part("D8-" + House.next(), PartKind.DIAPHRAGM, List.of("REED-1"), 8.0, true);
    }

    /** A desk with a job for a new cabinet whose horn driver failed. */
    static BenchDesk withJob(Api api) {
        return withJob(api, House.newModel(api));
    }

    static BenchDesk withJob(Api api, String model) {
        return new BenchDesk(api, model);
    }

    static Api.Answer expect(int status, Api.Answer answer) {
        if (answer.status() != status) {
            throw new AssertionError("expected " + status + ", but got " + answer);
        }
        return answer;
    }

    Part part(String number, PartKind kind, List<String> drivers, Double ohm, boolean serialised) {
        Part part = new Part(
                number,
                "Part " + number,
                kind,
                PartSource.ORIGINAL,
                drivers,
                List.of(),
                ohm,
                null,
                serialised,
                1,
                4,
                6200);
        expect(201, api.put(ApiPaths.PARTS + "/" + number, part));
        return part;
    }

    Api.Answer receive(Part part, int pieces, String... serials) {
        return move(part, StockMoveBody.Kind.RECEIVED, pieces, serials);
    }

    Api.Answer move(Part part, StockMoveBody.Kind kind, int pieces, String... serials) {
        StockMoveBody body =
                new StockMoveBody(UUID.randomUUID(), part.number(), now(), BY, kind, pieces, List.of(serials), null);
        return api.put(ApiPaths.STOCK_MOVES + "/" + body.id(), body);
    }

    int inStock(Part part) {
        return stock(part).inStock();
    }

    PartStock stock(Part part) {
        return api.get(ApiPaths.PARTS + "/" + part.number()).as(PartStock.class);
    }

    static Instant now() {
        return Instant.now().truncatedTo(ChronoUnit.MICROS);
    }

    String path() {
        return ApiPaths.BENCH_JOBS + "/" + code;
    }

    BenchJobBody job() {
        return api.get(path()).as(BenchJobBody.class);
    }

    BenchJobFile file() {
        return expect(200, api.get(path() + ApiPaths.FILE)).as(BenchJobFile.class);
    }

    CabinetBody cabinet() {
        return api.get(ApiPaths.CABINETS + "/" + tag).as(CabinetBody.class);
    }

    InstalledDriver at(String position) {
        return cabinet().drivers().stream()
                .filter(d -> d.positionCode().equals(position))
                .findFirst()
                .orElse(null);
    }

    BenchActionBody action(BenchActionBody.Verb verb) {
        return action(verb, BENCH, null);
    }

    BenchActionBody action(BenchActionBody.Verb verb, String bench, String partNumber) {
        boolean why = verb == BenchActionBody.Verb.SCRAP || verb == BenchActionBody.Verb.RETURN_UNREPAIRED;
        return new BenchActionBody(
                UUID.randomUUID(),
                verb,
                job().revision(),
                now(),
                BY,
                bench,
                partNumber,
                why ? "beyond repair" : null,
                verb == BenchActionBody.Verb.SIGN_OFF ? 40 : null);
    }

    Api.Answer send(BenchActionBody action) {
        return send(api, action);
    }

    Api.Answer send(Api as, BenchActionBody action) {
        return as.put(path() + ApiPaths.ACTIONS + "/" + action.id(), action);
    }

    /** Does one after the other; each must work. */
    BenchDesk act(BenchActionBody.Verb... verbs) {
        for (BenchActionBody.Verb verb : verbs) {
            expect(201, send(action(verb)));
        }
        return this;
    }

    FindingBody finding(ConfirmedCause cause) {
        return new FindingBody(
                UUID.randomUUID(),
                now(),
                BY,
                BENCH,
                "HF",
                null,
                null,
                null,
                true,
                Set.of(Sighting.CORRODED_JOINT),
                cause,
                null,
                ChargeClass.WORN);
    }

    Api.Answer find(ConfirmedCause cause) {
        FindingBody body = finding(cause);
        return api.put(path() + ApiPaths.FINDINGS + "/" + body.id(), body);
    }

    /** Exchanges the diaphragm of the horn driver. */
    PartExchangeBody newDiaphragm(Part part, String oldSerial, String serial) {
        return new PartExchangeBody(
                UUID.randomUUID(),
                now(),
                BY,
                BENCH,
                "HF",
                null,
                new PartExchangeBody.Removed(
                        PartExchangeBody.What.DIAPHRAGM, oldSerial, PartExchangeBody.Fate.SCRAPPED),
                new PartExchangeBody.Fitted(part.number(), serial, 1));
    }

    PartExchangeBody newUnit(Part part, String oldSerial, String serial) {
        return new PartExchangeBody(
                UUID.randomUUID(),
                now(),
                BY,
                BENCH,
                "HF",
                null,
                new PartExchangeBody.Removed(
                        PartExchangeBody.What.DRIVER_UNIT, oldSerial, PartExchangeBody.Fate.KEPT_FOR_REPAIR),
                part == null ? null : new PartExchangeBody.Fitted(part.number(), serial, 1));
    }

    Api.Answer exchange(PartExchangeBody body) {
        return api.put(path() + ApiPaths.EXCHANGES + "/" + body.id(), body);
    }

    static ProofSweepBody sweep(
            ProofSweepBody.Subject subject,
            String position,
            ProofSweepBody.Polarity polarity,
            boolean soundsClean,
            MeasurementBody... measurements) {
        return new ProofSweepBody(
                UUID.randomUUID(),
                now(),
                BY,
                BENCH,
                subject,
                position,
                soundsClean,
                polarity,
                "1",
                1,
                List.of(measurements));
    }

    static ProofSweepBody cabinetSweep(Verdict horn, ProofSweepBody.Polarity polarity) {
        return sweep(
                ProofSweepBody.Subject.CABINET,
                null,
                polarity,
                true,
                measurement("LF", Verdict.PASS),
                measurement("HF", horn));
    }

    static ProofSweepBody bareSweep(String position, Verdict verdict, ProofSweepBody.Polarity polarity) {
        return sweep(
                ProofSweepBody.Subject.BARE_DRIVER,
                position,
                polarity,
                true,
                measurement(BareDriver.TEST_POINT, verdict));
    }

    static MeasurementBody measurement(String point, Verdict verdict) {
        ImpedanceCurve curve = new ImpedanceCurve(
                new double[] {20, 200, 2000, 20000},
                new double[] {5.7, 6.2, 7.3, 9.1},
                new double[] {0.1, -0.5, 1.5, 6},
                new double[] {0.01, 0.01, 0.01, 0.02});
        Reading reading =
                new Reading(ReadingKind.DC_RESISTANCE_20C, point, "HF", 5.7, 0.02, 5.6, 5.0, 6.2, ReadingState.OK);
        return new MeasurementBody(
                UUID.randomUUID(),
                now(),
                1,
                null,
                18.0,
                new PointJudgement(
                        point,
                        verdict,
                        Prompt.NONE,
                        Reason.of("verdict-pass"),
                        curve,
                        null,
                        List.of(reading),
                        List.of(),
                        List.of()));
    }

    Api.Answer prove(ProofSweepBody sweep) {
        return api.put(path() + ApiPaths.PROOFS + "/" + sweep.id(), sweep);
    }

    /** Two clean sweeps of the cabinet, polarity proved. */
    BenchDesk proveTwice() {
        for (int i = 0; i < 2; i++) {
            expect(201, prove(cabinetSweep(Verdict.PASS, ProofSweepBody.Polarity.PROVED)));
        }
        return this;
    }

    List<HistoryEvent> history() {
        return api.get(ApiPaths.CABINETS + "/" + tag + ApiPaths.HISTORY)
                .as(new TypeReference<Page<HistoryEvent>>() {})
                .items();
    }
}
