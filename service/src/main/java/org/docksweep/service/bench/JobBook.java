package org.docksweep.service.bench;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Refusal;
import org.docksweep.service.web.Times;
import org.springframework.stereotype.Component;

/** Jobs with their records: read, locked, extended. */
@Component
class JobBook {
    private final BenchJobs jobs;
    private final PrintedCodes printedCodes;
    private final JobRecords records;
    private final ProofMeasurements proofMeasurements;
    private final Fleet fleet;
    private final Times times;

    JobBook(
            BenchJobs jobs,
            PrintedCodes printedCodes,
            JobRecords records,
            ProofMeasurements proofMeasurements,
            Fleet fleet,
            Times times) {
        this.jobs = jobs;
        this.printedCodes = printedCodes;
        this.records = records;
        this.proofMeasurements = proofMeasurements;
        this.fleet = fleet;
        this.times = times;
    }

    /** The job any printed code leads to. */
    BenchJob find(JobCode printed) {
        return printedCodes
                .findById(printed.value())
                .flatMap(code -> jobs.findById(code.jobCode()))
                .orElseThrow(() -> unknown(printed));
    }

    private static Refusal unknown(JobCode printed) {
        return Refusal.notFound(
                "code",
                "there is no bench job " + printed,
                "Type the code as printed on the tag; a tag just printed arrives when its kiosk has sent it.");
    }

    /**
     * The same, while nobody else may touch the job, its cabinet or its parts: everything about a cabinet comes one after
     * the other.
     */
    BenchJob locked(JobCode printed) {
        AssetTag tag = printedCodes
                .findById(printed.value())
                .flatMap(code -> jobs.tagOf(code.jobCode()))
                .map(AssetTag::new)
                .orElseThrow(() -> unknown(printed));
        // The job is read only once the cabinet is locked, so that what is read is what the one before has left.
        fleet.lock(tag);
        return find(printed);
    }

    /** Whether the record is there already; refuses when its id carries something else. */
    boolean isKnown(BenchJob job, JobRecord.Draft draft) {
        Optional<JobRecord> before = records.findById(draft.id());
        before.ifPresent(record -> {
            if (!record.bodySha256().equals(draft.sha256()) || !record.jobCode().equals(job.getId())) {
                throw Refusal.idReused(
                        "record " + draft.id() + " is stored already, for job " + record.jobCode()
                                + ", and says something else",
                        "Give another record an id of its own; what is stored stays.");
            }
        });
        return before.isPresent();
    }

    void append(BenchJob job, JobRecord.Draft draft, JobRecord.Sender sender) {
        JobRecord record = new JobRecord(job, draft, sender, times.now());
        records.saveAndFlush(record);
    }

    List<JobRecord> recordsOf(BenchJob job) {
        return records.of(job.getId());
    }

    static <T> List<T> bodies(List<JobRecord> records, JobRecord.Kind kind, Class<T> type) {
        return records.stream()
                .filter(r -> r.kind() == kind)
                .map(r -> r.body(type))
                .toList();
    }

    void store(UUID proofId, List<MeasurementBody> measurements) {
        for (int i = 0; i < measurements.size(); i++) {
            String json = StoredJson.write(measurements.get(i));
            if (json.length() > ProofMeasurement.MOST_CHARACTERS) {
                throw Refusal.badField(
                        "measurements[" + i + "]",
                        "has " + json.length() + " characters of JSON, at most " + ProofMeasurement.MOST_CHARACTERS
                                + " are kept",
                        "Send curves on a grid of at most some thousand points.");
            }
            UUID id = measurements.get(i).id();
            if (proofMeasurements.existsById(id)) {
                throw Refusal.idReused(
                        "measurement " + id + " is stored already", "Give every measurement an id of its own.");
            }
            proofMeasurements.save(new ProofMeasurement(proofId, i, measurements.get(i), json));
        }
        proofMeasurements.flush();
    }

    /** Sweeps with their measurements put back in. */
    List<ProofSweepBody> withMeasurements(List<ProofSweepBody> sweeps) {
        if (sweeps.isEmpty()) {
            return sweeps;
        }
        Map<UUID, List<MeasurementBody>> bySweep =
                proofMeasurements.of(sweeps.stream().map(ProofSweepBody::id).toList()).stream()
                        .collect(Collectors.groupingBy(
                                ProofMeasurement::proofId,
                                Collectors.mapping(ProofMeasurement::measurement, Collectors.toList())));
        return sweeps.stream()
                .map(s -> with(s, bySweep.getOrDefault(s.id(), List.of())))
                .toList();
    }

    static ProofSweepBody with(ProofSweepBody sweep, List<MeasurementBody> measurements) {
        return new ProofSweepBody(
                sweep.id(),
                sweep.at(),
                sweep.by(),
                sweep.bench(),
                sweep.subject(),
                sweep.positionCode(),
                sweep.soundsClean(),
                sweep.polarity(),
                sweep.judgeVersion(),
                sweep.limitsVersion(),
                measurements);
    }
}
