package org.docksweep.service.dispatches;

import jakarta.annotation.security.RolesAllowed;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.Dispatch;
import org.docksweep.contract.Page;
import org.docksweep.service.store.Transactions;
import org.docksweep.service.web.Paging;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class DispatchesController {
    private final Dispatches dispatches;
    private final Transactions transactions;

    DispatchesController(Dispatches dispatches, Transactions transactions) {
        this.dispatches = dispatches;
        this.transactions = transactions;
    }

    @GetMapping(ApiPaths.DISPATCHES)
    Page<Dispatch> page(
            @RequestParam(required = false) UUID after, @RequestParam(defaultValue = Paging.DEFAULT_LIMIT) int limit) {
        return dispatches.page(after, limit);
    }

    @GetMapping(ApiPaths.DISPATCHES + "/{id}")
    Dispatch find(@PathVariable UUID id) {
        return dispatches.find(id);
    }

    @RolesAllowed("MANAGER")
    @PutMapping(ApiPaths.DISPATCHES + "/{id}")
    ResponseEntity<Dispatch> put(@PathVariable UUID id, @RequestBody Dispatch dispatch) {
        return transactions.write(() -> dispatches.put(id, dispatch)).response();
    }
}
