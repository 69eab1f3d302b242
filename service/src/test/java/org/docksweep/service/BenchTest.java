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
import org.docksweep.contract.Page;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.JobCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import tools.jackson.core.type.TypeReference;

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
