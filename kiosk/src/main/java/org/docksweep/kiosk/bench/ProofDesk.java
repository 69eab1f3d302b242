package org.docksweep.kiosk.bench;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.OrderedId;
import org.docksweep.contract.PartExchangeBody.What;
import org.docksweep.contract.ProofState;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.contract.ProofSweepBody.Polarity;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.PositionState;
import org.docksweep.kiosk.bench.BenchState.Message;
import org.docksweep.kiosk.dock.CurvePictures;
import org.docksweep.kiosk.dock.DockState.CurvePicture;
import org.docksweep.kiosk.listening.Listening;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;

/**
 * One sweep of the bench proof with the questions that a person answers after it: whether it sounded clean and, once a
 * moving part was exchanged, what the polarity check said. Lives on the bench's thread; only {@link #stop} does not.
 */
final class ProofDesk {
    private static final double PROGRESS_STEP = 0.02;
    /** Pressed by a person, read by whatever plays. */
    private static final AtomicInteger STOPS = new AtomicInteger();

    private final BenchParts parts;
    private final OpenJob job;
    private final ProofSubject subject;
    private final boolean movingPartRenewed;
    private final ProofRun run;
    private CabinetJudgement judgement;
    private Boolean clean;
    private Polarity polarity;
    private Double share;
    private Message message;

    ProofDesk(BenchParts parts, OpenJob job, ProofSubject subject) {
        this.parts = parts;
        this.job = job;
        this.subject = subject;
        this.movingPartRenewed = movingPartRenewed(job, subject);
        this.run =
                new ProofRun(parts.dock(), parts.fleet().get(), job.file().job().tag(), subject);
    }

    /** By what was taken out, or by what the service still misses: a driver may have gone into an empty position. */
    private static boolean movingPartRenewed(OpenJob job, ProofSubject subject) {
        boolean taken = job.file().exchanges().stream()
                .filter(e -> e.removed() != null && e.removed().what() != What.OTHER)
                .anyMatch(e -> !subject.bare() || subject.positionCode().equals(e.positionCode()));
        return taken
                || job.file().proof().missing().stream()
                        .filter(m -> m.key().equals("proof-missing-polarity"))
                        .anyMatch(m -> !subject.bare() || m.arguments().contains(subject.positionCode()));
    }

    /** Straight to the rig, from the thread that pressed the key: silence does not wait for a queue. */
    static void stop(BenchParts parts) {
        STOPS.incrementAndGet();
        parts.dock().rig().stop();
        parts.listening().silence();
    }

    /** Whether stop was pressed since now. */
    static BooleanSupplier stoppedFromNow() {
        int before = STOPS.get();
        return () -> STOPS.get() != before;
    }

    /** Sweeps the test points that are left, up to the next one that a person has to plug. */
    void sweepOn(Runnable publish) {
        message = null;
        BooleanSupplier stopped = stoppedFromNow();
        do {
            share = 0.0;
            publish.run();
            ProofRun.Result result = run.sweepNext(stopped, done -> progress(done, publish));
            share = null;
            if (result instanceof ProofRun.Result.Not not) {
                message = new Message(ReadingState.WATCH, not.reason());
                return;
            }
        } while (!run.complete() && parts.dock().lead().movesByItself());
        if (run.complete()) {
            judgement = run.judge();
            message = new Message(
                    judgement.verdict() == Verdict.PASS ? ReadingState.OK : ReadingState.FAULT, judgement.reason());
        }
    }

    private void progress(double done, Runnable publish) {
        if (done - share >= PROGRESS_STEP) {
            share = done;
            publish.run();
        }
    }

    Optional<Double> share() {
        return Optional.ofNullable(share);
    }

    Optional<Message> message() {
        return Optional.ofNullable(message);
    }

    /** Whether a person is asked something. */
    boolean asks() {
        return judgement != null && !answered();
    }

    /** The sweep to listen to; empty until it is whole. */
    Optional<Listening.Sweep> loudest() {
        return judgement == null ? Optional.empty() : Optional.of(run.loudest(judgement));
    }

    boolean answered() {
        return clean != null && polarity != null;
    }

    List<BenchStep> questions() {
        return clean == null
                ? List.of(BenchStep.SOUND_CLEAN, BenchStep.SOUND_NOT_CLEAN, BenchStep.LISTEN, BenchStep.KEEP_SOUND)
                : List.of(BenchStep.POLARITY_RIGHT, BenchStep.POLARITY_REVERSED, BenchStep.POLARITY_NOT_CHECKED);
    }

    Reason prompt() {
        if (judgement == null) {
            return subject.bare()
                    ? subject.prompt()
                    : Reason.of("bench-ask-plug", run.next().contacts());
        }
        return Reason.of(clean == null ? "bench-ask-sound" : "bench-ask-polarity");
    }

    void heard(BenchStep step) {
        switch (step) {
            case SOUND_CLEAN -> clean = true;
            case SOUND_NOT_CLEAN -> clean = false;
            case POLARITY_RIGHT -> polarity = Polarity.PROVED;
            case POLARITY_REVERSED -> polarity = Polarity.REVERSED;
            case POLARITY_NOT_CHECKED -> polarity = Polarity.NOT_CHECKED;
            default -> throw new IllegalArgumentException(step + " is no answer to a question of the bench proof");
        }
        if (!movingPartRenewed) {
            polarity = Polarity.NOT_CHECKED;
        }
    }

    /** Sends the recordings ahead of the sweep that names them. */
    void keepRecordings() throws ServiceProblem, ServiceUnreachable {
        for (var measurement : run.measurements(judgement)) {
            String sha256 = measurement.recordingSha256();
            try {
                parts.client()
                        .putBytes(
                                ApiPaths.RECORDINGS + "/" + sha256,
                                "application/zip",
                                parts.dock().recordings().bytes(sha256));
            } catch (java.io.IOException e) {
                throw new IllegalStateException("the recording of this sweep cannot be read: " + e.getMessage(), e);
            }
        }
    }

    ProofSweepBody body(Author author) {
        return new ProofSweepBody(
                OrderedId.next(),
                author.at(),
                author.by(),
                author.bench(),
                subject.kind(),
                subject.positionCode(),
                clean,
                polarity,
                judgement.judgeVersion(),
                parts.fleet().get().snapshot().limits().version(),
                run.measurements(judgement));
    }

    /** How the positions of the cabinet stand; a bare driver says something of its own only. */
    List<PositionState> positions() {
        if (!subject.bare()) {
            return judgement.positions();
        }
        PositionState swept = judgement.positions().get(0);
        return job.model().positions().stream()
                .map(p -> p.code().equals(subject.positionCode())
                        ? new PositionState(p.code(), swept.state(), swept.word(), swept.headline())
                        : job.stateOf(p.code()))
                .toList();
    }

    Optional<CurvePicture> curve() {
        return CurvePictures.deciding(judgement.points(), subject.model().code(), subject.references(), List.of());
    }

    /** What the sweep was worth, by what the service says of the proof now. */
    Message outcome(ProofState state) {
        boolean good = judgement.verdict() == Verdict.PASS && clean && polarity != Polarity.REVERSED;
        if (state.proved() && good) {
            return new Message(ReadingState.OK, proved(state));
        }
        return new Message(
                good ? ReadingState.WATCH : ReadingState.FAULT,
                good && !state.missing().isEmpty() ? state.missing().get(0) : judgement.reason());
    }

    private Reason proved(ProofState state) {
        if (!subject.bare()) {
            return Reason.of("bench-proved", Integer.toString(state.cleanCabinetSweeps()));
        }
        return Reason.of(
                "bench-proved-bare",
                subject.positionCode(),
                Integer.toString(state.cleanDriverSweeps().getOrDefault(subject.positionCode(), 0)));
    }
}
