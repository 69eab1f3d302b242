package org.docksweep.kiosk.bench;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchActionBody.Verb;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.bench.BenchState.Activity;
import org.docksweep.kiosk.bench.BenchState.Message;
import org.docksweep.kiosk.printing.PaperView;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;

/**
 * The state machine of the bench: what a scan means, which job is at hand, which steps are open. Lives on the bench's
 * thread only; asking the service happens there too, and is told as busy.
 */
final class BenchFlow {
    private final BenchParts parts;
    private final BenchOffice office;
    private final Runnable publish;
    private List<BenchJobBody> queue = List.of();
    private int marked = -1;
    private OpenJob job;
    private Activity activity = Activity.QUEUE;
    private Message message;
    private FindingDraft finding;
    private PartFitting fitting;
    private final ProofStage proof;
    private final BenchEar ear;
    private JobEnding ending;
    private boolean busy;

    BenchFlow(BenchParts parts, Runnable publish) {
        this.parts = parts;
        this.office = new BenchOffice(parts.client());
        this.proof = new ProofStage(parts, office);
        this.ear = new BenchEar(parts, office);
        this.publish = publish;
    }

    /** Something that asks the service. */
    @FunctionalInterface
    private interface Work {
        void run() throws ServiceProblem, ServiceUnreachable;
    }

    /** Runs work that may take its time, and says in words what went wrong. */
    private void working(Work work) {
        message = null;
        busy = true;
        publish.run();
        try {
            work.run();
        } catch (ServiceProblem e) {
            tell(ReadingState.FAULT, Reason.of("bench-refused", e.getMessage()));
        } catch (ServiceUnreachable e) {
            tell(ReadingState.WATCH, Reason.of("bench-no-service", e.getMessage()));
        } finally {
            busy = false;
        }
    }

    private void tell(ReadingState state, Reason text) {
        message = new Message(state, text);
    }

    void refresh() {
        if (activity == Activity.QUEUE) {
            working(this::readQueue);
        } else {
            working(this::readJob);
        }
    }

    private void readQueue() throws ServiceProblem, ServiceUnreachable {
        queue = office.queue();
        marked = queue.isEmpty() ? -1 : Math.max(0, Math.min(marked, queue.size() - 1));
    }

    private void readJob() throws ServiceProblem, ServiceUnreachable {
        job = job.read(office);
    }

    void mark(int index) {
        if (activity == Activity.QUEUE && index >= 0 && index < queue.size()) {
            marked = index;
        }
    }

    void scanned(String raw) {
        String text = raw.strip();
        message = null;
        switch (activity) {
            case FINDING -> typedIntoFinding(text);
            case PART -> working(() -> fitting = fitting.scanned(office, text));
            case ENDING -> ending.typed(text);
            case QUEUE, JOB, PROOF -> looked(text);
        }
    }

    private void looked(String text) {
        BenchScan scan = BenchScan.read(text);
        if (scan instanceof BenchScan.Job jobCode) {
            working(() -> openNow(jobCode.code()));
        } else if (scan instanceof BenchScan.Cabinet cabinet) {
            working(() -> openJobOf(cabinet.tag()));
        } else if (job != null && job.state() == BenchJobBody.State.IN_REPAIR) {
            working(() -> takePart(text));
        } else {
            tell(ReadingState.FAULT, Reason.of("bench-unreadable", text));
        }
    }

    private void openJobOf(AssetTag tag) throws ServiceProblem, ServiceUnreachable {
        readQueue();
        Optional<BenchJobBody> found =
                queue.stream().filter(j -> j.tag().equals(tag)).findFirst();
        if (found.isPresent()) {
            openNow(found.get().code());
        } else {
            tell(ReadingState.WATCH, Reason.of("bench-no-job", tag.value()));
        }
    }

    private void takePart(String number) throws ServiceProblem, ServiceUnreachable {
        Optional<PartFitting> begun = PartFitting.begin(office, job, number);
        if (begun.isPresent()) {
            fitting = begun.get();
            activity = Activity.PART;
        } else {
            tell(ReadingState.FAULT, Reason.of("bench-unknown-part", number));
        }
    }

    private void openNow(JobCode code) throws ServiceProblem, ServiceUnreachable {
        job = OpenJob.open(office, code, parts.fleet().get());
        proof.leave();
        activity = Activity.JOB;
    }

    private void typedIntoFinding(String text) {
        if (!finding.choose(text)) {
            finding.typed(text);
        }
    }

    void choose(String code) {
        if (activity == Activity.FINDING) {
            finding.choose(code);
        }
    }

    void viewCard(Consumer<PaperView> shown) {
        if (steps().contains(BenchStep.PRINT_CARD)) {
            message = null;
            working(() -> shown.accept(CardPrinter.view(office, parts.dock().papers(), job)));
        }
    }

    void step(BenchStep step) {
        if (!steps().contains(step)) {
            return;
        }
        message = null;
        switch (step) {
            case OPEN -> working(() -> openNow(queue.get(marked).code()));
            case TAKE -> act(Verb.ACCEPT, "bench-taken");
            case BEGIN_REPAIR -> act(Verb.START_REPAIR, "bench-repair-begun");
            case BEGIN_PROOF -> beginProof();
            case TICK -> working(() -> job = job.tick(office, author(), true));
            case UNTICK -> working(() -> job = job.tick(office, author(), false));
            case OTHER_CARD -> working(() -> job = job.otherCard(office));
            case PRINT_CARD ->
                working(() -> message = CardPrinter.print(office, parts.dock().papers(), job));
            case FIND -> {
                finding = new FindingDraft(job.faultPosition(), job.faultElement());
                activity = Activity.FINDING;
            }
            case STORE_FINDING -> storeFinding();
            case OTHER_PLACE -> otherPlace();
            case DRIVER_ON_BENCH ->
                working(() -> {
                    activity = Activity.PROOF;
                    message = proof.driverOnBench(job).orElse(null);
                });
            case WHOLE_CABINET -> proof.wholeCabinet(job);
            case OTHER_FATE -> fitting = fitting.otherFate();
            case PUT_IN -> putIn();
            case WAIT_FOR_PART -> waitForPart();
            case SWEEP -> playing(() -> message = proof.sweepOn(job, publish).orElse(null));
            case SLOW_SWEEP, SLOW_AROUND ->
                playing(() -> message = proof.slowly(job, step == BenchStep.SLOW_AROUND, publish));
            case LISTEN -> working(() -> message = ear.listen(job, proof.heardHere()));
            case KEEP_SOUND -> working(() -> message = ear.keep(job, proof.heardHere()));
            case SOUND_CLEAN, SOUND_NOT_CLEAN, POLARITY_RIGHT, POLARITY_REVERSED, POLARITY_NOT_CHECKED -> heard(step);
            case OTHERWISE -> {
                ending = new JobEnding(job, now());
                activity = Activity.ENDING;
            }
            case SIGN_OFF -> end(Verb.SIGN_OFF, "bench-signed-off");
            case HAND_BACK -> end(Verb.HAND_BACK, "bench-handed-back");
            case SCRAP -> end(Verb.SCRAP, "bench-scrapped");
            case RETURN_UNREPAIRED -> end(Verb.RETURN_UNREPAIRED, "bench-returned");
            case BACK -> back();
        }
    }

    private Author author() {
        return new Author(now(), parts.dock().settings().operator(), parts.benchName());
    }

    private Instant now() {
        return parts.dock().clock().instant().truncatedTo(ChronoUnit.MICROS);
    }

    private void act(Verb verb, String done) {
        working(() -> {
            send(verb, BenchOffice.Words.NONE);
            tell(ReadingState.OK, Reason.of(done, job.code().value()));
        });
    }

    private void send(Verb verb, BenchOffice.Words words) throws ServiceProblem, ServiceUnreachable {
        office.act(job, author(), verb, words);
        readJob();
    }

    private void beginProof() {
        working(() -> {
            send(Verb.START_PROOF, BenchOffice.Words.NONE);
            activity = Activity.PROOF;
            tell(ReadingState.OK, Reason.of("bench-proof-begun", job.code().value()));
            proof.begin(job).ifPresent(said -> message = said);
        });
    }

    private void otherPlace() {
        working(() -> {
            if (activity == Activity.PROOF) {
                message = proof.otherDriver(job).orElse(null);
            } else {
                fitting = fitting.otherPlace(office);
            }
        });
    }

    private void storeFinding() {
        Optional<String> missing = finding.missing();
        if (missing.isPresent()) {
            tell(ReadingState.WATCH, Reason.of(missing.get()));
            return;
        }
        working(() -> {
            Author author = author();
            var body = finding.body(author.at(), author.by(), author.bench());
            office.add(job.code(), ApiPaths.FINDINGS, body.id(), body);
            readJob();
            activity = Activity.JOB;
            tell(ReadingState.OK, Reason.of("bench-finding-kept"));
        });
    }

    private void putIn() {
        working(() -> {
            var body = fitting.body(author(), job);
            office.add(job.code(), ApiPaths.EXCHANGES, body.id(), body);
            String number = fitting.number();
            readJob();
            activity = Activity.JOB;
            tell(ReadingState.OK, Reason.of("bench-part-in", number));
        });
    }

    private void waitForPart() {
        working(() -> {
            String number = fitting.number();
            send(Verb.WAIT_FOR_PART, new BenchOffice.Words(number, null, null));
            activity = Activity.JOB;
            tell(ReadingState.WATCH, Reason.of("bench-waits-for-part", number));
        });
    }

    private void playing(Runnable sweep) {
        parts.listening().silence();
        if (!parts.dock().standing().get().maySweep()) {
            tell(ReadingState.FAULT, Reason.of("dock-rig-check-failed"));
            return;
        }
        activity = Activity.PROOF;
        busy = true;
        message = null;
        publish.run();
        try {
            sweep.run();
        } finally {
            busy = false;
        }
    }

    private void heard(BenchStep step) {
        if (proof.heard(step)) {
            working(() -> {
                ProofStage.Kept kept = proof.keep(job, author());
                job = kept.job();
                message = kept.message();
            });
        }
    }

    private void end(Verb verb, String done) {
        if (ending.needsWords(verb)) {
            tell(ReadingState.WATCH, Reason.of("bench-say-why"));
            return;
        }
        working(() -> {
            String code = job.code().value();
            String tag = job.file().job().tag().value();
            send(verb, ending.words(verb));
            job = null;
            activity = Activity.QUEUE;
            readQueue();
            tell(ReadingState.OK, Reason.of(done, code, tag));
        });
    }

    private void back() {
        if (activity == Activity.JOB) {
            job = null;
            activity = Activity.QUEUE;
            working(this::readQueue);
        } else {
            activity = Activity.JOB;
            proof.leave();
        }
    }

    private List<BenchStep> steps() {
        if (busy) {
            return List.of();
        }
        return switch (activity) {
            case QUEUE -> queue.isEmpty() ? List.of() : List.of(BenchStep.OPEN);
            case JOB -> JobSteps.of(job);
            case FINDING -> List.of(BenchStep.STORE_FINDING, BenchStep.BACK);
            case PART -> fitting.steps();
            case PROOF -> proof.steps(job);
            case ENDING -> JobSteps.endings(job);
        };
    }

    /** Something went wrong that nobody foresaw: say so; what the service has stays as it is. */
    void defect(RuntimeException e) {
        busy = false;
        proof.leave();
        activity = job == null ? Activity.QUEUE : Activity.JOB;
        tell(ReadingState.FAULT, Reason.of("bench-defect", e.getMessage() == null ? e.toString() : e.getMessage()));
    }

    BenchState state() {
        return new BenchState(
                activity,
                queue,
                marked,
                Optional.ofNullable(job).map(OpenJob::picture),
                prompt(),
                Optional.ofNullable(message),
                steps(),
                activity == Activity.FINDING ? finding.choices() : List.of(),
                activity == Activity.PART ? Optional.of(fitting.picture()) : Optional.empty(),
                proof.share(),
                busy);
    }

    private Reason prompt() {
        return switch (activity) {
            case QUEUE -> Reason.of(queue.isEmpty() ? "bench-ask-empty" : "bench-ask-queue");
            case JOB -> Reason.of("bench-ask-" + job.state().name());
            case FINDING ->
                Reason.of(
                        "bench-ask-finding",
                        finding.coil().orElse("-"),
                        finding.words().orElse("-"));
            case PART -> fitting.prompt();
            case PROOF -> proof.prompt();
            case ENDING -> ending.prompt();
        };
    }
}
