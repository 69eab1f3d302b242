package org.docksweep.service.bench;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.service.cabinets.Fittings;
import org.docksweep.service.models.Models;
import org.docksweep.service.parts.Catalogue;
import org.springframework.stereotype.Component;

/** Looks at a job with the eyes of {@link ProofRules}. */
@Component
class Proofs {
    private final JobBook book;
    private final Catalogue catalogue;
    private final Fittings fittings;
    private final Models models;

    Proofs(JobBook book, Catalogue catalogue, Fittings fittings, Models models) {
        this.book = book;
        this.catalogue = catalogue;
        this.fittings = fittings;
        this.models = models;
    }

    ProofRules.Case look(BenchJob job) {
        List<JobRecord> records = book.recordsOf(job);
        Set<String> worked = new TreeSet<>();
        Set<String> renewed = new TreeSet<>();
        Set<String> empty = new TreeSet<>();
        boolean elsewhere = false;
        for (PartExchangeBody exchange : JobBook.bodies(records, JobRecord.Kind.EXCHANGE, PartExchangeBody.class)) {
            String position = exchange.positionCode();
            if (position == null) {
                elsewhere = true;
                continue;
            }
            worked.add(position);
            if (exchange.fitted() != null
                    && catalogue
                            .known(exchange.fitted().partNumber(), "partNumber")
                            .kind()
                            .renewsMovingPart()) {
                renewed.add(position);
            }
            if (fittings.at(job.tag(), position).isEmpty()) {
                empty.add(position);
            }
        }
        List<ProofSweepBody> sweeps = records.stream()
                .filter(r -> r.kind() == JobRecord.Kind.PROOF && r.sequence() > job.proofFrom())
                .map(r -> r.body(ProofSweepBody.class))
                .toList();
        return new ProofRules.Case(
                job.state() == BenchJobBody.State.PROVING,
                records.stream().anyMatch(r -> r.kind() == JobRecord.Kind.FINDING),
                models.cabinetModel(job.modelCode(), "tag"),
                worked,
                renewed,
                elsewhere,
                empty,
                book.withMeasurements(sweeps));
    }
}
