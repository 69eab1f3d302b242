package org.docksweep.service.bench;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.docksweep.contract.BenchActionBody;
import org.docksweep.contract.CommissioningBody;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.ProofState;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Reasons;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Baseline;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.commissionings.Commissionings;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Component;

/** Lets a cabinet leave the bench: with a proof that becomes its baseline, or without. */
@Component
class SignOff {
    private final Fleet fleet;
    private final Commissionings commissionings;

    SignOff(Fleet fleet, Commissionings commissionings) {
        this.fleet = fleet;
        this.commissionings = commissionings;
    }

    /** Refuses unless the job is proved; then its last clean sweep of the cabinet is the new baseline. */
    void prove(BenchJob job, ProofRules.Case look, BenchActionBody action) {
        ProofState state = ProofRules.state(look);
        if (!state.proved()) {
            throw Refusal.notProved(
                    job.getId(),
                    state.missing().stream()
                            .map(m -> Reasons.text(m, Locale.ENGLISH))
                            .toList());
        }
        endBaselines(job, look, action);
        newestCleanOfCabinet(look).ifPresent(sweep -> commission(job, sweep, action));
        leave(job, CabinetStatus.READY);
    }

    private static Optional<ProofSweepBody> newestCleanOfCabinet(ProofRules.Case look) {
        return look.sweeps().stream()
                .filter(s -> s.subject() == ProofSweepBody.Subject.CABINET && ProofRules.clean(s, look.model()))
                .reduce((a, b) -> b);
    }

    /**
     * What was measured on parts that are gone holds no longer. Where the cabinet was swept, a new baseline follows; where
     * only its bare drivers were, the model's reference judges until it has one again.
     */
    private void endBaselines(BenchJob job, ProofRules.Case look, BenchActionBody action) {
        Set<String> points = look.model().testPoints().stream()
                .filter(p -> look.elsewhere() || p.positionCodes().stream().anyMatch(look.worked()::contains))
                .map(TestPoint::code)
                .collect(Collectors.toCollection(TreeSet::new));
        Instant before = newestCleanOfCabinet(look)
                .flatMap(s ->
                        s.measurements().stream().map(MeasurementBody::takenAt).min(Comparator.naturalOrder()))
                .map(first -> first.minus(1, ChronoUnit.MICROS))
                .orElse(action.at());
        commissionings.end(job.tag(), points, before, job.jobCode());
    }

    private void commission(BenchJob job, ProofSweepBody sweep, BenchActionBody action) {
        List<Baseline> baselines = ProofRules.last(sweep).values().stream()
                .filter(m -> m.judgement().impedance() != null || m.judgement().acoustic() != null)
                .map(m -> new Baseline(
                        job.tag(),
                        m.judgement().testPointCode(),
                        m.takenAt(),
                        m.ambientCelsius(),
                        m.judgement().impedance(),
                        m.judgement().acoustic()))
                .toList();
        if (!baselines.isEmpty()) {
            UUID id = UUID.nameUUIDFromBytes(("sign-off " + action.id()).getBytes(StandardCharsets.UTF_8));
            commissionings.put(id, new CommissioningBody(id, job.tag(), sweep.at(), sweep.by(), baselines));
        }
    }

    void leave(BenchJob job, CabinetStatus to) {
        fleet.leaveBench(job.tag(), to);
    }
}
