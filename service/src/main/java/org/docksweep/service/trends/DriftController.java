package org.docksweep.service.trends;

import jakarta.annotation.security.RolesAllowed;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.DriftRow;
import org.docksweep.fleet.AssetTag;
import org.docksweep.service.models.Models;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The watch list, and all trends of one cabinet. */
@RestController
@RolesAllowed("DOCK")
class DriftController {
    private final Trends trends;
    private final Models models;

    DriftController(Trends trends, Models models) {
        this.trends = trends;
        this.models = models;
    }

    @GetMapping(ApiPaths.DRIFT_WATCH)
    List<DriftRow> watchList(@RequestParam(required = false) List<String> model) {
        if (model == null) {
            return trends.watchList();
        }
        models.driversOf(model, "model");
        return trends.watchList().stream()
                .filter(row -> model.contains(row.modelCode()))
                .toList();
    }

    @GetMapping(ApiPaths.DRIFT_WATCH + "/{tag}")
    List<DriftRow> of(@PathVariable AssetTag tag) {
        return trends.of(tag);
    }
}
