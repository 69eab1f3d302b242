package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.Dispatch;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.NeedDates;
import org.docksweep.contract.Page;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.JobCode;
import org.docksweep.suspect.FaultKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.node.ObjectNode;

@ExtendWith(RunningService.class)
class BenchTest {
    private final Api api;

    BenchTest(Api api) {
        this.api = api;
    }

    private JobCode failOne(String model) {
        CheckInBody body = House.fail(House.newCabinet(api, model, CabinetStatus.OUT), model, House.newCode());
        Api.Answer answer = House.put(api, body);
        assertThat(answer.status()).as("%s", answer).isEqualTo(201);
        return body.jobCode();
    }

    private List<BenchJobBody> queue(int limit) {
        List<BenchJobBody> queue = new ArrayList<>();
        String after = "";
        do {
            Page<BenchJobBody> page = api.get(ApiPaths.BENCH_JOBS + "?limit=" + limit + "&after=" + after)
                    .as(new TypeReference<Page<BenchJobBody>>() {});
            queue.addAll(page.items());
            after = page.next();
        } while (after != null);
        return queue;
    }

    private static Dispatch booking(String model, int count) {
        // The service runs on the real clock: far enough ahead not to become yesterday during the test.
        LocalDate out = LocalDate.now(ZoneOffset.UTC).plusDays(3);
        return new Dispatch(
                UUID.randomUUID(),
                "D-" + House.next(),
                "Dune Festival",
                out,
                out.plusDays(2),
                List.of(new Dispatch.Line(model, count)));
    }

    @Test
    void queuesByNeedDateThenAge() {
        String booked = House.newModel(api);
        String idle = House.newModel(api);
        JobCode notNeeded = failOne(idle);
        JobCode needed = failOne(booked);
        Dispatch dispatch = booking(booked, 1);
        assertThat(api.put(ApiPaths.DISPATCHES + "/" + dispatch.id(), dispatch).status())
                .isEqualTo(201);

        List<BenchJobBody> queue = queue(2);

        assertThat(queue)
                .extracting(BenchJobBody::code)
                .containsSubsequence(needed, notNeeded)
                .doesNotHaveDuplicates();
        assertThat(queue)
                .filteredOn(j -> j.code().equals(needed))
                .singleElement()
                .satisfies(j -> {
                    assertThat(j.needOn()).isEqualTo(dispatch.outOn());
                    assertThat(j.state()).isEqualTo(BenchJobBody.State.WAITING);
                    assertThat(j.faultPositionCode()).isEqualTo("HF");
                    assertThat(j.suspects()).hasSize(1);
                });
        assertThat(queue)
                .filteredOn(j -> j.code().equals(notNeeded))
                .singleElement()
                .satisfies(j -> assertThat(j.needOn()).isNull());
    }

    @Test
    void takesTheShorterOfTwoJobsOfOneDayFirst() {
        String model = House.newModel(api);
        JobCode longJob = failOne(model, FaultKind.UNKNOWN, "LF");
        JobCode shortJob = failOne(model, FaultKind.CONTACT_RESISTANCE, "HF");
        JobCode coneJob = failOne(model, FaultKind.DRIVER_OPEN, "LF");

        List<BenchJobBody> queue = queue(500);

        assertThat(queue).extracting(BenchJobBody::code).containsSubsequence(shortJob, longJob, coneJob);
        assertThat(queue)
                .filteredOn(j -> List.of(shortJob, longJob, coneJob).contains(j.code()))
                .extracting(BenchJobBody::expectedEffortMinutes)
                .as("clean a contact, look for yourself, recone")
                .containsExactly(20, 45, 120);
    }

    private JobCode failOne(String model, FaultKind kind, String position) {
        CheckInBody body = House.fail(House.newCabinet(api, model, CabinetStatus.OUT), model, House.newCode());
        ObjectNode tree = Api.MAPPER.valueToTree(body);
        ((ObjectNode) tree.get("suspects").get(0)).put("kind", kind.name()).put("positionCode", position);
        assertThat(api.put(ApiPaths.CHECK_INS + "/" + body.id(), tree).status()).isEqualTo(201);
        return body.jobCode();
    }

    @Test
    void tellsKiosksWhenTheNextFailureWouldBeMissed() {
        String model = House.newModel(api);
        AssetTag one = House.newCabinet(api, model, CabinetStatus.READY);
        AssetTag two = House.newCabinet(api, model, CabinetStatus.READY);
        House.newCabinet(api, model, CabinetStatus.READY);
        House.newList(api, model, List.of(one, two));
        assertThat(needs(model).days()).as("nothing is booked").containsExactly(null, null);
        Dispatch dispatch = booking(model, 3);
        api.put(ApiPaths.DISPATCHES + "/" + dispatch.id(), dispatch);

        NeedDates needs = needs(model);

        // One is on the shelf and two are due back: all three are booked.
        assertThat(needs.days()).containsExactly(dispatch.outOn(), dispatch.outOn());
        CheckInBody failed = House.fail(one, model, House.newCode());
        House.put(api, failed);
        assertThat(api.get(ApiPaths.BENCH_JOBS + "/" + failed.jobCode())
                        .as(BenchJobBody.class)
                        .needOn())
                .as("what the kiosk was told beforehand")
                .isEqualTo(needs.needOn(0));
        assertThat(needs(model).days()).containsExactly(dispatch.outOn());
    }

    private NeedDates needs(String model) {
        return api.get(ApiPaths.KIOSK_SNAPSHOT).as(KioskSnapshot.class).needs().stream()
                .filter(n -> n.modelCode().equals(model))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void showsOnTheStatusSheetWhatCanBeMet() {
        String model = House.newModel(api);
        House.newCabinet(api, model, CabinetStatus.READY);
        House.newCabinet(api, model, CabinetStatus.SAFETY_HOLD);
        JobCode job = failOne(model);
        Dispatch dispatch = booking(model, 2);
        api.put(ApiPaths.DISPATCHES + "/" + dispatch.id(), dispatch);

        FleetStatus status = api.get(ApiPaths.FLEET_STATUS).as(FleetStatus.class);

        assertThat(status.siteName()).isEqualTo("Marram Coast Hire");
        assertThat(status.models()).contains(new FleetStatus.ModelRow(model, "Tern two-way", 1, 0, 1, 1, 0, 0));
        assertThat(status.bookings())
                .contains(new FleetStatus.BookingRow(
                        dispatch.outOn(), dispatch.orderNumber(), dispatch.customer(), model, 2, 1));
        assertThat(status.benchQueue()).extracting(BenchJobBody::code).contains(job);
    }

    @Test
    void printsTheStatusSheetAsPdf() {
        Api.Answer answer =
                api.get(ApiPaths.FLEET_STATUS, "Accept", "application/pdf", "Accept-Language", "de-DE,de;q=0.9");

        assertThat(answer.status()).as("%s", answer).isEqualTo(200);
        assertThat(answer.text()).startsWith("%PDF-");
    }

    @Test
    void storesADispatchOnceAndRefusesAnother() {
        Dispatch dispatch = booking(House.newModel(api), 2);
        String path = ApiPaths.DISPATCHES + "/" + dispatch.id();
        Dispatch backwards =
                new Dispatch(dispatch.id(), "D", "D", dispatch.dueOn(), dispatch.outOn(), dispatch.lines());

        assertThat(api.put(path, dispatch).status()).isEqualTo(201);
        assertThat(api.put(path, dispatch).status()).isEqualTo(200);
        assertThat(api.get(path).as(Dispatch.class)).isEqualTo(dispatch);
        assertThat(api.put(path, booking("NOBODY", 0)).problem().errors())
                .extracting(e -> e.column())
                .contains("id", "lines[0].modelCode", "lines[0].count");
        assertThat(api.put(path, backwards).problem().field()).isEqualTo("dueOn");
        assertThat(api.put(
                                path,
                                new Dispatch(
                                        dispatch.id(),
                                        "other",
                                        "D",
                                        dispatch.outOn(),
                                        dispatch.dueOn(),
                                        dispatch.lines()))
                        .problem()
                        .type())
                .isEqualTo(ProblemTypes.ID_REUSED);
    }
}
