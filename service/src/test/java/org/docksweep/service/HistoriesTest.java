package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchActionBody.Verb;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.CheckInReceipt;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.JobEvidence;
import org.docksweep.contract.PartLife;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.gate.ReadingKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import tools.jackson.databind.node.ObjectNode;

@ExtendWith(RunningService.class)
class HistoriesTest {
    private final Api api;

    HistoriesTest(Api api) {
        this.api = api;
    }

    private Timeline timeline(String query) {
        return BenchDesk.expect(200, api.get(ApiPaths.TIMELINES + query)).as(Timeline.class);
    }

    /** Out on an order, back failed, diaphragm replaced. */
    private BenchDesk repaired(String serial) {
        BenchDesk desk = BenchDesk.withJob(api);
        desk.receive(desk.diaphragm, 1, serial);
        desk.act(Verb.ACCEPT);
        BenchDesk.expect(201, desk.find(ConfirmedCause.COIL_BURNT));
        desk.act(Verb.START_REPAIR);
        BenchDesk.expect(201, desk.exchange(desk.newDiaphragm(desk.diaphragm, "D" + desk.tag, serial)));
        return desk.act(Verb.START_PROOF).proveTwice().act(Verb.SIGN_OFF);
    }

    @Test
    void tellsTheLifeOfAPositionWithItsStaysAndReadings() {
        BenchDesk desk = repaired("Z1-" + House.next());

        Timeline position = timeline("?tag=" + desk.tag + "&position=HF");
        Timeline cabinet = timeline("?tag=" + desk.tag);

        assertThat(position.stays()).hasSize(2);
        assertThat(position.stays().get(0)).satisfies(now -> {
            assertThat(now.removedAt()).isNull();
            assertThat(now.partNumber()).isEqualTo(desk.diaphragm.number());
            assertThat(now.fittedByJob()).isEqualTo(desk.code);
        });
        assertThat(position.stays().get(1).removedByJob()).isEqualTo(desk.code);
        assertThat(position.entries()).extracting(Timeline.Entry::at).isSortedAccordingTo(Comparator.reverseOrder());
        assertThat(position.entries()).noneMatch(e -> "LF".equals(e.positionCode()));
        assertThat(position.trend())
                .as("two sweeps of two points at the bench")
                .hasSize(4)
                .allSatisfy(p -> assertThat(p.reading().kind()).isEqualTo(ReadingKind.DC_RESISTANCE_20C));
        assertThat(cabinet.entries()).hasSizeGreaterThan(position.entries().size());
        assertThat(cabinet.stays()).hasSize(3);
    }

    @Test
    void separatesTheLivesOfTheOldAndTheNewDiaphragm() {
        String serial = "Z2-" + House.next();
        BenchDesk desk = repaired(serial);

        Timeline old = timeline("?driverModel=REED-1&diaphragmSerial=D" + desk.tag);
        Timeline fresh = timeline("?driverModel=REED-1&diaphragmSerial=" + serial);
        Timeline driver = timeline("?driverModel=REED-1&driverSerial=H" + desk.tag);

        assertThat(old.entries())
                .extracting(Timeline.Entry::kind)
                .contains(HistoryEvent.Kind.FOUND, HistoryEvent.Kind.REMOVED)
                .doesNotContain(HistoryEvent.Kind.SIGNED_OFF, HistoryEvent.Kind.PROVED);
        assertThat(fresh.entries())
                .extracting(Timeline.Entry::kind)
                .contains(HistoryEvent.Kind.INSTALLED, HistoryEvent.Kind.PROVED, HistoryEvent.Kind.SIGNED_OFF)
                .doesNotContain(HistoryEvent.Kind.FOUND);
        assertThat(driver.stays()).hasSize(2);
        assertThat(driver.entries())
                .extracting(Timeline.Entry::kind)
                .contains(HistoryEvent.Kind.FOUND, HistoryEvent.Kind.SIGNED_OFF);
        assertThat(fresh.trend()).isNotEmpty();
        assertThat(old.trend()).isEmpty();
    }

    @Test
    void tellsWhoHadItWhenItBroke() {
        String model = House.newModel(api);
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.READY);
        ReturnList list = House.newList(api, model, List.of(tag));
        CheckInBody failed = House.fail(tag, model, House.newCode());
        House.put(api, failed);

        Timeline.LastOrder order = timeline("?tag=" + tag).lastOrder();

        assertThat(order.orderNumber()).isEqualTo(list.orderNumber());
        assertThat(order.customer()).isEqualTo(list.customer());
        assertThat(timeline("?driverModel=REED-1&driverSerial=H" + tag)
                        .lastOrder()
                        .orderNumber())
                .isEqualTo(list.orderNumber());
        assertThat(timeline("?tag=" + House.newCabinet(api, model, CabinetStatus.READY))
                        .lastOrder())
                .isNull();
    }

    @Test
    void countsTheLifeThatEndedAndTheOneThatBegan() {
        String serial = "Z3-" + House.next();
        BenchDesk desk = repaired(serial);

        List<PartLife> lives = api.get(ApiPaths.PART_LIVES + "?driverModel=REED-1").listOf(PartLife.class).stream()
                .filter(l -> l.tag().equals(desk.tag))
                .toList();

        assertThat(lives).hasSize(2);
        assertThat(lives)
                .filteredOn(l -> ("D" + desk.tag).equals(l.partSerial()))
                .singleElement()
                .satisfies(l -> {
                    assertThat(l.failed()).isTrue();
                    assertThat(l.cause()).isEqualTo(ConfirmedCause.COIL_BURNT);
                    assertThat(l.charge()).isEqualTo(ChargeClass.WORN);
                    assertThat(l.endedAt()).isNotNull();
                    assertThat(l.jobCode()).isEqualTo(desk.code);
                    assertThat(l.returnCount()).isEqualTo(1);
                });
        assertThat(lives)
                .filteredOn(l -> serial.equals(l.partSerial()))
                .singleElement()
                .satisfies(l -> {
                    assertThat(l.failed()).isFalse();
                    assertThat(l.endedAt()).isNull();
                    assertThat(l.partNumber()).isEqualTo(desk.diaphragm.number());
                    assertThat(l.unitCostCents()).isEqualTo(6200);
                });
    }

    @Test
    void bringsTheEvidenceOfAJobTogether() {
        String model = House.newModel(api);
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody passed = House.pass(tag, model);
        House.put(api, passed);
        ObjectNode later = Api.MAPPER.valueToTree(House.fail(tag, model, House.newCode()));
        later.put("startedAt", "2026-03-20T02:10:00Z").put("finishedAt", "2026-03-20T02:10:30Z");
        Api.Answer failed = api.put(ApiPaths.CHECK_INS + "/" + later.get("id").asString(), later);
        String job = failed.as(CheckInReceipt.class).jobCode().value();

        JobEvidence evidence =
                api.get(ApiPaths.BENCH_JOBS + "/" + job + ApiPaths.EVIDENCE).as(JobEvidence.class);

        assertThat(evidence.lastPass()).isEqualTo(passed);
        assertThat(evidence.failure().id().toString()).isEqualTo(later.get("id").asString());
        assertThat(evidence.drivers()).extracting(d -> d.code()).containsExactlyInAnyOrder("DUNE-12", "REED-1");
        assertThat(evidence.file().proof().proved()).isFalse();
    }

    @Test
    void printsEvidenceCardAndOrderListAsPdf() {
        BenchDesk desk = repaired("Z4-" + House.next());
        for (String path : List.of(
                desk.path() + ApiPaths.EVIDENCE,
                ApiPaths.PART_ORDERS,
                ApiPaths.PROCEDURES + "/RECONE",
                ApiPaths.PROCEDURES + "/DIAPHRAGM_REPLACEMENT/REED-1?job=" + desk.code)) {
            Api.Answer answer = api.get(path, "Accept", "application/pdf", "Accept-Language", "de");

            assertThat(answer.status()).as(path).isEqualTo(200);
            assertThat(answer.header("Content-Type")).isEqualTo("application/pdf");
            assertThat(answer.text()).startsWith("%PDF-");
        }
        assertThat(api.get(ApiPaths.PROCEDURES + "/RECONE?job=J99-99998", "Accept", "application/pdf")
                        .problem()
                        .field())
                .isEqualTo("code");
    }

    @Test
    void asksForOneSubjectAndNamesWhatIsUnknown() {
        assertThat(api.get(ApiPaths.TIMELINES).problem().type()).isEqualTo(ProblemTypes.BAD_FIELD);
        assertThat(api.get(ApiPaths.TIMELINES + "?tag=MCH-000001&driverModel=REED-1&driverSerial=1")
                        .status())
                .isEqualTo(400);
        assertThat(api.get(ApiPaths.TIMELINES + "?tag=MCH-99999999").status()).isEqualTo(404);
        House.newModel(api);
        assertThat(api.get(ApiPaths.TIMELINES + "?driverModel=REED-1&driverSerial=nowhere")
                        .problem()
                        .field())
                .isEqualTo("driverSerial");
        assertThat(api.get(ApiPaths.TIMELINES + "?driverModel=REED-1&diaphragmSerial=nowhere")
                        .problem()
                        .field())
                .isEqualTo("diaphragmSerial");
    }
}
