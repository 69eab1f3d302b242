package org.docksweep.kiosk.night;

import java.util.Comparator;
import java.util.Optional;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.LearnedPriors;
import org.docksweep.contract.PartStock;
import org.docksweep.contract.StockMoveBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.ProcedurePurpose;
import org.docksweep.kiosk.bench.BenchState.Activity;
import org.docksweep.kiosk.bench.BenchStep;
import org.docksweep.kiosk.printing.Papers;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.docksweep.sweep.PracticeRig;

/**
 * The morning after: one cabinet of the night whose diaphragm is suspect goes over the bench, from its tag to the shelf.
 */
final class BenchMorning {
    private final DemoHouse house;
    private final ServiceClient client;
    private final BenchHand hand;
    private final PracticeRig rig;
    private final Papers papers;
    private final NightReport report;

    BenchMorning(
            DemoHouse house, ServiceClient client, BenchHand hand, PracticeRig rig, Papers papers, NightReport report) {
        this.house = house;
        this.client = client;
        this.hand = hand;
        this.rig = rig;
        this.papers = papers;
        this.report = report;
    }

    /**
     * What became of it.
     *
     * @param job the job as it stands afterwards
     * @param part part put in
     * @param cabinet the cabinet afterwards
     * @param findingsBefore findings the gate had learned from before
     * @param findingsAfter the same afterwards
     * @param stockBefore pieces of the part in stock before
     * @param stockAfter the same afterwards
     */
    record Outcome(
            BenchJobBody job,
            Part part,
            CabinetBody cabinet,
            int findingsBefore,
            int findingsAfter,
            int stockBefore,
            int stockAfter) {}

    Outcome repairOne() throws InterruptedException, ServiceProblem, ServiceUnreachable {
        int findingsBefore = findings();
        BenchJobBody job = suspectDiaphragm();
        AssetTag tag = job.tag();
        report.say("Bench: tag %s scanned, %s, %s", job.code(), tag, job.faultPositionCode());
        hand.open(job.code().value());
        hand.step(BenchStep.TAKE, "the job taken", s -> s.steps().contains(BenchStep.BEGIN_REPAIR));
        hand.step(BenchStep.BEGIN_REPAIR, "the repair begun", s -> s.steps().contains(BenchStep.TICK));
        hand.step(BenchStep.FIND, "the finding", s -> s.activity() == Activity.FINDING);
        hand.type("open", "the coil open", s -> s.prompt().arguments().contains("open"));
        hand.type(
                "C1",
                "the cause",
                s -> s.choices().stream().anyMatch(c -> c.code().equals("C1") && c.taken()));
        hand.type(
                "S3",
                "what was seen",
                s -> s.choices().stream().anyMatch(c -> c.code().equals("S3") && c.taken()));
        hand.type(
                "B2",
                "who bears it",
                s -> s.choices().stream().anyMatch(c -> c.code().equals("B2") && c.taken()));
        hand.step(BenchStep.STORE_FINDING, "the finding kept", s -> s.activity() == Activity.JOB);
        int ticked = hand.tickAll();
        Part part = diaphragmFor(job);
        int stockBefore = stock(part);
        hand.fit(part, serialOf(part));
        report.say("Bench: found a broken lead-in joint; %d steps done; %s put in", ticked, part.number());
        // The virtual cabinet is mended as well; in a workshop the hands have done that.
        rig.repair(tag);
        hand.step(BenchStep.BEGIN_PROOF, "the proof begun", s -> s.activity() == Activity.PROOF);
        int bareSweeps = hand.proveBareDriver(job.faultPositionCode());
        report.say("Bench: %s", hand.said());
        int sweeps = hand.proveCabinet();
        hand.step(BenchStep.OTHERWISE, "the end of the work", s -> s.activity() == Activity.ENDING);
        hand.step(BenchStep.SIGN_OFF, "the job signed off", s -> s.activity() == Activity.QUEUE);
        BenchJobBody after = client.get(ApiPaths.BENCH_JOBS + "/" + job.code(), BenchJobBody.class);
        CabinetBody cabinet = client.get(ApiPaths.CABINETS + "/" + tag, CabinetBody.class);
        report.say(
                "Bench: proved by %d sweeps of the bare driver and %d of the cabinet, %s is %s, %s is %s",
                bareSweeps, sweeps, job.code(), after.state(), tag, cabinet.status());
        history(tag);
        papers.pdf("evidence-" + job.code(), client.pdf(ApiPaths.BENCH_JOBS + "/" + job.code() + ApiPaths.EVIDENCE));
        int findingsAfter = findings();
        report.say(
                "Bench: the gate has learned from %d findings, %d before; %d of %s left in stock",
                findingsAfter, findingsBefore, stock(part), part.number());
        return new Outcome(after, part, cabinet, findingsBefore, findingsAfter, stockBefore, stock(part));
    }

    private int findings() throws ServiceProblem, ServiceUnreachable {
        return client.get(ApiPaths.LEARNED_PRIORS, LearnedPriors.class)
                .findings()
                .size();
    }

    private int stock(Part part) throws ServiceProblem, ServiceUnreachable {
        return client.get(ApiPaths.PARTS + "/" + part.number(), PartStock.class).inStock();
    }

    private void history(AssetTag tag) throws ServiceProblem, ServiceUnreachable {
        var newest = client.all(ApiPaths.CABINETS + "/" + tag + ApiPaths.HISTORY, HistoryEvent.class);
        newest.stream()
                .limit(6)
                .forEach(e -> report.say(
                        "         %s", org.docksweep.fleet.Reasons.text(e.text(), java.util.Locale.ENGLISH)));
    }

    private BenchJobBody suspectDiaphragm() throws InterruptedException, ServiceProblem, ServiceUnreachable {
        for (BenchJobBody job : hand.queue().queue()) {
            BenchJobFile file = client.get(ApiPaths.BENCH_JOBS + "/" + job.code() + ApiPaths.FILE, BenchJobFile.class);
            boolean diaphragm = file.cards().stream()
                    .findFirst()
                    .filter(c -> c.purpose() == ProcedurePurpose.DIAPHRAGM_REPLACEMENT)
                    .isPresent();
            if (job.state() == BenchJobBody.State.WAITING && diaphragm) {
                return job;
            }
        }
        throw new IllegalStateException("no job of the night has a diaphragm as its first suspect");
    }

    private Part diaphragmFor(BenchJobBody job) {
        String driver = house.book()
                .cabinetModel(job.modelCode())
                .position(job.faultPositionCode())
                .driverModelCode();
        double rated = house.book().driverModel(driver).ratedImpedanceOhm();
        return house.bench().parts().stream()
                .filter(p ->
                        p.kind() == PartKind.DIAPHRAGM && p.fitsDriverModels().contains(driver))
                .filter(p -> p.ratedImpedanceOhm() == rated)
                .min(Comparator.comparing(p -> p.source() == PartSource.ORIGINAL ? 0 : 1))
                .orElseThrow(() -> new IllegalStateException("the house has no diaphragm for " + driver));
    }

    private String serialOf(Part part) {
        Optional<StockMoveBody> received = house.bench().stock().stream()
                .filter(m -> m.partNumber().equals(part.number()))
                .findFirst();
        return received.flatMap(m -> m.serials().stream().findFirst()).orElse(null);
    }
}
