package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.FleetStatus;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The fleet status of some models, in each of its forms. */
@ExtendWith(RunningService.class)
class FleetStatusTest {
    private final Api api;
    private final String wanted;
    private final String other;
    private AssetTag failed;

    FleetStatusTest(Api api) {
        this.api = api;
        this.wanted = House.newModel(api);
        this.other = House.newModel(api);
    }

    @BeforeEach
    void fill() {
        failed = House.newCabinet(api, wanted, CabinetStatus.OUT);
        House.newCabinet(api, wanted, CabinetStatus.READY);
        House.newCabinet(api, other, CabinetStatus.READY);
        assertThat(House.put(api, House.fail(failed, wanted, House.newCode())).status())
                .isEqualTo(201);
    }

    @Test
    void keepsToTheModelsAskedFor() {
        FleetStatus status = api.get(ApiPaths.FLEET_STATUS + "?model=" + wanted).as(FleetStatus.class);

        assertThat(status.models())
                .containsExactly(
                        new FleetStatus.ModelRow(wanted, status.models().get(0).modelName(), 1, 0, 1, 0, 0, 0));
        assertThat(status.benchQueue())
                .singleElement()
                .satisfies(job -> assertThat(job.tag()).isEqualTo(failed));
        assertThat(status.faults())
                .extracting(FleetStatus.FaultRow::driverModelCode)
                .isSubsetOf("DUNE-12", "REED-1");
        assertThat(api.get(ApiPaths.FLEET_STATUS + "?model=" + wanted + "&model=" + other)
                        .as(FleetStatus.class)
                        .models())
                .extracting(FleetStatus.ModelRow::modelCode)
                .containsExactlyInAnyOrder(wanted, other);
    }

    @Test
    void givesTheSameAsTablesAndOnPaper() {
        String models = api.get(ApiPaths.FLEET_STATUS + "?model=" + wanted, "Accept", "text/csv")
                .text();
        String[] lines = models.split("\r\n");
        assertThat(lines).hasSize(2).startsWith("model,name,ready,out,bench,safety_hold,manual_hold,missing");
        assertThat(lines[1]).startsWith(wanted + ",").endsWith(",1,0,1,0,0,0");
        assertThat(api.get(ApiPaths.FLEET_STATUS + "?part=BENCH&model=" + wanted, "Accept", "text/csv")
                        .text()
                        .split("\r\n")[1])
                .contains(failed.value(), wanted, "WAITING");

        Api.Answer paper = api.get(ApiPaths.FLEET_STATUS + "?model=" + wanted, "Accept", "application/pdf");
        assertThat(paper.status()).isEqualTo(200);
        assertThat(paper.text()).startsWith("%PDF");
    }

    @Test
    void refusesAModelNobodyKnows() {
        Api.Answer answer = api.get(ApiPaths.FLEET_STATUS + "?model=NOBODY");
        assertThat(answer.problem().status()).isEqualTo(400);
        assertThat(answer.problem().field()).isEqualTo("model");
    }
}
