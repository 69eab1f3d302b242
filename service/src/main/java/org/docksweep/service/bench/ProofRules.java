package org.docksweep.service.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.ProofState;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;

/**
 * Whether a job is proved: two clean sweeps in a row of the cabinet, or of the bare driver of every position that was
 * worked on; the polarity proved where a moving part was renewed. Only sweeps since the proof began count.
 */
final class ProofRules {
    /** "At least two clean sweeps in a row": common practice, no source. */
    private static final int SWEEPS_IN_A_ROW = 2;

    private ProofRules() {}

    /**
     * What the rules look at.
     *
     * @param begun whether the job is in its proof
     * @param found whether a cause is confirmed
     * @param model cabinet model
     * @param worked positions at which parts were exchanged
     * @param renewed those of them whose moving part was renewed
     * @param elsewhere whether parts were exchanged that belong to no position
     * @param empty positions left empty
     * @param sweeps sweeps since the proof began, oldest first
     */
    record Case(
            boolean begun,
            boolean found,
            CabinetModel model,
            Set<String> worked,
            Set<String> renewed,
            boolean elsewhere,
            Set<String> empty,
            List<ProofSweepBody> sweeps) {}

    /** Whether a sweep is clean: every test point passed at its last attempt, nothing heard, polarity not reversed. */
    static boolean clean(ProofSweepBody sweep, CabinetModel model) {
        Set<String> needed = sweep.subject() == ProofSweepBody.Subject.BARE_DRIVER
                ? Set.of(BareDriver.TEST_POINT)
                : model.testPoints().stream().map(TestPoint::code).collect(Collectors.toSet());
        Map<String, MeasurementBody> last = last(sweep);
        return sweep.soundsClean()
                && sweep.polarity() != ProofSweepBody.Polarity.REVERSED
                && last.keySet().containsAll(needed)
                && last.values().stream().allMatch(m -> m.judgement().verdict() == Verdict.PASS);
    }

    /** Last measurement of every test point. */
    static Map<String, MeasurementBody> last(ProofSweepBody sweep) {
        Map<String, MeasurementBody> last = new LinkedHashMap<>();
        for (MeasurementBody measurement : sweep.measurements()) {
            last.merge(
                    measurement.judgement().testPointCode(), measurement, (a, b) -> b.attempt() >= a.attempt() ? b : a);
        }
        return last;
    }

    static ProofState state(Case job) {
        List<Reason> missing = new ArrayList<>();
        if (!job.begun()) {
            missing.add(Reason.of("proof-missing-repair-open"));
        }
        if (!job.found()) {
            missing.add(Reason.of("proof-missing-finding"));
        }
        job.empty().forEach(p -> missing.add(Reason.of("proof-missing-empty", p)));
        List<ProofSweepBody> sweeps = job.sweeps();
        if (!sweeps.isEmpty() && !clean(sweeps.get(sweeps.size() - 1), job.model())) {
            missing.add(Reason.of("proof-missing-last-not-clean"));
        }
        int cabinet = inARow(job, ProofSweepBody.Subject.CABINET, null);
        if (cabinet < SWEEPS_IN_A_ROW) {
            if (job.worked().isEmpty() || job.elsewhere()) {
                missing.add(Reason.of("proof-missing-cabinet", Integer.toString(cabinet)));
            } else {
                bareDrivers(job, missing);
            }
        }
        for (String position : job.renewed()) {
            if (!polarityProved(job, position)) {
                missing.add(Reason.of("proof-missing-polarity", position));
            }
        }
        return new ProofState(missing.isEmpty(), cabinet, drivers(job), missing);
    }

    private static Map<String, Integer> drivers(Case job) {
        Map<String, Integer> clean = new TreeMap<>();
        job.sweeps().stream()
                .map(ProofSweepBody::positionCode)
                .filter(Objects::nonNull)
                .forEach(p -> clean.put(p, inARow(job, ProofSweepBody.Subject.BARE_DRIVER, p)));
        return clean;
    }

    private static void bareDrivers(Case job, List<Reason> missing) {
        for (String position : job.worked()) {
            int bare = inARow(job, ProofSweepBody.Subject.BARE_DRIVER, position);
            if (bare < SWEEPS_IN_A_ROW) {
                missing.add(Reason.of("proof-missing-bare", position, Integer.toString(bare)));
            }
        }
    }

    /** Clean sweeps of a subject, counted from its newest backwards to the first that was not clean. */
    private static int inARow(Case job, ProofSweepBody.Subject subject, String position) {
        int count = 0;
        for (int i = job.sweeps().size() - 1; i >= 0; i--) {
            ProofSweepBody sweep = job.sweeps().get(i);
            if (sweep.subject() == subject && Objects.equals(sweep.positionCode(), position)) {
                if (!clean(sweep, job.model())) {
                    return count;
                }
                count++;
            }
        }
        return count;
    }

    private static boolean polarityProved(Case job, String position) {
        return job.sweeps().stream()
                .anyMatch(s -> s.polarity() == ProofSweepBody.Polarity.PROVED
                        && clean(s, job.model())
                        && (s.subject() == ProofSweepBody.Subject.CABINET || position.equals(s.positionCode())));
    }

    /** Of a driver on its own: whether its last two sweeps were clean, with the polarity proved where it must be. */
    static List<Reason> missingOfBareDriver(List<ProofSweepBody> sweeps, boolean renewed, String serial) {
        List<Reason> missing = new ArrayList<>();
        int row = 0;
        for (int i = sweeps.size() - 1; i >= 0 && clean(sweeps.get(i), null); i--) {
            row++;
        }
        if (row < SWEEPS_IN_A_ROW) {
            missing.add(Reason.of("proof-missing-bare", serial, Integer.toString(row)));
        }
        boolean proved =
                sweeps.stream().anyMatch(s -> s.polarity() == ProofSweepBody.Polarity.PROVED && clean(s, null));
        if (renewed && !proved) {
            missing.add(Reason.of("proof-missing-polarity", serial));
        }
        return missing;
    }
}
