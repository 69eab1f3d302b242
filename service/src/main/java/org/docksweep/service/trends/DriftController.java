package org.docksweep.service.trends;

import jakarta.annotation.security.RolesAllowed;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.DriftRow;
import org.docksweep.fleet.AssetTag;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** The watch list, and all trends of one cabinet. */
@RestController
@RolesAllowed("DOCK")
class DriftController {
    private final Trends trends;

    DriftController(Trends trends) {
        this.trends = trends;
    }

    @GetMapping(ApiPaths.DRIFT_WATCH)
    List<DriftRow> watchList() {
        return trends.watchList();
    }

    @GetMapping(ApiPaths.DRIFT_WATCH + "/{tag}")
    List<DriftRow> of(@PathVariable AssetTag tag) {
        return trends.of(tag);
    }
}
