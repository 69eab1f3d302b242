package org.docksweep.service.commissionings;

import jakarta.annotation.security.RolesAllowed;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CommissioningBody;
import org.docksweep.service.store.Transactions;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class CommissioningsController {
    private final Commissionings commissionings;
    private final Transactions transactions;

    CommissioningsController(Commissionings commissionings, Transactions transactions) {
        this.commissionings = commissionings;
        this.transactions = transactions;
    }

    @PutMapping(ApiPaths.COMMISSIONINGS + "/{id}")
    ResponseEntity<CommissioningBody> put(@PathVariable UUID id, @RequestBody CommissioningBody body) {
        return transactions.write(() -> commissionings.put(id, body)).response();
    }

    @GetMapping(ApiPaths.COMMISSIONINGS + "/{id}")
    CommissioningBody find(@PathVariable UUID id) {
        return commissionings.find(id);
    }
}
