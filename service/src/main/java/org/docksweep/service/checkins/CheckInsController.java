package org.docksweep.service.checkins;

import jakarta.annotation.security.RolesAllowed;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.CheckInReceipt;
import org.docksweep.service.store.Transactions;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class CheckInsController {
    private final CheckIns checkIns;
    private final Transactions transactions;

    CheckInsController(CheckIns checkIns, Transactions transactions) {
        this.checkIns = checkIns;
        this.transactions = transactions;
    }

    /** Answers only when the check-in would survive a power cut. */
    @PutMapping(ApiPaths.CHECK_INS + "/{id}")
    ResponseEntity<CheckInReceipt> put(@PathVariable UUID id, @RequestBody CheckInBody body) {
        return transactions.write(() -> checkIns.put(id, body)).response();
    }

    @GetMapping(ApiPaths.CHECK_INS + "/{id}")
    CheckInBody find(@PathVariable UUID id) {
        return checkIns.find(id);
    }
}
