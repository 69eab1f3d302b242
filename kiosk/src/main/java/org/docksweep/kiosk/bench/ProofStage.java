package org.docksweep.kiosk.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.docksweep.contract.ApiPaths;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.bench.BenchState.Message;
import org.docksweep.kiosk.listening.Listening;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;

/**
 * The bench proof of the job at hand: what is swept, the whole cabinet or a bare driver on the bench rig, and the sweep that
 * goes on. Lives on the bench's thread.
 */
final class ProofStage {
    private final BenchParts parts;
    private final BenchOffice office;
    private ProofSubject subject;
    private ProofDesk desk;
    private SlowSweep slow;

    ProofStage(BenchParts parts, BenchOffice office) {
        this.parts = parts;
        this.office = office;
    }

    /** Forgets what was begun. */
    void leave() {
        subject = null;
        desk = null;
        slow = null;
    }

    /**
     * Begins. Of a powered cabinet the current says nothing, so its repaired driver comes first.
     *
     * @return what there is to say of it
     */
    Optional<Message> begin(OpenJob job) throws ServiceProblem, ServiceUnreachable {
        leave();
        List<String> worked = job.worked();
        return onlyHeard(job.model()) && !worked.isEmpty() ? onBench(job, worked.get(0)) : Optional.empty();
    }

    private static boolean onlyHeard(CabinetModel model) {
        return model.testPoints().stream().allMatch(p -> p.kind() == TestPointKind.LINE_INPUT);
    }

    void wholeCabinet(OpenJob job) {
        subject = ProofSubject.cabinet(job, parts.fleet().get());
        desk = null;
        slow = null;
    }

    /** Takes the driver that was worked on, else the one at fault, else the first. */
    Optional<Message> driverOnBench(OpenJob job) throws ServiceProblem, ServiceUnreachable {
        return onBench(job, likely(job).get(0));
    }

    Optional<Message> otherDriver(OpenJob job) throws ServiceProblem, ServiceUnreachable {
        List<String> positions = likely(job);
        int next = (positions.indexOf(subject.positionCode()) + 1) % positions.size();
        return onBench(job, positions.get(next));
    }

    private static List<String> likely(OpenJob job) {
        List<String> positions = new ArrayList<>(job.worked());
        job.positionCodes().stream().filter(p -> !positions.contains(p)).forEach(positions::add);
        return positions;
    }

    private Optional<Message> onBench(OpenJob job, String position) throws ServiceProblem, ServiceUnreachable {
        Optional<ProofSubject> driver =
                ProofSubject.bareDriver(office, job, position, parts.fleet().get());
        if (driver.isEmpty()) {
            String code = job.model().position(position).driverModelCode();
            return Optional.of(new Message(ReadingState.FAULT, Reason.of("bench-bare-no-level", position, code)));
        }
        subject = driver.get();
        desk = null;
        slow = null;
        return subject.taught()
                ? Optional.empty()
                : Optional.of(new Message(
                        ReadingState.WATCH,
                        Reason.of("bench-bare-no-reference", subject.driver().name())));
    }

    /** Sweeps the test points that are left, up to the next one that a person has to plug. */
    Optional<Message> sweepOn(OpenJob job, Runnable publish) {
        if (subject == null) {
            wholeCabinet(job);
        }
        if (desk == null) {
            desk = new ProofDesk(parts, job, subject);
        }
        desk.sweepOn(publish);
        return desk.message();
    }

    /** Sweeps slowly for the ear: the whole band, or around where that was stopped. */
    Message slowly(OpenJob job, boolean around, Runnable publish) {
        if (subject == null) {
            wholeCabinet(job);
        }
        if (slow == null) {
            slow = new SlowSweep(parts, subject, job.file().job().tag());
        }
        BooleanSupplier stopped = ProofDesk.stoppedFromNow();
        return around ? slow.around(stopped, publish) : slow.sweep(stopped, publish);
    }

    /** The sweep that was just played here. */
    Optional<Listening.Sweep> heardHere() {
        return desk == null ? Optional.empty() : desk.loudest();
    }

    /** Takes an answer; true when it was the last one, so that the sweep can be kept. */
    boolean heard(BenchStep answer) {
        desk.heard(answer);
        return desk.answered();
    }

    /** What the sweep left behind. */
    record Kept(OpenJob job, Message message) {}

    /** Sends the sweep with its recordings. */
    Kept keep(OpenJob job, Author author) throws ServiceProblem, ServiceUnreachable {
        var body = desk.body(author);
        desk.keepRecordings();
        office.add(job.code(), ApiPaths.PROOFS, body.id(), body);
        OpenJob now = job.read(office).sweptHere(desk.positions(), desk.curve());
        Message message = desk.outcome(now.file().proof());
        desk = null;
        return new Kept(now, message);
    }

    List<BenchStep> steps(OpenJob job) {
        if (desk != null && desk.asks()) {
            return desk.questions();
        }
        List<BenchStep> steps = new ArrayList<>();
        boolean proved = job.file().proof().proved();
        steps.add(proved ? BenchStep.OTHERWISE : BenchStep.SWEEP);
        steps.add(proved ? BenchStep.SWEEP : BenchStep.OTHERWISE);
        boolean bare = subject != null && subject.bare();
        steps.add(bare ? BenchStep.WHOLE_CABINET : BenchStep.DRIVER_ON_BENCH);
        if (bare && job.model().positions().size() > 1) {
            steps.add(BenchStep.OTHER_PLACE);
        }
        steps.add(BenchStep.SLOW_SWEEP);
        if (slow != null && slow.wasStopped()) {
            steps.add(BenchStep.SLOW_AROUND);
        }
        steps.add(BenchStep.BACK);
        return steps;
    }

    Reason prompt() {
        if (slow != null && slow.share().isPresent()) {
            return slow.prompt();
        }
        if (desk != null) {
            return desk.prompt();
        }
        return subject == null ? Reason.of("bench-ask-proof") : subject.prompt();
    }

    Optional<Double> share() {
        Optional<Double> slowly = slow == null ? Optional.empty() : slow.share();
        return slowly.isPresent() || desk == null ? slowly : desk.share();
    }
}
