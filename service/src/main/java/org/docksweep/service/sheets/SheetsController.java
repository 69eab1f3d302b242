package org.docksweep.service.sheets;

import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.FleetStatus;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

@RestController
class SheetsController {
    private final Sheets sheets;

    SheetsController(Sheets sheets) {
        this.sheets = sheets;
    }

    @GetMapping(path = ApiPaths.FLEET_STATUS, produces = MediaType.APPLICATION_JSON_VALUE)
    FleetStatus fleetStatus() {
        return sheets.fleetStatus();
    }
}
