package org.docksweep.kiosk.night;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.LearnedPriors;
import org.docksweep.contract.PartStock;
import org.docksweep.contract.StockMoveBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.ProcedurePurpose;
import org.docksweep.fleet.Reasons;
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
     * What the house looks like at a moment.
     *
     * @param kiosk what kiosks get: priors and baselines among it
     * @param status its status sheet
     * @param findings findings the gate has learned from
     * @param stock pieces of the part in stock
     */
    record Look(KioskSnapshot kiosk, FleetStatus status, int findings, int stock) {}

    /**
     * What became of it.
     *
     * @param file the job as it stands afterwards
     * @param part part put in
     * @param cabinet the cabinet afterwards
     * @param history what its history tells, newest first
     * @param before the house before
     * @param after the house afterwards
     */
    record Outcome(
            BenchJobFile file, Part part, CabinetBody cabinet, List<HistoryEvent> history, Look before, Look after) {
        BenchJobBody job() {
            return file.job();
        }
    }

    Outcome repairOne() throws InterruptedException, ServiceProblem, ServiceUnreachable {
        BenchJobBody job = suspectDiaphragm();
        Part part = diaphragmFor(job);
        Look before = look(part);
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
        BenchJobFile file = client.get(ApiPaths.BENCH_JOBS + "/" + job.code() + ApiPaths.FILE, BenchJobFile.class);
        CabinetBody cabinet = client.get(ApiPaths.CABINETS + "/" + tag, CabinetBody.class);
        report.say(
                "Bench: proved by %d sweeps of the bare driver and %d of the cabinet, %s is %s, %s is %s",
                bareSweeps, sweeps, job.code(), file.job().state(), tag, cabinet.status());
        List<HistoryEvent> history = history(tag);
        papers.pdf("evidence-" + job.code(), client.pdf(ApiPaths.BENCH_JOBS + "/" + job.code() + ApiPaths.EVIDENCE));
        Look after = look(part);
        report.say(
                "Bench: the gate has learned from %d findings, %d before; %d of %s left in stock",
                after.findings(), before.findings(), after.stock(), part.number());
        return new Outcome(file, part, cabinet, history, before, after);
    }

    /**
     * A powered cabinet: the gate could only hear that a way is missing. Its driver alone on the bench rig says whether it
     * is the driver or what feeds it.
     *
     * @return the job afterwards; empty when no powered cabinet waits
     */
    Optional<BenchJobFile> clearOneDriver() throws InterruptedException, ServiceProblem, ServiceUnreachable {
        Optional<BenchJobBody> powered = hand.queue().queue().stream()
                .filter(j -> j.state() == BenchJobBody.State.WAITING && j.faultPositionCode() != null)
                .filter(j -> house.book().cabinetModel(j.modelCode()).feed() == Feed.POWERED)
                .findFirst();
        if (powered.isEmpty()) {
            return Optional.empty();
        }
        BenchJobBody job = powered.get();
        report.say("Bench: tag %s scanned, %s, powered, %s", job.code(), job.tag(), job.faultPositionCode());
        hand.open(job.code().value());
        hand.step(BenchStep.TAKE, "the job taken", s -> s.steps().contains(BenchStep.BEGIN_PROOF));
        hand.step(BenchStep.BEGIN_PROOF, "the proof begun", s -> s.activity() == Activity.PROOF);
        int sweeps = hand.proveBareDriver(job.faultPositionCode());
        hand.step(BenchStep.BACK, "the job", s -> s.activity() == Activity.JOB);
        find("C" + (ConfirmedCause.ELECTRONICS.ordinal() + 1));
        hand.step(BenchStep.OTHERWISE, "the end of the work", s -> s.activity() == Activity.ENDING);
        String why = "amplifier to a qualified workshop";
        hand.type(why, "why", s -> s.prompt().arguments().contains(why));
        hand.step(BenchStep.RETURN_UNREPAIRED, "the job closed", s -> s.activity() == Activity.QUEUE);
        BenchJobFile file = client.get(ApiPaths.BENCH_JOBS + "/" + job.code() + ApiPaths.FILE, BenchJobFile.class);
        report.say(
                "Bench: the bare %s of %s was clean %d times on the bench rig, so its electronics are at fault; %s is %s",
                job.faultPositionCode(),
                job.tag(),
                sweeps,
                job.code(),
                file.job().state());
        return Optional.of(file);
    }

    private void find(String... codes) throws InterruptedException {
        hand.step(BenchStep.FIND, "the finding", s -> s.activity() == Activity.FINDING);
        for (String code : codes) {
            hand.type(
                    code,
                    "choice " + code,
                    s -> s.choices().stream().anyMatch(c -> c.code().equals(code) && c.taken()));
        }
        hand.step(BenchStep.STORE_FINDING, "the finding kept", s -> s.activity() == Activity.JOB);
    }

    private Look look(Part part) throws ServiceProblem, ServiceUnreachable {
        return new Look(
                client.get(ApiPaths.KIOSK_SNAPSHOT, KioskSnapshot.class),
                client.get(ApiPaths.FLEET_STATUS, FleetStatus.class),
                findings(),
                stock(part));
    }

    private int findings() throws ServiceProblem, ServiceUnreachable {
        return client.get(ApiPaths.LEARNED_PRIORS, LearnedPriors.class)
                .findings()
                .size();
    }

    private int stock(Part part) throws ServiceProblem, ServiceUnreachable {
        return client.get(ApiPaths.PARTS + "/" + part.number(), PartStock.class).inStock();
    }

    private List<HistoryEvent> history(AssetTag tag) throws ServiceProblem, ServiceUnreachable {
        List<HistoryEvent> newest = client.all(ApiPaths.CABINETS + "/" + tag + ApiPaths.HISTORY, HistoryEvent.class);
        newest.stream().limit(8).forEach(e -> report.say("         %s", Reasons.text(e.text(), Locale.ENGLISH)));
        return newest;
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
