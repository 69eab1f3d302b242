package org.docksweep.service.bench;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.BenchActionBody.Verb;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobBody.State;
import org.docksweep.contract.CheckInBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Refusal;
import org.docksweep.suspect.Suspect;
import tools.jackson.core.type.TypeReference;

/** A bench job. While it is open, its marker keeps a second one for the same cabinet out. */
@Entity
@Table(name = "bench_job")
class BenchJob extends Stored<String> {
    @Id
    private String code;

    private String tag;
    private String modelCode;

    @Enumerated(EnumType.STRING)
    private State state;

    private Instant openedAt;
    private String faultPositionCode;

    @Column(length = 4_000)
    private String reasonJson;

    @Column(length = 1_000_000)
    private String suspectsJson;

    private Boolean openMarker;
    private int revision;
    private String bench;
    private String heldBy;
    private String waitsForPart;
    private int proofFrom;
    private Instant closedAt;

    @Version
    private int version;

    protected BenchJob() {}

    /** Opened by the check-in that sent the cabinet to the bench. */
    BenchJob(CheckInBody checkIn) {
        this.code = checkIn.jobCode().value();
        this.tag = checkIn.tag().value();
        this.modelCode = checkIn.modelCode();
        this.state = State.WAITING;
        this.openedAt = checkIn.finishedAt();
        this.faultPositionCode = checkIn.faultPositionCode();
        this.reasonJson = StoredJson.write(checkIn.reason());
        this.suspectsJson = StoredJson.write(checkIn.suspects());
        this.openMarker = true;
    }

    /** Somebody takes it. */
    void accept(String atBench, String by) {
        allow(Verb.ACCEPT, State.WAITING);
        state = State.ACCEPTED;
        bench = atBench;
        heldBy = by;
    }

    /** Back into the queue; what was done stays on record. */
    void handBack() {
        allow(Verb.HAND_BACK, State.ACCEPTED, State.WAITING_FOR_PART, State.IN_REPAIR, State.PROVING);
        state = State.WAITING;
        bench = null;
        heldBy = null;
        waitsForPart = null;
    }

    void waitForPart(String partNumber) {
        allow(Verb.WAIT_FOR_PART, State.ACCEPTED, State.IN_REPAIR, State.PROVING);
        state = State.WAITING_FOR_PART;
        waitsForPart = partNumber;
    }

    void startRepair() {
        allow(Verb.START_REPAIR, State.ACCEPTED, State.WAITING_FOR_PART, State.PROVING);
        state = State.IN_REPAIR;
        waitsForPart = null;
    }

    /** Sweeps count from here on. */
    void startProof() {
        allow(Verb.START_PROOF, State.ACCEPTED, State.IN_REPAIR);
        state = State.PROVING;
        proofFrom = revision;
    }

    /** The caller has seen the proof. */
    void signOff(Instant at) {
        allow(Verb.SIGN_OFF, State.PROVING);
        close(State.SIGNED_OFF, at);
    }

    void scrap(Instant at) {
        allow(Verb.SCRAP, State.ACCEPTED, State.WAITING_FOR_PART, State.IN_REPAIR, State.PROVING);
        close(State.SCRAPPED, at);
    }

    void returnUnrepaired(Instant at) {
        allow(Verb.RETURN_UNREPAIRED, State.ACCEPTED, State.WAITING_FOR_PART, State.IN_REPAIR, State.PROVING);
        close(State.RETURNED_UNREPAIRED, at);
    }

    private void close(State to, Instant at) {
        state = to;
        openMarker = null;
        waitsForPart = null;
        closedAt = at;
    }

    private void allow(Verb verb, State... from) {
        if (!List.of(from).contains(state)) {
            throw Refusal.wrongState(
                    "verb",
                    "job " + code + " is " + state + "; " + verb + " is possible only while it is "
                            + String.join(
                                    ", ",
                                    List.of(from).stream().map(State::name).toList()),
                    isOpen()
                            ? "Look at the job again and do what its state allows."
                            : "The job is closed; a new failure of the cabinet opens a new one.");
        }
    }

    /** A cabinet that failed again during its proof has to be proved anew. */
    void failedAgain() {
        proofFrom = revision;
    }

    /** One more record of the job. */
    int nextRevision() {
        return ++revision;
    }

    BenchJobBody body(LocalDate needOn, List<UUID> checkInIds, int expectedEffortMinutes) {
        return new BenchJobBody(
                jobCode(),
                new AssetTag(tag),
                modelCode,
                state,
                openedAt,
                needOn,
                faultPositionCode,
                StoredJson.read(reasonJson, Reason.class),
                suspects(),
                checkInIds,
                revision,
                bench,
                heldBy,
                waitsForPart,
                expectedEffortMinutes);
    }

    List<Suspect> suspects() {
        return StoredJson.read(suspectsJson, new TypeReference<List<Suspect>>() {});
    }

    JobCode jobCode() {
        return new JobCode(code);
    }

    AssetTag tag() {
        return new AssetTag(tag);
    }

    String modelCode() {
        return modelCode;
    }

    Instant openedAt() {
        return openedAt;
    }

    State state() {
        return state;
    }

    int revision() {
        return revision;
    }

    int proofFrom() {
        return proofFrom;
    }

    String bench() {
        return bench;
    }

    String heldBy() {
        return heldBy;
    }

    String waitsForPart() {
        return waitsForPart;
    }

    String faultPositionCode() {
        return faultPositionCode;
    }

    boolean isOpen() {
        return openMarker != null;
    }

    @Override
    public String getId() {
        return code;
    }
}
