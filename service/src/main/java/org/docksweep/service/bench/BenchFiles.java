package org.docksweep.service.bench;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.docksweep.contract.BenchActionBody;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.contract.StepTickBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.cabinets.Fittings;
import org.docksweep.service.models.Models;
import org.docksweep.service.procedures.Procedures;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Puts together what a bench needs to see of a job. */
@Service
@Transactional(readOnly = true)
public class BenchFiles {
    private final BenchJobs jobs;
    private final JobBook book;
    private final Bench bench;
    private final Proofs proofs;
    private final Fittings fittings;
    private final Models models;
    private final Procedures procedures;

    BenchFiles(
            BenchJobs jobs,
            JobBook book,
            Bench bench,
            Proofs proofs,
            Fittings fittings,
            Models models,
            Procedures procedures) {
        this.jobs = jobs;
        this.book = book;
        this.bench = bench;
        this.proofs = proofs;
        this.fittings = fittings;
        this.models = models;
        this.procedures = procedures;
    }

    /**
     * Sweeps of the proofs of a cabinet.
     *
     * @param tag cabinet
     * @return all of its jobs, oldest first within a job
     */
    public List<ProofSweepBody> proofsOf(AssetTag tag) {
        return jobs.ofCabinet(tag.value()).stream()
                .flatMap(job -> book
                        .withMeasurements(
                                JobBook.bodies(book.recordsOf(job), JobRecord.Kind.PROOF, ProofSweepBody.class))
                        .stream())
                .toList();
    }

    /**
     * When jobs were opened.
     *
     * @return opening by code, closed jobs included
     */
    public Map<JobCode, Instant> openings() {
        return jobs.findAll().stream().collect(Collectors.toMap(BenchJob::jobCode, BenchJob::openedAt));
    }

    /**
     * Everything about a job.
     *
     * @param code any code printed for it
     * @return its file
     * @throws Refusal if there is none
     */
    public BenchJobFile of(JobCode code) {
        BenchJob job = book.find(code);
        List<JobRecord> records = book.recordsOf(job);
        Efforts efforts =
                new Efforts(models.cabinetModel(job.modelCode(), "code"), models.book(), procedures.byDriverModel());
        return new BenchJobFile(
                bench.find(code),
                fittings.cabinet(job.tag()),
                efforts.cards(job.suspects()),
                JobBook.bodies(records, JobRecord.Kind.ACTION, BenchActionBody.class),
                JobBook.bodies(records, JobRecord.Kind.FINDING, FindingBody.class),
                JobBook.bodies(records, JobRecord.Kind.EXCHANGE, PartExchangeBody.class),
                JobBook.bodies(records, JobRecord.Kind.TICK, StepTickBody.class),
                book.withMeasurements(JobBook.bodies(records, JobRecord.Kind.PROOF, ProofSweepBody.class)),
                ProofRules.state(proofs.look(job)));
    }
}
