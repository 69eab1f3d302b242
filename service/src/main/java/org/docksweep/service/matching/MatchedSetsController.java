package org.docksweep.service.matching;

import jakarta.annotation.security.RolesAllowed;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.MatchedSet;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class MatchedSetsController {
    private final MatchedSets sets;

    MatchedSetsController(MatchedSets sets) {
        this.sets = sets;
    }

    @GetMapping(ApiPaths.MATCHED_SETS)
    MatchedSet choose(@RequestParam String model, @RequestParam(defaultValue = "2") int count) {
        return sets.choose(model, count);
    }
}
