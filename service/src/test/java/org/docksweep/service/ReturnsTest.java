package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.KioskChanges;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(RunningService.class)
class ReturnsTest {
    private final Api api;
    private final String model;

    ReturnsTest(Api api) {
        this.api = api;
        this.model = House.newModel(api);
    }

    private AssetTag out() {
        return House.newCabinet(api, model, CabinetStatus.OUT);
    }

    private CabinetStatus status(AssetTag tag) {
        return api.get(ApiPaths.CABINETS + "/" + tag).as(CabinetBody.class).status();
    }

    private static String path(ReturnList list) {
        return ApiPaths.RETURN_LISTS + "/" + list.id();
    }

    private void checkIn(AssetTag tag, ReturnList list, Verdict verdict, Route route) {
        var code = route == Route.BENCH ? House.newCode() : null;
        var answer = House.put(api, House.checkIn(tag, model, list == null ? null : list.id(), verdict, route, code));
        assertThat(answer.status()).as("%s", answer).isEqualTo(201);
    }

    @Test
    void reportsWhatCameWhatIsMissingAndWhatWasNotExpected() {
        AssetTag passed = out();
        AssetTag failed = out();
        AssetTag elsewhere = out();
        AssetTag lost = out();
        AssetTag stray = out();
        ReturnList list = House.newList(api, model, List.of(passed, failed, elsewhere, lost));
        checkIn(passed, list, Verdict.PASS, Route.SHELF);
        checkIn(failed, list, Verdict.FAIL, Route.BENCH);
        checkIn(stray, list, Verdict.PASS, Route.SHELF);
        checkIn(elsewhere, null, Verdict.PASS, Route.SHELF);

        ReturnReport open = api.get(path(list) + ApiPaths.REPORT).as(ReturnReport.class);
        assertThat(open.list().closed()).isFalse();
        assertThat(open.back()).extracting(ReturnReport.Row::tag).containsExactly(passed, failed, elsewhere);
        assertThat(open.missing()).extracting(ReturnList.Line::tag).containsExactly(lost);
        assertThat(open.unexpected()).extracting(ReturnReport.Row::tag).containsExactly(stray);
        assertThat(status(lost)).isEqualTo(CabinetStatus.OUT);

        ReturnReport closed = api.post(path(list) + ApiPaths.CLOSE, List.of()).as(ReturnReport.class);
        assertThat(closed.list().closed()).isTrue();
        assertThat(closed.missing()).extracting(ReturnList.Line::tag).containsExactly(lost);
        assertThat(status(lost)).isEqualTo(CabinetStatus.MISSING);
        assertThat(status(passed)).isEqualTo(CabinetStatus.READY);

        ReturnReport again = api.post(path(list) + ApiPaths.CLOSE, List.of()).as(ReturnReport.class);
        assertThat(again.back()).isEqualTo(closed.back());
        assertThat(again.missing()).isEqualTo(closed.missing());
    }

    @Test
    void takesACabinetBackThatComesAfterItsListWasClosed() {
        AssetTag late = out();
        ReturnList list = House.newList(api, model, List.of(late));
        api.post(path(list) + ApiPaths.CLOSE, List.of());
        assertThat(status(late)).isEqualTo(CabinetStatus.MISSING);

        checkIn(late, list, Verdict.PASS, Route.SHELF);

        assertThat(status(late)).isEqualTo(CabinetStatus.READY);
        assertThat(api.get(path(list) + ApiPaths.REPORT).as(ReturnReport.class).missing())
                .isEmpty();
    }

    @Test
    void storesAListOnceAndKeepsItWhenAnotherBodyComes() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.READY);
        ReturnList list = House.newList(api, model, List.of(tag));
        assertThat(status(tag)).isEqualTo(CabinetStatus.OUT);
        api.post(path(list) + ApiPaths.CLOSE, List.of());

        Api.Answer same = api.put(path(list), list);
        ReturnList other = new ReturnList(list.id(), list.orderNumber(), "Others", list.dueOn(), false, list.lines());

        assertThat(same.status()).isEqualTo(200);
        assertThat(same.as(ReturnList.class).closed()).isTrue();
        assertThat(api.put(path(list), other).problem().type()).isEqualTo(ProblemTypes.ID_REUSED);
    }

    @Test
    void printsTheReportAsPdf() {
        ReturnList list = House.newList(api, model, List.of(out()));

        Api.Answer answer = api.get(path(list) + ApiPaths.REPORT, "Accept", "application/pdf");

        assertThat(answer.status()).as("%s", answer).isEqualTo(200);
        assertThat(answer.header("Content-Type")).isEqualTo("application/pdf");
        assertThat(answer.text()).startsWith("%PDF-");
    }

    @Test
    void tellsKiosksOnlyWhatChanged() {
        AssetTag tag = out();
        ReturnList list = House.newList(api, model, List.of(tag));
        Api.Answer first = api.get(ApiPaths.KIOSK_SNAPSHOT);
        String etag = first.header("ETag");

        assertThat(first.as(KioskSnapshot.class).returnLists()).contains(list);
        assertThat(first.as(KioskSnapshot.class).cabinets()).contains(House.cabinet(tag, model, CabinetStatus.OUT));
        assertThat(api.get(ApiPaths.KIOSK_SNAPSHOT, "If-None-Match", etag).status())
                .isEqualTo(304);

        checkIn(tag, list, Verdict.PASS, Route.SHELF);

        Api.Answer changed = api.get(ApiPaths.KIOSK_SNAPSHOT, "If-None-Match", etag);
        assertThat(changed.status()).isEqualTo(200);
        assertThat(changed.header("ETag")).isNotEqualTo(etag);
        assertThat(changed.as(KioskSnapshot.class).checkedIn())
                .extracting(ReturnReport.Row::tag)
                .contains(tag);
        assertThat(changed.as(KioskSnapshot.class).recentEvents())
                .anySatisfy(e -> assertThat(e.tag()).isEqualTo(tag));
    }

    @Test
    void bringsAKiosksCopyUpToDateWithTheChangesAlone() {
        AssetTag tag = out();
        ReturnList list = House.newList(api, model, List.of(tag));
        Api.Answer first = api.get(ApiPaths.KIOSK_SNAPSHOT);
        KioskSnapshot copy = first.as(KioskSnapshot.class);
        String since = ApiPaths.KIOSK_CHANGES + "?since=" + copy.asOf();

        assertThat(api.get(since, "If-None-Match", first.header("ETag")).status())
                .isEqualTo(304);

        checkIn(tag, list, Verdict.PASS, Route.SHELF);

        Api.Answer answer = api.get(since, "If-None-Match", first.header("ETag"));
        KioskChanges changes = answer.as(KioskChanges.class);
        assertThat(changes.book()).as("models are as before").isNull();
        assertThat(changes.references()).as("references are as before").isNull();
        assertThat(changes.labels()).as("labels are as before").isNull();
        assertThat(changes.cabinets()).contains(House.cabinet(tag, model, CabinetStatus.READY));
        KioskSnapshot whole = api.get(ApiPaths.KIOSK_SNAPSHOT).as(KioskSnapshot.class);
        assertThat(changes.applyTo(copy))
                .usingRecursiveComparison()
                .ignoringFields("asOf")
                .isEqualTo(whole);
        assertThat(api.get(since, "If-None-Match", answer.header("ETag")).status())
                .isEqualTo(304);
    }

    @Test
    void sendsAllPartsToAKioskWhoseCopyItDoesNotKnow() {
        Api.Answer answer = api.get(ApiPaths.KIOSK_CHANGES + "?since=2026-01-01T00:00:00Z", "If-None-Match", "\"old\"");

        KioskChanges changes = answer.as(KioskChanges.class);
        assertThat(changes.book()).isNotNull();
        assertThat(changes.references()).isNotNull();
        assertThat(changes.labels()).isNotNull();
        assertThat(api.get(ApiPaths.KIOSK_CHANGES + "?since=yesterday").status())
                .isEqualTo(400);
        assertThat(api.get(ApiPaths.KIOSK_CHANGES).status()).isEqualTo(400);
    }
}
