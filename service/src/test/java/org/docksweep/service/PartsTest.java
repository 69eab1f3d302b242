package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchActionBody.Verb;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.FitAnswer;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.PartStock;
import org.docksweep.contract.PartUnit;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.ProofSweepBody.Polarity;
import org.docksweep.contract.SpareRepairBody;
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(RunningService.class)
class PartsTest {
    private final Api api;

    PartsTest(Api api) {
        this.api = api;
    }

    private BenchDesk inRepair() {
        return BenchDesk.withJob(api).act(Verb.ACCEPT, Verb.START_REPAIR);
    }

    private FitAnswer fit(BenchDesk desk, Part part, String more) {
        return api.get(ApiPaths.PARTS + "/" + part.number() + ApiPaths.FIT + "?tag=" + desk.tag + more)
                .as(FitAnswer.class);
    }

    private void assertNothingHappened(BenchDesk desk, Part part, int stock) {
        assertThat(desk.inStock(part)).isEqualTo(stock);
        assertThat(desk.file().exchanges()).isEmpty();
        assertThat(desk.at("HF").diaphragmSerial()).isEqualTo("D" + desk.tag);
        assertThat(desk.history()).noneMatch(e -> e.kind() == HistoryEvent.Kind.INSTALLED);
    }

    @Test
    void refusesAPartOfAnotherImpedanceBeforeItGoesIn() {
        BenchDesk desk = inRepair();
        Part sixteen = desk.part("D16-" + desk.tag, PartKind.DIAPHRAGM, List.of("REED-1"), 16.0, true);
        desk.receive(sixteen, 1, "S-1");

        Api.Answer refused = desk.exchange(desk.newDiaphragm(sixteen, "D" + desk.tag, "S-1"));

        assertThat(refused.status()).isEqualTo(409);
        assertThat(refused.problem().type()).isEqualTo(ProblemTypes.PART_DOES_NOT_FIT);
        assertThat(refused.problem().detail())
                .isEqualTo("Part D16-" + desk.tag + " is rated 16 ohm; REED-1 is rated 8 ohm.");
        assertThat(fit(desk, sixteen, "&position=HF").reason().key()).isEqualTo("part-fit-wrong-impedance");
        assertNothingHappened(desk, sixteen, 1);
    }

    @Test
    void refusesAPartForAnotherDriver() {
        BenchDesk desk = inRepair();
        Part cone = desk.part("RK-" + desk.tag, PartKind.RECONE_KIT, List.of("DUNE-12"), 8.0, false);
        desk.receive(cone, 1);

        Api.Answer refused = desk.exchange(desk.newDiaphragm(cone, "D" + desk.tag, null));

        assertThat(refused.problem().detail()).isEqualTo("Part RK-" + desk.tag + " is for DUNE-12; here sits REED-1.");
        assertThat(fit(desk, cone, "&position=LF").fits()).isTrue();
        assertThat(fit(desk, cone, "").reason().key()).isEqualTo("part-fit-no-position");
        assertNothingHappened(desk, cone, 1);
    }

    @Test
    void refusesAPartThatIsNotInTheCatalogue() {
        BenchDesk desk = inRepair();
        Part ghost = new Part(
                "GHOST-1",
                "ghost",
                PartKind.DIAPHRAGM,
                PartSource.AFTERMARKET,
                List.of("REED-1"),
                List.of(),
                8.0,
                null,
                false,
                0,
                1,
                null);

        Api.Answer refused = desk.exchange(desk.newDiaphragm(ghost, "D" + desk.tag, null));
        Api.Answer waiting = desk.send(desk.action(Verb.WAIT_FOR_PART, BenchDesk.BENCH, "GHOST-1"));

        assertThat(refused.problem().field()).isEqualTo("fitted.partNumber");
        assertThat(refused.problem().hint()).contains("manager enters the part");
        assertThat(waiting.problem().field()).isEqualTo("partNumber");
        assertThat(api.get(ApiPaths.PARTS + "/GHOST-1").status()).isEqualTo(404);
    }

    @Test
    void refusesADiaphragmSerialThatWasUsedBefore() {
        BenchDesk first = inRepair();
        first.receive(first.diaphragm, 2, "U-1", "U-2");
        BenchDesk.expect(201, first.exchange(first.newDiaphragm(first.diaphragm, "D" + first.tag, "U-1")));
        BenchDesk second = inRepair();

        Api.Answer again = second.exchange(second.newDiaphragm(first.diaphragm, "D" + second.tag, "U-1"));
        Api.Answer received = first.receive(first.diaphragm, 1, "U-1");
        Api.Answer fromBefore =
                second.exchange(second.newDiaphragm(first.diaphragm, "D" + second.tag, "D" + first.tag));

        assertThat(again.problem().detail()).contains("U-1", "fitted before");
        assertThat(received.problem().detail()).contains("U-1", "fitted before");
        assertThat(fromBefore.problem().detail()).contains("D" + first.tag, "taken out of " + first.tag);
        assertThat(second.at("HF").diaphragmSerial()).isEqualTo("D" + second.tag);
        assertThat(first.inStock(first.diaphragm)).isEqualTo(1);
    }

    @Test
    void refusesToRegisterADiaphragmThatSitsElsewhere() {
        BenchDesk desk = BenchDesk.withJob(api);
        AssetTag other = House.newTag();
        CabinetBody twin = House.cabinet(other, desk.model, CabinetStatus.READY);
        InstalledDriver horn = twin.drivers().get(0);
        CabinetBody wrong = new CabinetBody(
                other,
                desk.model,
                "C-04",
                CabinetStatus.READY,
                false,
                List.of(
                        new InstalledDriver(
                                "HF",
                                horn.driverModelCode(),
                                horn.driverSerial(),
                                "D" + desk.tag,
                                PartSource.ORIGINAL,
                                horn.installedOn()),
                        twin.drivers().get(1)));

        Api.Answer refused = api.put(ApiPaths.CABINETS + "/" + other, wrong);

        assertThat(refused.problem().detail()).contains("D" + desk.tag, desk.tag.value());
        assertThat(api.get(ApiPaths.CABINETS + "/" + other).status()).isEqualTo(404);
    }

    @Test
    void wantsTheSerialOfAPartThatCarriesOneAndFromTheShelf() {
        BenchDesk desk = inRepair();
        desk.receive(desk.diaphragm, 1, "T-1");

        Api.Answer none = desk.exchange(desk.newDiaphragm(desk.diaphragm, "D" + desk.tag, null));
        Api.Answer strange = desk.exchange(desk.newDiaphragm(desk.diaphragm, "D" + desk.tag, "T-9"));

        assertThat(none.problem().field()).isEqualTo("fitted.serial");
        assertThat(strange.problem().detail()).contains("T-9", "all 1 pieces have other serials");
        assertNothingHappened(desk, desk.diaphragm, 1);
    }

    @Test
    void refusesTheRemovalOfWhatIsNotInstalled() {
        BenchDesk desk = inRepair();
        desk.receive(desk.diaphragm, 2, "R-1", "R-2");

        Api.Answer otherSerial = desk.exchange(desk.newDiaphragm(desk.diaphragm, "D-WRONG", "R-1"));
        assertThat(otherSerial.problem().field()).isEqualTo("removed.serial");
        assertThat(otherSerial.problem().detail()).contains("D" + desk.tag, "D-WRONG");
        assertNothingHappened(desk, desk.diaphragm, 2);

        desk.part("UNIT-" + desk.tag, PartKind.DRIVER_UNIT, List.of("REED-1"), 8.0, true);
        BenchDesk.expect(201, desk.exchange(desk.newUnit(null, "H" + desk.tag, null)));
        Api.Answer twice = desk.exchange(desk.newUnit(null, "H" + desk.tag, null));
        assertThat(twice.problem().detail()).contains("nothing sits in " + desk.tag + " at HF");
    }

    @Test
    void exchangesPartsOnlyInRepair() {
        BenchDesk desk = BenchDesk.withJob(api).act(Verb.ACCEPT);
        desk.receive(desk.diaphragm, 1, "X-1");

        Api.Answer refused = desk.exchange(desk.newDiaphragm(desk.diaphragm, "D" + desk.tag, "X-1"));

        assertThat(refused.problem().detail()).contains("ACCEPTED", "IN_REPAIR");
        assertNothingHappened(desk, desk.diaphragm, 1);
    }

    @Test
    void repairsADriverAsASpareThatKeepsItsDiaphragmAndItsLife() {
        BenchDesk desk = inRepair();
        Part unit = desk.part("UNIT-" + desk.tag, PartKind.DRIVER_UNIT, List.of("REED-1"), 8.0, true);
        desk.receive(unit, 1, "NEW-" + desk.tag);
        desk.receive(desk.diaphragm, 1, "Y-1");
        String old = "H" + desk.tag;
        // The catalogue may hold more than one whole driver of this model; the first by number takes units in.
        BenchDesk.expect(201, desk.exchange(desk.newUnit(unit, old, "NEW-" + desk.tag)));
        Part keeper = api.get(ApiPaths.PARTS + "?fits=REED-1").listOf(PartStock.class).stream()
                .filter(s -> s.units().stream()
                        .anyMatch(u -> u.serial().equals(old) && u.state() == PartUnit.State.AWAITING_REPAIR))
                .map(PartStock::part)
                .findFirst()
                .orElseThrow();
        int before = desk.inStock(keeper);

        SpareRepairBody unproved = spare(desk, keeper, old, "Y-1", Polarity.NOT_CHECKED);
        assertThat(api.put(ApiPaths.SPARE_REPAIRS + "/" + unproved.id(), unproved)
                        .problem()
                        .type())
                .isEqualTo(ProblemTypes.NOT_PROVED);
        assertThat(desk.inStock(desk.diaphragm)).isEqualTo(1);
        SpareRepairBody proved = spare(desk, keeper, old, "Y-1", Polarity.PROVED);
        assertThat(api.put(ApiPaths.SPARE_REPAIRS + "/" + proved.id(), proved).status())
                .isEqualTo(201);
        assertThat(api.put(ApiPaths.SPARE_REPAIRS + "/" + proved.id(), proved).status())
                .isEqualTo(200);

        assertThat(desk.inStock(keeper)).isEqualTo(before + 1);
        assertThat(desk.inStock(desk.diaphragm)).isZero();
        BenchDesk other = inRepair();
        BenchDesk.expect(201, other.exchange(other.newUnit(keeper, "H" + other.tag, old)));
        assertThat(other.at("HF").driverSerial()).isEqualTo(old);
        assertThat(other.at("HF").diaphragmSerial()).isEqualTo("Y-1");
        Timeline life = api.get(ApiPaths.TIMELINES + "?driverModel=REED-1&driverSerial=" + old)
                .as(Timeline.class);
        assertThat(life.stays()).extracting(Timeline.Stay::tag).containsExactlyInAnyOrder(other.tag, desk.tag);
        assertThat(life.entries())
                .extracting(Timeline.Entry::kind)
                .contains(HistoryEvent.Kind.REPAIRED, HistoryEvent.Kind.FOUND, HistoryEvent.Kind.REMOVED);
    }

    private static SpareRepairBody spare(
            BenchDesk desk, Part unit, String serial, String diaphragmSerial, Polarity polarity) {
        FindingBody finding = new FindingBody(
                UUID.randomUUID(),
                BenchDesk.now(),
                BenchDesk.BY,
                BenchDesk.BENCH,
                null,
                null,
                null,
                null,
                true,
                Set.of(),
                ConfirmedCause.COIL_OPEN,
                null,
                ChargeClass.UNKNOWN);
        return new SpareRepairBody(
                UUID.randomUUID(),
                BenchDesk.now(),
                BenchDesk.BY,
                BenchDesk.BENCH,
                unit.number(),
                serial,
                new PartExchangeBody.Fitted(desk.diaphragm.number(), diaphragmSerial, 1),
                finding,
                List.of(
                        BenchDesk.bareSweep(null, Verdict.PASS, polarity),
                        BenchDesk.bareSweep(null, Verdict.PASS, polarity)));
    }

    @Test
    void refusesAWholeDriverOfAnotherModelAndFittingOneOnTopOfAnother() {
        BenchDesk desk = inRepair();
        Part cone = desk.part("UC-" + desk.tag, PartKind.DRIVER_UNIT, List.of("DUNE-12"), 8.0, true);
        Part horn = desk.part("UH-" + desk.tag, PartKind.DRIVER_UNIT, List.of("REED-1"), 8.0, true);
        desk.receive(cone, 1, "C-" + desk.tag);
        desk.receive(horn, 1, "K-" + desk.tag);

        Api.Answer wrong = desk.exchange(desk.newUnit(cone, "H" + desk.tag, "C-" + desk.tag));
        PartExchangeBody onTop = new PartExchangeBody(
                UUID.randomUUID(),
                BenchDesk.now(),
                BenchDesk.BY,
                BenchDesk.BENCH,
                "HF",
                null,
                null,
                new PartExchangeBody.Fitted(horn.number(), "K-" + desk.tag, 1));

        assertThat(wrong.problem().detail())
                .isEqualTo("Part UC-" + desk.tag + " is a DUNE-12; at HF belongs a REED-1.");
        assertThat(desk.exchange(onTop).problem().detail()).contains("H" + desk.tag, "sits in " + desk.tag);
        assertNothingHappened(desk, cone, 1);
    }
}
