package org.docksweep.service.limits;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.Semaphore;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.LimitRehearsal;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.SharedScatter;
import org.docksweep.service.checkins.CheckIns;
import org.docksweep.service.commissionings.Commissionings;
import org.docksweep.service.learning.Learning;
import org.docksweep.service.models.Models;
import org.docksweep.service.store.Transactions;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Refusal;
import org.docksweep.suspect.Priors;
import org.springframework.stereotype.Service;

/**
 * Tries a draft of limits on the check-ins of a period. They are read a page at a time and judged on all cores; one rehearsal runs at a
 * time, and each looks at so many check-ins and takes so long at most: the answer says from where to go on.
 */
@Service
class LimitRehearsals {
    /** Check-ins looked at in one go. */
    static final int MOST_CHECK_INS = 5_000;

    private static final int PAGE = 50;
    /** A page is finished even when this has passed. */
    private static final Duration LONGEST = Duration.ofSeconds(40);

    private final CheckIns checkIns;
    private final Commissionings commissionings;
    private final Models models;
    private final Learning learning;
    private final Transactions transactions;
    private final Semaphore one = new Semaphore(1);

    LimitRehearsals(
            CheckIns checkIns,
            Commissionings commissionings,
            Models models,
            Learning learning,
            Transactions transactions) {
        this.checkIns = checkIns;
        this.commissionings = commissionings;
        this.models = models;
        this.learning = learning;
        this.transactions = transactions;
    }

    LimitRehearsal rehearse(LimitRehearsal.Order order) {
        new Check()
                .present(order.draft(), "draft")
                .present(order.from(), "from")
                .present(order.to(), "to")
                .that(
                        order.from() == null
                                || order.to() == null
                                || order.from().isBefore(order.to()),
                        "to",
                        "must be after from, " + order.from() + ", but is " + order.to())
                .refuseIfWrong();
        if (!one.tryAcquire()) {
            throw Refusal.wrongState(
                    null,
                    "another rehearsal is under way, and one takes all the service can spare",
                    "Try again when it is done, within a minute.");
        }
        try {
            return new Run(order).run();
        } finally {
            one.release();
        }
    }

    /** One rehearsal. */
    private final class Run {
        private final LimitRehearsal.Order order;
        private final List<LimitRehearsal.Change> changes = new ArrayList<>();
        private final List<LimitRehearsal.NotJudged> notJudged = new ArrayList<>();
        /** What the references of a time say together: as the docks had them. */
        private final Map<List<PointReference>, List<PointReference>> shared = new HashMap<>();

        Run(LimitRehearsal.Order order) {
            this.order = order;
        }

        LimitRehearsal run() {
            long end = System.nanoTime() + LONGEST.toNanos();
            List<UUID> ids = checkIns.finished(order.from(), order.to(), MOST_CHECK_INS + 1);
            ModelBook book = models.book();
            List<Models.Revision> revisions = models.revisions(order.to());
            Priors priors = learning.inForce();
            int looked = 0;
            while (looked < Math.min(ids.size(), MOST_CHECK_INS) && (looked == 0 || System.nanoTime() < end)) {
                List<UUID> page = ids.subList(looked, Math.min(Math.min(ids.size(), MOST_CHECK_INS), looked + PAGE));
                List<Rehearsed> read = transactions.read(
                        () -> page.stream().map(id -> read(id, book, revisions)).toList());
                read.parallelStream()
                        .map(r -> r.under(order.draft(), book, priors))
                        .toList()
                        .forEach(this::take);
                looked += page.size();
            }
            Instant goOnFrom =
                    looked < ids.size() ? checkIns.find(ids.get(looked)).finishedAt() : null;
            int left = goOnFrom == null ? 0 : checkIns.count(order.from(), order.to()) - looked;
            return result(looked, left, goOnFrom);
        }

        private Rehearsed read(UUID id, ModelBook book, List<Models.Revision> revisions) {
            CheckInBody checkIn = checkIns.find(id);
            return new Rehearsed(
                    checkIn,
                    book.cabinetModel(checkIn.modelCode()),
                    models.limits(checkIn.limitsVersion()),
                    shared.computeIfAbsent(Rehearsed.inForce(revisions, checkIn.startedAt()), SharedScatter::over),
                    commissionings.inForce(checkIn.tag(), checkIn.startedAt()));
        }

        private void take(Rehearsed.Outcome outcome) {
            if (outcome.change() != null) {
                changes.add(outcome.change());
            }
            if (outcome.notJudged() != null) {
                notJudged.add(outcome.notJudged());
            }
        }

        private LimitRehearsal result(int looked, int left, Instant goOnFrom) {
            LimitSet draft = order.draft();
            return new LimitRehearsal(
                    draft,
                    order.from(),
                    order.to(),
                    looked,
                    left,
                    goOnFrom,
                    looked - changes.size() - notJudged.size(),
                    count(Verdict.PASS, Verdict.FAIL),
                    count(Verdict.FAIL, Verdict.PASS),
                    count(null, Verdict.SWEEP_AGAIN),
                    count(Verdict.SWEEP_AGAIN, null),
                    watch(true),
                    watch(false),
                    changes,
                    notJudged);
        }

        private int count(Verdict before, Verdict after) {
            return (int) changes.stream()
                    .filter(c -> c.before() != c.after())
                    .filter(c -> before == null || c.before() == before)
                    .filter(c -> after == null || c.after() == after)
                    .count();
        }

        private int watch(boolean added) {
            return (int) changes.stream()
                    .filter(c -> c.before() == Verdict.PASS && Objects.equals(c.before(), c.after()))
                    .filter(c -> c.watchAfter() == added)
                    .count();
        }
    }
}
