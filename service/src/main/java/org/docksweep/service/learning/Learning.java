package org.docksweep.service.learning;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.DockConfusion;
import org.docksweep.contract.LearnedPriors;
import org.docksweep.contract.LearningDecision;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.checkins.CheckIns;
import org.docksweep.service.models.Models;
import org.docksweep.service.site.Site;
import org.docksweep.suspect.PriorTeacher;
import org.docksweep.suspect.Priors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Learns, anew at every question, from what is on record: nothing learned is stored, so nothing can be out of date. */
@Service
@Transactional(readOnly = true)
public class Learning {
    /** Returns are counted in these periods back from now, in days. */
    private static final int[] PERIODS_DAYS = {91, 182, 365, 730, 1461, 2922};

    private final Repairs repairs;
    private final Decisions decisions;
    private final Models models;
    private final CheckIns checkIns;
    private final Fleet fleet;
    private final Site site;
    /** Snapshots ask after every check-in, and mostly nothing was learned since. */
    private volatile Known known;

    Learning(Repairs repairs, Decisions decisions, Models models, CheckIns checkIns, Fleet fleet, Site site) {
        this.repairs = repairs;
        this.decisions = decisions;
        this.models = models;
        this.checkIns = checkIns;
        this.fleet = fleet;
        this.site = site;
    }

    /** What was learned, whether it is used or not. */
    LearnedPriors learned() {
        List<LearningDecision> decided = decisions.newestFirst();
        Set<UUID> leftOut = Decisions.leftOut(decided);
        List<Repair> teaching = repairs.all().stream().filter(Repair::teaches).toList();
        PriorTeacher.Lesson lesson =
                lesson(teaching.stream().filter(r -> !leftOut.contains(r.id())).toList());
        return new LearnedPriors(
                fleet.now(),
                Decisions.used(decided),
                PriorTeacher.POLICY.halfLife().toDays(),
                lesson.rows(),
                lesson.priors(),
                teaching.stream()
                        .sorted(Comparator.comparing(Repair::at).reversed().thenComparing(Repair::id))
                        .map(r -> r.finding(leftOut.contains(r.id())))
                        .toList());
    }

    private PriorTeacher.Lesson lesson(List<Repair> teaching) {
        return PriorTeacher.teach(
                models.book(),
                teaching.stream().map(Repair::confirmed).toList(),
                returns(),
                endOfDay(),
                PriorTeacher.POLICY);
    }

    /** The end of this day at the site: priors change once a day by forgetting, and by what is on record. */
    private Instant endOfDay() {
        return LocalDate.ofInstant(fleet.now(), site.zone())
                .plusDays(1)
                .atStartOfDay(site.zone())
                .toInstant();
    }

    private List<PriorTeacher.Returns> returns() {
        List<PriorTeacher.Returns> returns = new ArrayList<>();
        List<Duration> periods =
                Arrays.stream(PERIODS_DAYS).mapToObj(Duration::ofDays).toList();
        checkIns.returned(periods).forEach((driverModelCode, counts) -> {
            int from = 0;
            long before = 0;
            for (int i = 0; i < counts.length; i++) {
                Instant middle = endOfDay().minus(Duration.ofHours(12L * (from + PERIODS_DAYS[i])));
                if (counts[i] > before) {
                    returns.add(new PriorTeacher.Returns(driverModelCode, middle, Math.toIntExact(counts[i] - before)));
                }
                before = counts[i];
                from = PERIODS_DAYS[i];
            }
        });
        return returns;
    }

    /**
     * What kiosks judge with.
     *
     * @return the learned priors, or the usual ones while learning is paused
     */
    public Priors inForce() {
        List<LearningDecision> decided = decisions.newestFirst();
        State now = new State(
                repairs.count(), decided.size(), models.book().cabinetModels().size(), endOfDay());
        Known before = known;
        if (before != null && before.state().equals(now)) {
            return before.priors();
        }
        Priors priors = Decisions.used(decided) ? learned().priors() : Priors.USUAL;
        known = new Known(now, priors);
        return priors;
    }

    /** What learned priors depend on: nothing of it is ever changed, only added to. */
    private record State(long repairs, int decisions, int models, Instant day) {}

    private record Known(State state, Priors priors) {}

    /** What the dock guessed against what was found. */
    DockConfusion confusion() {
        return Confusion.of(
                fleet.now(), repairs.all().stream().filter(Repair::guessed).toList());
    }
}
