package org.docksweep.service.procedures;

import jakarta.annotation.security.RolesAllowed;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.ProcedureCard;
import org.docksweep.fleet.ProcedurePurpose;
import org.docksweep.service.store.Transactions;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class ProceduresController {
    private final Procedures procedures;
    private final Transactions transactions;

    ProceduresController(Procedures procedures, Transactions transactions) {
        this.procedures = procedures;
        this.transactions = transactions;
    }

    @GetMapping(path = ApiPaths.PROCEDURES + "/{purpose}", produces = MediaType.APPLICATION_JSON_VALUE)
    ProcedureCard generic(@PathVariable ProcedurePurpose purpose) {
        return procedures.card(purpose, null);
    }

    @GetMapping(path = ApiPaths.PROCEDURES + "/{purpose}/{driverModel}", produces = MediaType.APPLICATION_JSON_VALUE)
    ProcedureCard card(@PathVariable ProcedurePurpose purpose, @PathVariable String driverModel) {
        return procedures.card(purpose, driverModel);
    }

    @GetMapping(ApiPaths.DRIVER_BENCH_DATA)
    List<DriverBenchData> all() {
        return procedures.all();
    }

    @GetMapping(ApiPaths.DRIVER_BENCH_DATA + "/{driverModel}")
    DriverBenchData find(@PathVariable String driverModel) {
        return procedures.find(driverModel);
    }

    @RolesAllowed("MANAGER")
    @PutMapping(ApiPaths.DRIVER_BENCH_DATA + "/{driverModel}")
    ResponseEntity<DriverBenchData> put(@PathVariable String driverModel, @RequestBody DriverBenchData data) {
        return transactions.write(() -> procedures.put(driverModel, data)).response();
    }
}
