package org.docksweep.service.learning;

import jakarta.annotation.security.RolesAllowed;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.DockConfusion;
import org.docksweep.contract.LearnedPriors;
import org.docksweep.contract.LearningDecision;
import org.docksweep.service.store.Transactions;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class LearningController {
    private final Learning learning;
    private final Decisions decisions;
    private final Transactions transactions;

    LearningController(Learning learning, Decisions decisions, Transactions transactions) {
        this.learning = learning;
        this.decisions = decisions;
        this.transactions = transactions;
    }

    @GetMapping(ApiPaths.LEARNED_PRIORS)
    LearnedPriors learned() {
        return learning.learned();
    }

    @GetMapping(ApiPaths.DOCK_CONFUSION)
    DockConfusion confusion() {
        return learning.confusion();
    }

    @GetMapping(ApiPaths.LEARNING_DECISIONS)
    List<LearningDecision> decisions() {
        return decisions.newestFirst();
    }

    @RolesAllowed("MANAGER")
    @PutMapping(ApiPaths.LEARNING_DECISIONS + "/{id}")
    ResponseEntity<LearningDecision> decide(@PathVariable UUID id, @RequestBody LearningDecision body) {
        return transactions.write(() -> decisions.put(id, body)).response();
    }
}
