package org.docksweep.kiosk.night;

import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.docksweep.contract.ProofState;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.Reasons;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.bench.Bench;
import org.docksweep.kiosk.bench.BenchActions;
import org.docksweep.kiosk.bench.BenchState;
import org.docksweep.kiosk.bench.BenchState.Activity;
import org.docksweep.kiosk.bench.BenchStep;

/** A technician who takes one job to its end by the steps that the bench offers. */
final class BenchHand {
    private static final long PATIENCE_S = 120;
    private static final int MOST_SWEEPS = 4;
    /** As the service counts: common practice, no source. */
    private static final int SWEEPS_IN_A_ROW = 2;

    private final Bench bench;
    private final BenchActions fingers;
    private final BlockingQueue<BenchState> states = new LinkedBlockingQueue<>();
    private BenchState seen;

    /**
     * Makes a hand.
     *
     * @param bench what it watches
     * @param fingers what it acts by: the bench itself, or the keys of its page
     */
    BenchHand(Bench bench, BenchActions fingers) {
        this.bench = bench;
        this.fingers = fingers;
        bench.addListener(states::add);
    }

    BenchState queue() throws InterruptedException {
        states.clear();
        fingers.refresh();
        return await(
                "the queue", s -> s.activity() == Activity.QUEUE && !s.queue().isEmpty());
    }

    BenchState open(String code) throws InterruptedException {
        states.clear();
        fingers.scan(code);
        return await(
                "job " + code,
                s -> s.job()
                        .filter(j -> j.file().job().code().value().equals(code))
                        .isPresent());
    }

    /** Takes a step that is offered and waits until its consequence is shown. */
    BenchState step(BenchStep step, String what, Predicate<BenchState> after) throws InterruptedException {
        await("the step " + step, s -> s.steps().contains(step));
        states.clear();
        fingers.step(step);
        return await(what, after);
    }

    void type(String text, String what, Predicate<BenchState> after) throws InterruptedException {
        states.clear();
        fingers.scan(text);
        await(what, after);
    }

    /** Ticks every step of the card. */
    int tickAll() throws InterruptedException {
        int ticked = 0;
        while (seen.steps().contains(BenchStep.TICK)) {
            int before = seen.job().orElseThrow().card().orElseThrow().done().size();
            step(
                    BenchStep.TICK,
                    "the tick",
                    s -> s.job()
                                    .flatMap(BenchState.JobAtHand::card)
                                    .orElseThrow()
                                    .done()
                                    .size()
                            > before);
            ticked++;
        }
        return ticked;
    }

    void fit(Part part, String serial) throws InterruptedException {
        type(part.number(), "part " + part.number(), s -> s.activity() == Activity.PART);
        if (part.serialised()) {
            type(
                    serial,
                    "the serial",
                    s -> s.part().filter(p -> !p.needsSerial()).isPresent());
        }
        int before = seen.job().orElseThrow().file().exchanges().size();
        step(
                BenchStep.PUT_IN,
                "the part put in",
                s -> s.job().orElseThrow().file().exchanges().size() > before);
    }

    /** Takes the driver that was worked on to the bench rig and sweeps it until it is clean twice in a row. */
    int proveBareDriver(String position) throws InterruptedException {
        step(
                BenchStep.DRIVER_ON_BENCH,
                "the driver on the bench",
                s -> s.activity() == Activity.PROOF && s.steps().contains(BenchStep.WHOLE_CABINET));
        return sweepUntil(state -> state.cleanDriverSweeps().getOrDefault(position, 0) >= SWEEPS_IN_A_ROW);
    }

    /** Sweeps the whole cabinet until it is clean twice in a row and the job is proved. */
    int proveCabinet() throws InterruptedException {
        if (seen.steps().contains(BenchStep.WHOLE_CABINET)) {
            step(BenchStep.WHOLE_CABINET, "the whole cabinet", s -> s.steps().contains(BenchStep.DRIVER_ON_BENCH));
        }
        return sweepUntil(state -> state.proved() && state.cleanCabinetSweeps() >= SWEEPS_IN_A_ROW);
    }

    private int sweepUntil(Predicate<ProofState> proved) throws InterruptedException {
        int sweeps = 0;
        while (!proved.test(seen.job().orElseThrow().file().proof())) {
            if (sweeps++ == MOST_SWEEPS) {
                throw new IllegalStateException(
                        "not proved after " + MOST_SWEEPS + " sweeps; the bench shows " + words());
            }
            int before = seen.job().orElseThrow().file().proofs().size();
            step(BenchStep.SWEEP, "the question after the sweep", s -> s.steps().contains(BenchStep.SOUND_CLEAN));
            step(
                    BenchStep.SOUND_CLEAN,
                    "the sweep kept",
                    s -> s.steps().contains(BenchStep.POLARITY_RIGHT)
                            || s.job().orElseThrow().file().proofs().size() > before);
            if (seen.steps().contains(BenchStep.POLARITY_RIGHT)) {
                step(
                        BenchStep.POLARITY_RIGHT,
                        "the sweep kept",
                        s -> s.job().orElseThrow().file().proofs().size() > before);
            }
        }
        return sweeps;
    }

    /** What the bench says now, in words. */
    String said() {
        return words();
    }

    private String words() {
        return seen.message()
                .map(m -> Reasons.text(m.text(), java.util.Locale.ENGLISH))
                .orElse("nothing");
    }

    private BenchState await(String what, Predicate<BenchState> wanted) throws InterruptedException {
        BenchState now = bench.state();
        while (now.busy() || !wanted.test(now)) {
            now = states.poll(PATIENCE_S, TimeUnit.SECONDS);
            if (now == null) {
                seen = bench.state();
                throw new IllegalStateException("never saw " + what + "; the bench says: " + words());
            }
            boolean failed = !now.busy()
                    && now.message()
                            .filter(m -> m.state() == ReadingState.FAULT)
                            .isPresent()
                    && !wanted.test(now);
            if (failed) {
                seen = now;
                throw new IllegalStateException("the bench refused while waiting for " + what + ": " + words());
            }
        }
        seen = now;
        return now;
    }
}
