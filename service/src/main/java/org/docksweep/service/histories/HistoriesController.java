package org.docksweep.service.histories;

import jakarta.annotation.security.RolesAllowed;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.JobEvidence;
import org.docksweep.contract.PartLife;
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.web.Refusal;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class HistoriesController {
    private final Timelines timelines;
    private final PartLives lives;
    private final Evidence evidence;

    HistoriesController(Timelines timelines, PartLives lives, Evidence evidence) {
        this.timelines = timelines;
        this.lives = lives;
        this.evidence = evidence;
    }

    @GetMapping(ApiPaths.TIMELINES)
    Timeline timeline(
            @RequestParam(required = false) AssetTag tag,
            @RequestParam(required = false) String position,
            @RequestParam(required = false) String driverModel,
            @RequestParam(required = false) String driverSerial,
            @RequestParam(required = false) String diaphragmSerial) {
        if (tag != null && driverModel == null) {
            return timelines.ofCabinet(tag, position);
        }
        if (tag == null && driverModel != null && (driverSerial == null) != (diaphragmSerial == null)) {
            return driverSerial != null
                    ? timelines.ofDriver(driverModel, driverSerial)
                    : timelines.ofDiaphragm(driverModel, diaphragmSerial);
        }
        throw Refusal.badField(
                "tag",
                "say whose timeline: a cabinet (tag), a position (tag, position), a driver (driverModel, driverSerial)"
                        + " or a diaphragm (driverModel, diaphragmSerial)",
                "Give one of these, and nothing else.");
    }

    @GetMapping(ApiPaths.PART_LIVES)
    List<PartLife> lives(@RequestParam(required = false) String driverModel) {
        return lives.all(driverModel);
    }

    @GetMapping(path = ApiPaths.BENCH_JOBS + "/{code}" + ApiPaths.EVIDENCE, produces = MediaType.APPLICATION_JSON_VALUE)
    JobEvidence evidence(@PathVariable JobCode code) {
        return evidence.of(code);
    }
}
