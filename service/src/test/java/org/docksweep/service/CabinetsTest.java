package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.ImportReceipt;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.Page;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.SafetyTest;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import tools.jackson.core.type.TypeReference;

@ExtendWith(RunningService.class)
class CabinetsTest {
    private final Api api;
    private final String model;

    CabinetsTest(Api api) {
        this.api = api;
        this.model = House.newModel(api);
    }

    private static String path(AssetTag tag) {
        return ApiPaths.CABINETS + "/" + tag;
    }

    private Page<HistoryEvent> history(AssetTag tag, String query) {
        return api.get(path(tag) + ApiPaths.HISTORY + query).as(new TypeReference<Page<HistoryEvent>>() {});
    }

    private static CabinetBody with(CabinetBody body, CabinetStatus status, List<InstalledDriver> drivers) {
        return new CabinetBody(body.tag(), body.modelCode(), body.shelfPlace(), status, body.watch(), drivers);
    }

    @Test
    void givesBackTheCabinetAsRegistered() {
        AssetTag tag = House.newTag();
        CabinetBody body = House.cabinet(tag, model, CabinetStatus.READY);

        assertThat(api.put(path(tag), body).status()).isEqualTo(201);
        assertThat(api.put(path(tag), body).status()).isEqualTo(200);
        assertThat(api.get(path(tag)).as(CabinetBody.class)).isEqualTo(body);
        assertThat(history(tag, "").items())
                .extracting(HistoryEvent::kind)
                .containsExactly(HistoryEvent.Kind.REGISTERED);
    }

    @Test
    void pagesThroughTheFleetByTagWithoutGapOrRepeat() {
        List<AssetTag> tags = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            tags.add(House.newCabinet(api, model, CabinetStatus.READY));
        }
        List<AssetTag> read = new ArrayList<>();
        String after = "";
        int pages = 0;
        do {
            Page<CabinetBody> page = api.get(ApiPaths.CABINETS + "?limit=3&after=" + after)
                    .as(new TypeReference<Page<CabinetBody>>() {});
            assertThat(page.items()).hasSizeLessThanOrEqualTo(3);
            page.items().forEach(c -> read.add(c.tag()));
            after = page.next();
            pages++;
        } while (after != null);

        assertThat(pages).isGreaterThanOrEqualTo(3);
        assertThat(read).isSorted().doesNotHaveDuplicates().containsAll(tags);
    }

    @Test
    void letsTheDockRegisterButNotChange() {
        String dock = api.post(
                        ApiPaths.KIOSK_TOKENS, new KioskToken.Order("dock " + House.next(), KioskToken.Role.DOCK))
                .as(KioskToken.class)
                .token();
        AssetTag tag = House.newTag();
        CabinetBody body = House.cabinet(tag, model, CabinetStatus.READY);

        assertThat(api.as(dock).put(path(tag), body).status()).isEqualTo(201);
        Api.Answer answer = api.as(dock).put(path(tag), with(body, CabinetStatus.RETIRED, body.drivers()));

        assertThat(answer.status()).isEqualTo(409);
        assertThat(answer.problem().type()).isEqualTo(ProblemTypes.ID_REUSED);
        assertThat(api.get(path(tag)).as(CabinetBody.class)).isEqualTo(body);
    }

    @Test
    void keepsTheDayOfAPoweredCabinetsSafetyTestAndTellsKiosks() {
        AssetTag tag = House.newTag();
        CabinetBody body =
                new CabinetBody(tag, House.newPoweredModel(api), "C-04", CabinetStatus.READY, false, List.of());
        api.put(path(tag), body);
        LocalDate due = LocalDate.parse("2027-03-31");

        Api.Answer answer = api.put(path(tag) + ApiPaths.SAFETY_TEST, new SafetyTest(due));
        assertThat(answer.status()).as("%s", answer).isEqualTo(200);
        assertThat(answer.as(CabinetBody.class).safetyTestDue()).isEqualTo(due);
        // The same again changes nothing, and what a dock says of the cabinet again leaves it.
        api.put(path(tag) + ApiPaths.SAFETY_TEST, new SafetyTest(due));
        assertThat(api.put(path(tag), body).status()).isEqualTo(200);

        assertThat(api.get(path(tag)).as(CabinetBody.class)).isEqualTo(body.withSafetyTestDue(due));
        assertThat(api.get(ApiPaths.KIOSK_SNAPSHOT).as(KioskSnapshot.class).cabinets())
                .contains(body.withSafetyTestDue(due));
        assertThat(history(tag, "").items())
                .extracting(HistoryEvent::text)
                .filteredOn(t -> t.key().equals("history-safety-test"))
                .containsExactly(Reason.of("history-safety-test", "2027-03-31"));

        api.put(path(tag) + ApiPaths.SAFETY_TEST, new SafetyTest(null));
        assertThat(api.get(path(tag)).as(CabinetBody.class).safetyTestDue()).isNull();
    }

    @Test
    void refusesADayOfASafetyTestWhereThereAreNoMains() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.READY);

        Api.Answer answer = api.put(path(tag) + ApiPaths.SAFETY_TEST, new SafetyTest(LocalDate.parse("2027-03-31")));

        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.text()).contains("only powered cabinets");
        AssetTag powered = House.newTag();
        CabinetBody slip = new CabinetBody(
                        powered, House.newPoweredModel(api), "C-04", CabinetStatus.READY, false, List.of())
                .withSafetyTestDue(LocalDate.parse("0227-03-31"));
        assertThat(api.put(path(powered), slip).status()).isEqualTo(400);
        assertThat(api.get(path(powered)).status()).isEqualTo(404);
    }

    @Test
    void notesExchangedDriversAndReleasesInTheHistory() {
        AssetTag tag = House.newTag();
        CabinetBody held = House.cabinet(tag, model, CabinetStatus.SAFETY_HOLD);
        api.put(path(tag), held);
        InstalledDriver horn = held.drivers().get(0);
        InstalledDriver fresh = new InstalledDriver(
                "HF",
                horn.driverModelCode(),
                "N" + tag,
                null,
                null,
                horn.installedOn().plusYears(1));
        CabinetBody released =
                with(held, CabinetStatus.READY, List.of(fresh, held.drivers().get(1)));

        assertThat(api.put(path(tag), released).status()).isEqualTo(200);

        assertThat(api.get(path(tag)).as(CabinetBody.class)).isEqualTo(released);
        assertThat(history(tag, "").items())
                .extracting(HistoryEvent::kind)
                .containsExactlyInAnyOrder(
                        HistoryEvent.Kind.REGISTERED,
                        HistoryEvent.Kind.REMOVED,
                        HistoryEvent.Kind.INSTALLED,
                        HistoryEvent.Kind.RELEASED);
    }

    @Test
    void refusesADriverThatSitsInAnotherCabinet() {
        AssetTag first = House.newCabinet(api, model, CabinetStatus.READY);
        AssetTag second = House.newTag();
        CabinetBody body = House.cabinet(second, model, CabinetStatus.READY);
        List<InstalledDriver> borrowed =
                House.cabinet(first, model, CabinetStatus.READY).drivers();

        Api.Answer answer = api.put(path(second), with(body, CabinetStatus.READY, borrowed));

        assertThat(answer.problem().type()).isEqualTo(ProblemTypes.WRONG_STATE);
        assertThat(answer.problem().detail()).contains(first.value());
        assertThat(api.get(path(second)).status()).isEqualTo(404);
    }

    @Test
    void namesPositionsTheModelDoesNotHave() {
        AssetTag tag = House.newTag();
        CabinetBody body = House.cabinet(tag, model, CabinetStatus.READY);
        InstalledDriver lost = new InstalledDriver("MF", "REED-1", null, null, null, null);

        Api.Answer answer = api.put(path(tag), with(body, CabinetStatus.READY, List.of(lost)));

        assertThat(answer.problem().field()).isEqualTo("drivers[0].positionCode");
        assertThat(answer.problem().detail()).contains("[HF, LF]", "MF");
    }

    @Test
    void takesOverPastEventsOnceAndReadsThemNewestFirst() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.READY);
        List<HistoryEvent> past = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            past.add(new HistoryEvent(
                    UUID.randomUUID(),
                    tag,
                    i % 2 == 0 ? "HF" : null,
                    Instant.parse("2020-01-01T10:00:00Z").plusSeconds(i),
                    "Ines Duna",
                    HistoryEvent.Kind.NOTE,
                    Reason.of("paper-words", "note " + i)));
        }
        String history = path(tag) + ApiPaths.HISTORY;

        assertThat(api.post(history, past).as(ImportReceipt.class)).isEqualTo(new ImportReceipt(5, 5, 0));
        assertThat(api.post(history, past).as(ImportReceipt.class)).isEqualTo(new ImportReceipt(5, 0, 5));

        List<HistoryEvent> read = new ArrayList<>();
        String after = "";
        do {
            Page<HistoryEvent> page = history(tag, "?limit=2&after=" + after);
            read.addAll(page.items());
            after = page.next();
        } while (after != null);
        assertThat(read).extracting(HistoryEvent::at).isSortedAccordingTo(java.util.Comparator.reverseOrder());
        assertThat(read).containsAll(past).hasSize(6);
    }

    @Test
    void neverChangesAnEventOfTheHistory() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.READY);
        HistoryEvent event = new HistoryEvent(
                UUID.randomUUID(),
                tag,
                null,
                House.NIGHT,
                "Ines Duna",
                HistoryEvent.Kind.NOTE,
                Reason.of("paper-words", "a"));
        api.post(path(tag) + ApiPaths.HISTORY, List.of(event));
        HistoryEvent other = new HistoryEvent(
                event.id(), tag, null, House.NIGHT, "Ines Duna", HistoryEvent.Kind.NOTE, Reason.of("paper-words", "b"));

        Api.Answer answer = api.post(path(tag) + ApiPaths.HISTORY, List.of(other));

        assertThat(answer.problem().type()).isEqualTo(ProblemTypes.ID_REUSED);
        assertThat(history(tag, "").items()).contains(event).doesNotContain(other);
    }
}
