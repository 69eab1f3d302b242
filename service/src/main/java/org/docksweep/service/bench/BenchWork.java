package org.docksweep.service.bench;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.docksweep.contract.BenchActionBody;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.contract.StepTickBody;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.cabinets.Fittings;
import org.docksweep.service.models.Models;
import org.docksweep.service.parts.Catalogue;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Work on jobs: every call adds one record, does what follows from it, and answers with the job as it is then. */
@Service
@Transactional
class BenchWork {
    private final JobBook book;
    private final RecordCheck check;
    private final Proofs proofs;
    private final Exchanges exchanges;
    private final JobEvents events;
    private final FindingRows findings;
    private final Fittings fittings;
    private final Catalogue catalogue;
    private final Models models;
    private final SignOff signOff;
    private final Bench bench;

    BenchWork(
            JobBook book,
            RecordCheck check,
            Proofs proofs,
            Exchanges exchanges,
            JobEvents events,
            FindingRows findings,
            Fittings fittings,
            Catalogue catalogue,
            Models models,
            SignOff signOff,
            Bench bench) {
        this.book = book;
        this.check = check;
        this.proofs = proofs;
        this.exchanges = exchanges;
        this.events = events;
        this.findings = findings;
        this.fittings = fittings;
        this.catalogue = catalogue;
        this.models = models;
        this.signOff = signOff;
        this.bench = bench;
    }

    PutAnswer<BenchJobBody> act(JobCode code, UUID id, BenchActionBody sent, JobRecord.Sender sender) {
        BenchJob job = book.locked(code);
        BenchActionBody action = check.action(id, sent);
        JobRecord.Draft draft =
                draft(id, JobRecord.Kind.ACTION, action.at(), action.by(), action.bench(), action, action);
        if (book.isKnown(job, draft)) {
            return new PutAnswer<>(false, bench.find(code));
        }
        requireRevision(job, action);
        if (action.verb() != BenchActionBody.Verb.ACCEPT && job.isOpen()) {
            requireHolder(job, action.bench(), sender.manager() && action.verb() == BenchActionBody.Verb.HAND_BACK);
        }
        carryOut(job, action);
        book.append(job, draft, sender);
        events.acted(job, action);
        return new PutAnswer<>(true, bench.find(code));
    }

    private static JobRecord.Draft draft(
            UUID id, JobRecord.Kind kind, Instant at, String by, String bench, Object body, Object whole) {
        if (StoredJson.write(body).length() > JobRecord.MOST_CHARACTERS) {
            throw Refusal.tooLarge(JobRecord.MOST_CHARACTERS);
        }
        return new JobRecord.Draft(id, kind, at, by, bench, body, StoredJson.sha256(whole));
    }

    private static void requireRevision(BenchJob job, BenchActionBody action) {
        if (action.expectedRevision() != job.revision()) {
            throw Refusal.wrongState(
                    "expectedRevision",
                    "job " + job.getId() + " changed since: it is at revision " + job.revision() + ", "
                            + action.expectedRevision() + " was expected; it is " + job.state() + holder(job),
                    "Look at the job again and decide anew.");
        }
    }

    private static String holder(BenchJob job) {
        return job.bench() == null ? "" : ", with " + job.heldBy() + " at " + job.bench();
    }

    /** A manager may give back what another bench holds, and nothing else. */
    private static void requireHolder(BenchJob job, String atBench, boolean mayAlways) {
        if (job.bench() != null && !job.bench().equals(atBench) && !mayAlways) {
            throw Refusal.wrongState(
                    "bench",
                    "job " + job.getId() + " is" + holder(job).substring(1) + ", not at " + atBench,
                    "Ask them to hand it back, or ask a manager to do so.");
        }
    }

    private void carryOut(BenchJob job, BenchActionBody action) {
        switch (action.verb()) {
            case ACCEPT -> job.accept(action.bench(), action.by());
            case HAND_BACK -> job.handBack();
            case WAIT_FOR_PART -> {
                catalogue.known(action.partNumber(), "partNumber");
                job.waitForPart(action.partNumber());
            }
            case START_REPAIR -> job.startRepair();
            case START_PROOF -> job.startProof();
            case SIGN_OFF -> {
                ProofRules.Case look = proofs.look(job);
                job.signOff(action.at());
                signOff.prove(job, look, action);
            }
            case SCRAP -> {
                job.scrap(action.at());
                signOff.leave(job, CabinetStatus.RETIRED);
            }
            case RETURN_UNREPAIRED -> {
                job.returnUnrepaired(action.at());
                signOff.leave(job, CabinetStatus.MANUAL_HOLD);
            }
        }
    }

    PutAnswer<BenchJobBody> find(JobCode code, UUID id, FindingBody sent, JobRecord.Sender sender) {
        BenchJob job = book.locked(code);
        FindingBody finding = check.finding(id, sent, model(job));
        JobRecord.Draft draft =
                draft(id, JobRecord.Kind.FINDING, finding.at(), finding.by(), finding.bench(), finding, finding);
        return record(job, code, draft, sender, () -> {
            Optional<InstalledDriver> driver =
                    finding.positionCode() == null ? Optional.empty() : fittings.at(job.tag(), finding.positionCode());
            findings.saveAndFlush(new FindingRow(
                    job,
                    driver.map(InstalledDriver::driverModelCode).orElse(null),
                    driver.map(InstalledDriver::driverSerial).orElse(null),
                    finding));
            events.found(job, finding);
        });
    }

    PutAnswer<BenchJobBody> exchange(JobCode code, UUID id, PartExchangeBody sent, JobRecord.Sender sender) {
        BenchJob job = book.locked(code);
        PartExchangeBody exchange = check.exchange(id, sent, model(job));
        JobRecord.Draft draft =
                draft(id, JobRecord.Kind.EXCHANGE, exchange.at(), exchange.by(), exchange.bench(), exchange, exchange);
        return record(job, code, draft, sender, () -> {
            requireState(job, "exchange parts", BenchJobBody.State.IN_REPAIR);
            exchanges.carryOut(job, exchange);
        });
    }

    PutAnswer<BenchJobBody> tick(JobCode code, UUID id, StepTickBody sent, JobRecord.Sender sender) {
        BenchJob job = book.locked(code);
        StepTickBody tick = check.tick(id, sent, model(job));
        return record(
                job,
                code,
                draft(id, JobRecord.Kind.TICK, tick.at(), tick.by(), tick.bench(), tick, tick),
                sender,
                () -> {});
    }

    PutAnswer<BenchJobBody> prove(JobCode code, UUID id, ProofSweepBody sent, JobRecord.Sender sender) {
        BenchJob job = book.locked(code);
        CabinetModel model = model(job);
        ProofSweepBody sweep = check.proof(id, sent, model);
        JobRecord.Draft draft = draft(
                id, JobRecord.Kind.PROOF, sweep.at(), sweep.by(), sweep.bench(), JobBook.with(sweep, List.of()), sweep);
        return record(job, code, draft, sender, () -> {
            requireState(job, "prove", BenchJobBody.State.PROVING);
            book.store(id, sweep.measurements());
            events.proved(job, sweep, ProofRules.clean(sweep, model));
        });
    }

    private CabinetModel model(BenchJob job) {
        return models.cabinetModel(job.modelCode(), "tag");
    }

    private PutAnswer<BenchJobBody> record(
            BenchJob job, JobCode code, JobRecord.Draft draft, JobRecord.Sender sender, Runnable work) {
        if (book.isKnown(job, draft)) {
            return new PutAnswer<>(false, bench.find(code));
        }
        requireHeld(job);
        requireHolder(job, draft.bench(), false);
        work.run();
        book.append(job, draft, sender);
        return new PutAnswer<>(true, bench.find(code));
    }

    private static void requireHeld(BenchJob job) {
        if (!job.isOpen() || job.state() == BenchJobBody.State.WAITING) {
            throw Refusal.wrongState(
                    "code",
                    "job " + job.getId() + " is " + job.state() + "; nobody works on it",
                    job.isOpen() ? "Accept it first." : "The job is closed; a new failure opens a new one.");
        }
    }

    private static void requireState(BenchJob job, String what, BenchJobBody.State needed) {
        if (job.state() != needed) {
            throw Refusal.wrongState(
                    "code",
                    "job " + job.getId() + " is " + job.state() + "; to " + what + " it must be " + needed,
                    "Move the job on first.");
        }
    }
}
