package org.docksweep.kiosk.proving;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.ServiceLoader;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.IntConsumer;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.sweep.RigException;

/**
 * One proving run: teaches a house from a few good units, fixes the ambiguity groups, then takes every return through the
 * whole path. Equal options give equal outcomes on any number of threads.
 */
public final class ProvingRun {
    private final ProvingGround ground;
    private final ProvingOptions options;
    private final ProvingHouse house;
    private final AmbiguityGroups groups;

    /**
     * Prepares: calibrates, teaches, fixes the groups.
     *
     * @param options what the run is made of
     * @throws RigException if the virtual rig refuses
     * @throws IllegalStateException if no simulator is on the class path, or the rig fails its own check
     */
    public ProvingRun(ProvingOptions options) throws RigException {
        this.options = options;
        this.ground = ServiceLoader.load(ProvingGround.class)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException(
                        "no simulator is on the class path; start the command from the kiosk module"));
        this.house = ProvingHouse.opened(ground, options);
        this.groups = AmbiguityGroups.of(ground, options);
    }

    /**
     * Takes the returns in the order dealt, all of them or as many as the time allows.
     *
     * @param mostS when to take no further return, in seconds from now; infinite for no limit
     * @param progress hears how many are done
     * @return the report
     */
    public ProvingReport run(double mostS, IntConsumer progress) {
        long started = System.nanoTime();
        List<Outcome> outcomes = takeAll(new CaseDealer(ground, options).deal(), mostS, progress);
        return new ProvingReport(options, outcomes, groups, (System.nanoTime() - started) / 1e9);
    }

    /**
     * Detection against severity, for every soft fault that has one.
     *
     * @param perCell returns per severity
     * @param progress hears how many are done
     * @return the sweep
     */
    public SeveritySweep sweepSeverities(int perCell, IntConsumer progress) {
        return SeveritySweep.of(takeAll(severityCases(perCell), Double.POSITIVE_INFINITY, progress));
    }

    /**
     * How many returns a severity sweep takes.
     *
     * @param perCell returns per severity
     * @return returns in all
     */
    public int sweepSize(int perCell) {
        return severityCases(perCell).size();
    }

    private List<ReturnCase> severityCases(int perCell) {
        CaseDealer dealer = new CaseDealer(ground, options);
        List<ReturnCase> cases = new ArrayList<>();
        for (ProvingFaultKind kind : SeveritySweep.kinds()) {
            for (Knowing knowing : Knowing.values()) {
                for (double severity : SeveritySweep.severities(kind)) {
                    if (options.knowing().contains(knowing) && dealer.has(kind)) {
                        cases.addAll(
                                dealer.dealSoft(kind, knowing, severity, perCell, options.returns() + cases.size()));
                    }
                }
            }
        }
        return cases;
    }

    private List<Outcome> takeAll(List<ReturnCase> cases, double mostS, IntConsumer progress) {
        long started = System.nanoTime();
        BooleanSupplier inTime = () -> (System.nanoTime() - started) / 1e9 < mostS;
        ConcurrentLinkedQueue<ReturnCase> queue = new ConcurrentLinkedQueue<>(cases);
        AtomicInteger done = new AtomicInteger();
        ExecutorService pool = Executors.newFixedThreadPool(options.threads());
        try {
            List<Future<List<Outcome>>> parts = new ArrayList<>();
            for (int t = 0; t < options.threads(); t++) {
                Callable<List<Outcome>> work = () -> takeFrom(queue, inTime, done, progress);
                parts.add(pool.submit(work));
            }
            List<Outcome> all = new ArrayList<>();
            for (Future<List<Outcome>> part : parts) {
                all.addAll(part.get());
            }
            all.sort(Comparator.comparingInt(o -> o.dealt().index()));
            return all;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the proving run was stopped", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException(
                    "the proving run failed: " + e.getCause().getMessage(), e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    private List<Outcome> takeFrom(
            ConcurrentLinkedQueue<ReturnCase> queue, BooleanSupplier inTime, AtomicInteger done, IntConsumer progress)
            throws Exception {
        List<Outcome> outcomes = new ArrayList<>();
        try (ReturnJudge judge = new ReturnJudge(ground, house, groups, options)) {
            for (ReturnCase next = queue.poll(); next != null && inTime.getAsBoolean(); next = queue.poll()) {
                outcomes.add(judge.take(next));
                progress.accept(done.incrementAndGet());
            }
        } catch (Exception | Error e) {
            // the others must not work on for an hour
            queue.clear();
            throw e;
        }
        return outcomes;
    }
}
