package org.docksweep.service.histories;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.JobEvidence;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Verdict;
import org.docksweep.service.bench.BenchFiles;
import org.docksweep.service.cabinets.Fittings;
import org.docksweep.service.checkins.CheckIns;
import org.docksweep.service.commissionings.Commissionings;
import org.docksweep.service.models.Models;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Puts together what a dispute about a repair needs. */
@Service
@Transactional(readOnly = true)
public class Evidence {
    private static final int MOST_EVENTS = 1000;

    private final BenchFiles benchFiles;
    private final CheckIns checkIns;
    private final Commissionings commissionings;
    private final Fittings fittings;
    private final LastOrders lastOrders;
    private final Models models;

    Evidence(
            BenchFiles benchFiles,
            CheckIns checkIns,
            Commissionings commissionings,
            Fittings fittings,
            LastOrders lastOrders,
            Models models) {
        this.benchFiles = benchFiles;
        this.checkIns = checkIns;
        this.commissionings = commissionings;
        this.fittings = fittings;
        this.lastOrders = lastOrders;
        this.models = models;
    }

    /**
     * The evidence of a job.
     *
     * @param code any code printed for it
     * @return what was measured before, at the failure, and after
     * @throws Refusal if there is no such job
     */
    public JobEvidence of(JobCode code) {
        BenchJobFile file = benchFiles.of(code);
        AssetTag tag = file.job().tag();
        Instant opened = file.job().openedAt();
        CabinetModel model = models.cabinetModel(file.job().modelCode(), "code");
        Set<String> drivers =
                model.positions().stream().map(DriverPosition::driverModelCode).collect(Collectors.toSet());
        CheckInBody lastPass = checkIns.headers(List.of(tag)).stream()
                .filter(h -> h.verdict() == Verdict.PASS && h.finishedAt().isBefore(opened))
                .findFirst()
                .map(h -> checkIns.find(h.id()))
                .orElse(null);
        return new JobEvidence(
                file,
                model,
                models.book().driverModels().stream()
                        .filter(d -> drivers.contains(d.code()))
                        .toList(),
                lastPass,
                commissionings.before(tag, opened),
                checkIns.find(file.job().checkInIds().get(0)),
                lastOrders.of(tag, fittings.events(tag, MOST_EVENTS), opened),
                models.references().stream()
                        .filter(r -> r.cabinetModelCode().equals(model.code()))
                        .toList());
    }
}
