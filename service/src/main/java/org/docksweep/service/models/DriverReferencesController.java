package org.docksweep.service.models;

import jakarta.annotation.security.RolesAllowed;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.gate.PointReference;
import org.docksweep.service.store.Transactions;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class DriverReferencesController {
    private final DriverReferences references;
    private final Transactions transactions;

    DriverReferencesController(DriverReferences references, Transactions transactions) {
        this.references = references;
        this.transactions = transactions;
    }

    @GetMapping(ApiPaths.DRIVER_REFERENCES)
    List<PointReference> all() {
        return references.all();
    }

    @GetMapping(ApiPaths.DRIVER_REFERENCES + "/{driverModel}")
    PointReference find(@PathVariable String driverModel) {
        return references.find(driverModel);
    }

    @RolesAllowed("MANAGER")
    @PutMapping(ApiPaths.DRIVER_REFERENCES + "/{driverModel}")
    ResponseEntity<PointReference> put(@PathVariable String driverModel, @RequestBody PointReference reference) {
        return transactions.write(() -> references.put(driverModel, reference)).response();
    }
}
