package org.docksweep.service.bench;

import jakarta.annotation.security.RolesAllowed;
import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchActionBody;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.Page;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.contract.SpareRepairBody;
import org.docksweep.contract.StepTickBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Part;
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
class BenchController {
    private static final String JOB = ApiPaths.BENCH_JOBS + "/{code}";
    private static final String ID = "/{id}";

    private final Bench bench;
    private final BenchFiles files;
    private final BenchWork work;
    private final SpareRepairs spareRepairs;
    private final Transactions transactions;

    BenchController(
            Bench bench, BenchFiles files, BenchWork work, SpareRepairs spareRepairs, Transactions transactions) {
        this.bench = bench;
        this.files = files;
        this.work = work;
        this.spareRepairs = spareRepairs;
        this.transactions = transactions;
    }

    @GetMapping(ApiPaths.BENCH_JOBS)
    Page<BenchJobBody> page(
            @RequestParam(required = false) AssetTag tag,
            @RequestParam(required = false) List<String> model,
            @RequestParam(defaultValue = "") String after,
            @RequestParam(defaultValue = Paging.DEFAULT_LIMIT) int limit) {
        return bench.page(tag, model, after, limit);
    }

    @GetMapping(JOB)
    BenchJobBody find(@PathVariable JobCode code) {
        return bench.find(code);
    }

    @GetMapping(JOB + ApiPaths.FILE)
    BenchJobFile file(@PathVariable JobCode code) {
        return transactions.read(() -> files.of(code));
    }

    @RolesAllowed("BENCH")
    @PutMapping(JOB + ApiPaths.ACTIONS + ID)
    ResponseEntity<BenchJobBody> act(
            @PathVariable JobCode code,
            @PathVariable UUID id,
            @RequestBody BenchActionBody body,
            HttpServletRequest request) {
        return transactions
                .write(() -> work.act(code, id, body, sender(request)))
                .response();
    }

    @RolesAllowed("BENCH")
    @PutMapping(JOB + ApiPaths.FINDINGS + ID)
    ResponseEntity<BenchJobBody> find(
            @PathVariable JobCode code,
            @PathVariable UUID id,
            @RequestBody FindingBody body,
            HttpServletRequest request) {
        return transactions
                .write(() -> work.find(code, id, body, sender(request)))
                .response();
    }

    @RolesAllowed("BENCH")
    @PutMapping(JOB + ApiPaths.EXCHANGES + ID)
    ResponseEntity<BenchJobBody> exchange(
            @PathVariable JobCode code,
            @PathVariable UUID id,
            @RequestBody PartExchangeBody body,
            HttpServletRequest request) {
        return transactions
                .write(() -> work.exchange(code, id, body, sender(request)))
                .response();
    }

    @RolesAllowed("BENCH")
    @PutMapping(JOB + ApiPaths.TICKS + ID)
    ResponseEntity<BenchJobBody> tick(
            @PathVariable JobCode code,
            @PathVariable UUID id,
            @RequestBody StepTickBody body,
            HttpServletRequest request) {
        return transactions
                .write(() -> work.tick(code, id, body, sender(request)))
                .response();
    }

    @RolesAllowed("BENCH")
    @PutMapping(JOB + ApiPaths.PROOFS + ID)
    ResponseEntity<BenchJobBody> prove(
            @PathVariable JobCode code,
            @PathVariable UUID id,
            @RequestBody ProofSweepBody body,
            HttpServletRequest request) {
        return transactions
                .write(() -> work.prove(code, id, body, sender(request)))
                .response();
    }

    @RolesAllowed("BENCH")
    @PutMapping(ApiPaths.SPARE_REPAIRS + ID)
    ResponseEntity<Part> repairSpare(
            @PathVariable UUID id, @RequestBody SpareRepairBody body, HttpServletRequest request) {
        return transactions
                .write(() -> spareRepairs.put(id, body, sender(request).tokenName()))
                .response();
    }

    private static JobRecord.Sender sender(HttpServletRequest request) {
        return new JobRecord.Sender(request.getUserPrincipal().getName(), request.isUserInRole("MANAGER"));
    }
}
