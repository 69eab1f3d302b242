package org.docksweep.paper;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.JobEvidence;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.OrderList;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.ProofState;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.ProcedurePurpose;
import org.docksweep.fleet.Sighting;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.Prompt;

/** An invented repair, from failure to proof. */
final class SampleJobs {
    private static final Instant FAILED = SampleTag.SCANNED.plusSeconds(55);

    private SampleJobs() {}

    static BenchJobBody job(BenchJobBody.State state) {
        RepairTagContent tag = new SampleTag().build();
        return new BenchJobBody(
                tag.checkIn().jobCode(),
                tag.checkIn().tag(),
                tag.checkIn().modelCode(),
                state,
                FAILED,
                null,
                "HF",
                tag.checkIn().reason(),
                tag.checkIn().suspects(),
                List.of(tag.checkIn().id()),
                7,
                "bench-1",
                "Ravn Sand",
                null,
                30);
    }

    /** Measured good before, failed, repaired and proved. */
    static JobEvidence repaired() {
        RepairTagContent tag = new SampleTag().build();
        List<FindingBody> findings = List.of(
                finding("HF", 9.14, 27.0, false, ConfirmedCause.COIL_BURNT, null, ChargeClass.OVERDRIVEN),
                finding(
                        "HF",
                        null,
                        null,
                        true,
                        ConfirmedCause.LEAD_IN_JOINT,
                        "joint green with corrosion",
                        ChargeClass.WORN));
        PartExchangeBody exchange = new PartExchangeBody(
                new UUID(9, 1),
                FAILED.plusSeconds(40_000),
                "Ravn Sand",
                "bench-1",
                "HF",
                null,
                new PartExchangeBody.Removed(
                        PartExchangeBody.What.DIAPHRAGM, "D-88231", PartExchangeBody.Fate.SCRAPPED),
                new PartExchangeBody.Fitted("SP1-D8", "D-99002", 1));
        return evidence(
                tag,
                BenchJobBody.State.SIGNED_OFF,
                List.of(baseline(tag)),
                findings,
                List.of(exchange),
                List.of(proof(1, Verdict.FAIL, false), proof(2, Verdict.PASS, true), proof(3, Verdict.PASS, true)),
                new Timeline.LastOrder("R-2025-0417", "Saltmarsh Players", FAILED.minusSeconds(300_000)));
    }

    /** Nothing but the failure is on record. */
    static JobEvidence fresh() {
        return evidence(
                new SampleTag().build(), BenchJobBody.State.WAITING, List.of(), List.of(), List.of(), List.of(), null);
    }

    private static JobEvidence evidence(
            RepairTagContent tag,
            BenchJobBody.State state,
            List<Baseline> before,
            List<FindingBody> findings,
            List<PartExchangeBody> exchanges,
            List<ProofSweepBody> proofs,
            Timeline.LastOrder order) {
        BenchJobFile file = new BenchJobFile(
                job(state),
                tag.cabinet(),
                List.of(),
                List.of(),
                findings,
                exchanges,
                List.of(),
                proofs,
                new ProofState(true, 2, Map.of(), List.of()));
        return new JobEvidence(
                file,
                SampleModels.TIDE_12,
                SampleModels.BOOK.driverModels(),
                null,
                before,
                tag.checkIn(),
                order,
                tag.references());
    }

    private static Baseline baseline(RepairTagContent tag) {
        return new Baseline(
                tag.checkIn().tag(), "IN", FAILED.minusSeconds(400_000), 15.0, SampleCurves.healthy(), null);
    }

    private static FindingBody finding(
            String position,
            Double ohm,
            Double celsius,
            boolean open,
            ConfirmedCause cause,
            String words,
            ChargeClass charge) {
        return new FindingBody(
                UUID.randomUUID(),
                FAILED.plusSeconds(36_000),
                "Ravn Sand",
                "bench-1",
                position,
                null,
                ohm,
                celsius,
                open,
                EnumSet.of(Sighting.BURNT, Sighting.CORRODED_JOINT),
                cause,
                words,
                charge);
    }

    private static ProofSweepBody proof(int number, Verdict verdict, boolean soundsClean) {
        MeasurementBody measurement = new MeasurementBody(
                new UUID(10, number),
                FAILED.plusSeconds(50_000 + 60L * number),
                1,
                null,
                19.0,
                new PointJudgement(
                        "IN",
                        verdict,
                        Prompt.NONE,
                        SampleTag.words("as it should be"),
                        SampleCurves.healthy(),
                        null,
                        List.of(),
                        List.of(),
                        List.of()));
        return new ProofSweepBody(
                new UUID(11, number),
                FAILED.plusSeconds(50_010 + 60L * number),
                "Ravn Sand",
                "bench-1",
                ProofSweepBody.Subject.CABINET,
                null,
                soundsClean,
                ProofSweepBody.Polarity.PROVED,
                "1",
                1,
                List.of(measurement));
    }

    static DriverBenchData numbers(String driverModel) {
        return new DriverBenchData(
                driverModel,
                new DriverBenchData.Fasteners(4, "M4 x 12", "hex socket 3 mm", 1.1, "crosswise, in two rounds"),
                "two pins at the rim",
                new DriverBenchData.Gap("MF-LV", 60.0),
                List.of("hex key 3 mm", "micropipette"),
                null,
                Map.of(ProcedurePurpose.DIAPHRAGM_REPLACEMENT, 35),
                Map.of("fit-part", "Both pins also take the part turned by half a turn: the notch decides."));
    }

    static OrderList orders(int rows) {
        List<OrderList.Row> list = new ArrayList<>();
        for (int i = 0; i < rows; i++) {
            list.add(new OrderList.Row(
                    "TN44-D" + (8 + i),
                    "Diaphragm Tern 44, " + (8 + i) + " ohm",
                    i % 2 == 0 ? PartSource.ORIGINAL : PartSource.AFTERMARKET,
                    i % 3,
                    2,
                    5,
                    i % 4 == 3 ? null : 6200,
                    i == 0 ? List.of(JobCode.of(1, 42), JobCode.of(1, 43)) : List.of()));
        }
        return new OrderList("Marram Coast Hire", FAILED, list);
    }
}
