package org.docksweep.service.learning;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.LearningDecision;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What managers decided about learning; the newest decision about a thing holds. */
@Service
@Transactional
class Decisions {
    private final DecisionRows rows;
    private final Repairs repairs;
    private final Fleet fleet;

    Decisions(DecisionRows rows, Repairs repairs, Fleet fleet) {
        this.rows = rows;
        this.repairs = repairs;
        this.fleet = fleet;
    }

    PutAnswer<LearningDecision> put(UUID id, LearningDecision sent) {
        LearningDecision body = checked(id, sent);
        var before = rows.findById(id);
        if (before.isPresent()) {
            if (!before.get().says(body)) {
                throw Refusal.idReused(
                        "decision " + id + " is on record already and says something else",
                        "Decisions are never changed: send another one under a new id.");
            }
            return new PutAnswer<>(false, before.get().decision());
        }
        if (body.findingId() != null && repairs.all().stream().noneMatch(r -> r.id().equals(body.findingId()))) {
            throw Refusal.notFound(
                    "findingId",
                    "there is no finding " + body.findingId() + " to learn from",
                    "Take an id of GET /api/learned-priors.");
        }
        rows.saveAndFlush(new DecisionRow(body));
        return new PutAnswer<>(true, body);
    }

    private LearningDecision checked(UUID id, LearningDecision body) {
        boolean single = body.kind() == LearningDecision.Kind.LEAVE_OUT || body.kind() == LearningDecision.Kind.TAKE_IN;
        new Check()
                .that(id.equals(body.id()), "id", "must be " + id + " as in the address, but is " + body.id())
                .present(body.at(), "at")
                .that(
                        body.at() == null || !body.at().isAfter(fleet.now()),
                        "at",
                        "must not be in the future, but is " + body.at())
                .text(body.by(), 120, "by")
                .present(body.kind(), "kind")
                .text(body.why(), 1_000, "why")
                .that(
                        body.kind() == null || single == (body.findingId() != null),
                        "findingId",
                        single
                                ? "is missing; " + body.kind() + " is about one finding"
                                : "must be empty; " + body.kind() + " is about all learning")
                .refuseIfWrong();
        return new LearningDecision(
                id, StoredJson.cut(body.at()), body.by(), body.kind(), body.findingId(), body.why());
    }

    @Transactional(readOnly = true)
    List<LearningDecision> newestFirst() {
        return rows.findAllByOrderByDecidedAtDescIdDesc().stream()
                .map(DecisionRow::decision)
                .toList();
    }

    /** Whether the gate uses what was learned; it does until somebody says otherwise. */
    static boolean used(List<LearningDecision> newestFirst) {
        return newestFirst.stream()
                .filter(d -> d.findingId() == null)
                .findFirst()
                .map(d -> d.kind() == LearningDecision.Kind.USE)
                .orElse(true);
    }

    static Set<UUID> leftOut(List<LearningDecision> newestFirst) {
        Set<UUID> decided = new HashSet<>();
        Set<UUID> leftOut = new HashSet<>();
        for (LearningDecision decision : newestFirst) {
            if (decision.findingId() != null && decided.add(decision.findingId())) {
                if (decision.kind() == LearningDecision.Kind.LEAVE_OUT) {
                    leftOut.add(decision.findingId());
                }
            }
        }
        return leftOut;
    }
}
