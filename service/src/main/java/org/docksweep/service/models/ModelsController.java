package org.docksweep.service.models;

import jakarta.annotation.security.RolesAllowed;
import java.security.Principal;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.LessonBody;
import org.docksweep.contract.TaughtPoint;
import org.docksweep.fleet.ModelBook;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.service.store.Transactions;
import org.docksweep.service.web.Refusal;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class ModelsController {
    private final Models models;
    private final Transactions transactions;

    ModelsController(Models models, Transactions transactions) {
        this.models = models;
        this.transactions = transactions;
    }

    @GetMapping(ApiPaths.MODEL_BOOK)
    ModelBook book() {
        return models.book();
    }

    @RolesAllowed("MANAGER")
    @PutMapping(ApiPaths.MODEL_BOOK)
    ResponseEntity<ModelBook> merge(@RequestBody ModelBook book) {
        return transactions.write(() -> models.merge(book)).response();
    }

    @GetMapping(ApiPaths.REFERENCES)
    List<PointReference> references() {
        return models.references();
    }

    @GetMapping(ApiPaths.REFERENCES + "/{model}/{testPoint}")
    PointReference reference(@PathVariable String model, @PathVariable String testPoint) {
        return models.reference(model, testPoint);
    }

    @RolesAllowed("MANAGER")
    @PutMapping(ApiPaths.REFERENCES + "/{model}/{testPoint}")
    ResponseEntity<PointReference> put(
            @PathVariable String model,
            @PathVariable String testPoint,
            @RequestBody PointReference reference,
            Principal principal) {
        return transactions
                .write(() -> models.put(model, testPoint, reference, principal.getName()))
                .response();
    }

    @GetMapping(ApiPaths.LIMITS)
    LimitSet limits() {
        return models.limits();
    }

    @GetMapping(ApiPaths.LIMITS + "/{version}")
    LimitSet limits(@PathVariable int version) {
        return models.limits(version)
                .orElseThrow(() -> Refusal.notFound(
                        "version",
                        "there are no limits of version " + version,
                        "The version in force is " + models.limits().version() + "."));
    }

    @RolesAllowed("MANAGER")
    @PutMapping(ApiPaths.LIMITS + "/{version}")
    ResponseEntity<LimitSet> put(@PathVariable int version, @RequestBody LimitSet limits) {
        return transactions.write(() -> models.put(version, limits)).response();
    }

    @GetMapping(ApiPaths.LESSONS)
    List<TaughtPoint> taught() {
        return models.taught();
    }

    @RolesAllowed("MANAGER")
    @PutMapping(ApiPaths.LESSONS + "/{model}")
    ResponseEntity<List<TaughtPoint>> teach(
            @PathVariable String model, @RequestBody LessonBody lesson, Principal principal) {
        return transactions
                .write(() -> models.teach(model, lesson, principal.getName()))
                .response();
    }
}
