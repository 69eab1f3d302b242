package org.docksweep.service.bench;

import jakarta.annotation.security.RolesAllowed;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.Page;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.web.Paging;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class BenchController {
    private final Bench bench;

    BenchController(Bench bench) {
        this.bench = bench;
    }

    @GetMapping(ApiPaths.BENCH_JOBS)
    Page<BenchJobBody> page(
            @RequestParam(defaultValue = "") String after,
            @RequestParam(defaultValue = Paging.DEFAULT_LIMIT) int limit) {
        return bench.page(after, limit);
    }

    @GetMapping(ApiPaths.BENCH_JOBS + "/{code}")
    BenchJobBody find(@PathVariable JobCode code) {
        return bench.find(code);
    }
}
