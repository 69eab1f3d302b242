package org.docksweep.service.limits;

import jakarta.annotation.security.RolesAllowed;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.LimitRehearsal;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("MANAGER")
class LimitRehearsalsController {
    private final LimitRehearsals rehearsals;

    LimitRehearsalsController(LimitRehearsals rehearsals) {
        this.rehearsals = rehearsals;
    }

    @PostMapping(path = ApiPaths.LIMIT_REHEARSALS, produces = MediaType.APPLICATION_JSON_VALUE)
    LimitRehearsal rehearse(@RequestBody LimitRehearsal.Order order) {
        return rehearsals.rehearse(order);
    }

    @PostMapping(path = ApiPaths.LIMIT_REHEARSALS, produces = "text/csv")
    String csv(@RequestBody LimitRehearsal.Order order) {
        return LimitRehearsalCsv.of(rehearsals.rehearse(order));
    }
}
