package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.DriftRow;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.OrderList;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.PartSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The fleet status and the other sheets of some models, in each of their forms. */
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
    void drawsTheTablesAskedForOnly() {
        String sheet = ApiPaths.FLEET_STATUS + "?model=" + wanted;
        Api.Answer bench = api.get(sheet + "&part=BENCH", "Accept", "application/pdf");
        Api.Answer all = api.get(sheet, "Accept", "application/pdf");

        assertThat(bench.text()).startsWith("%PDF");
        assertThat(bench.response().body().length).isLessThan(all.response().body().length);
        assertThat(api.get(sheet + "&part=NOTHING", "Accept", "application/pdf").status())
                .isEqualTo(400);
    }

    @Test
    void keepsHowAnOrderCameBackToTheModelsAskedFor() {
        AssetTag missing = House.newCabinet(api, other, CabinetStatus.OUT);
        AssetTag back = House.newCabinet(api, wanted, CabinetStatus.OUT);
        ReturnList list = new ReturnList(
                UUID.randomUUID(),
                "A-" + House.next(),
                "Harbour Players",
                LocalDate.of(2026, 3, 14),
                false,
                List.of(new ReturnList.Line(missing, other), new ReturnList.Line(back, wanted)));
        assertThat(api.put(ApiPaths.RETURN_LISTS + "/" + list.id(), list).status())
                .isEqualTo(201);
        assertThat(House.put(api, House.pass(back, wanted)).status()).isEqualTo(201);
        String report = ApiPaths.RETURN_LISTS + "/" + list.id() + ApiPaths.REPORT;

        ReturnReport whole = api.get(report).as(ReturnReport.class);
        assertThat(whole.back()).extracting(ReturnReport.Row::tag).containsExactly(back);
        assertThat(whole.missing()).extracting(ReturnList.Line::tag).containsExactly(missing);
        ReturnReport some = api.get(report + "?model=" + other).as(ReturnReport.class);
        assertThat(some.back()).isEmpty();
        assertThat(some.missing()).isEqualTo(whole.missing());
        assertThat(some.list().lines()).isEqualTo(whole.missing());

        String[] lines = api.get(report + "?model=" + wanted + "&model=" + other, "Accept", "text/csv")
                .text()
                .split("\r\n");
        assertThat(lines).hasSize(3);
        assertThat(lines[0]).isEqualTo("tag,model,came,checked_in_at,verdict,route,watch,job");
        assertThat(lines[1]).startsWith(back + "," + wanted + ",BACK,").endsWith(",PASS,SHELF,false,");
        assertThat(lines[2]).isEqualTo(missing + "," + other + ",MISSING,,,,,");
        assertThat(api.get(report + "?model=" + other, "Accept", "application/pdf")
                        .text())
                .startsWith("%PDF");
        assertThat(api.get(report + "?model=NOBODY").problem().field()).isEqualTo("model");
    }

    @Test
    void keepsWhatIsToBeOrderedToTheModelsAskedFor() {
        String number = "SEAL-" + House.next();
        Part seal = new Part(
                number,
                "=gasket",
                PartKind.SEAL,
                PartSource.ORIGINAL,
                List.of(),
                List.of(wanted),
                null,
                null,
                false,
                2,
                5,
                null);
        assertThat(api.put(ApiPaths.PARTS + "/" + number, seal).status()).isEqualTo(201);

        assertThat(api.get(ApiPaths.PART_ORDERS).as(OrderList.class).rows())
                .extracting(OrderList.Row::partNumber)
                .contains(number);
        assertThat(api.get(ApiPaths.PART_ORDERS + "?model=" + wanted)
                        .as(OrderList.class)
                        .rows())
                .extracting(OrderList.Row::partNumber)
                .contains(number);
        assertThat(api.get(ApiPaths.PART_ORDERS + "?model=" + other)
                        .as(OrderList.class)
                        .rows())
                .extracting(OrderList.Row::partNumber)
                .doesNotContain(number);
        assertThat(api.get(ApiPaths.PART_ORDERS + "?model=" + wanted, "Accept", "text/csv")
                        .text())
                .startsWith("part,name,source,in_stock,reorder_level,quantity,unit_cost_cents,waiting_jobs\r\n")
                .contains(number + ",'=gasket,ORIGINAL,0,2,5,,\r\n");
        assertThat(api.get(ApiPaths.PART_ORDERS + "?model=" + wanted, "Accept", "application/pdf")
                        .text())
                .startsWith("%PDF");
    }

    @Test
    void keepsBenchAndWatchListToTheModelsAskedFor() {
        assertThat(api.get(ApiPaths.BENCH_JOBS + "?model=" + wanted).text()).contains(failed.value());
        assertThat(api.get(ApiPaths.BENCH_JOBS + "?model=" + other).text()).doesNotContain(failed.value());
        assertThat(api.get(ApiPaths.DRIFT_WATCH + "?model=" + wanted).as(DriftRow[].class))
                .isEmpty();
        for (String path : List.of(ApiPaths.BENCH_JOBS, ApiPaths.DRIFT_WATCH, ApiPaths.PART_ORDERS)) {
            assertThat(api.get(path + "?model=NOBODY").problem().field()).isEqualTo("model");
        }
    }

    @Test
    void refusesAModelNobodyKnows() {
        Api.Answer answer = api.get(ApiPaths.FLEET_STATUS + "?model=NOBODY");
        assertThat(answer.problem().status()).isEqualTo(400);
        assertThat(answer.problem().field()).isEqualTo("model");
    }
}
