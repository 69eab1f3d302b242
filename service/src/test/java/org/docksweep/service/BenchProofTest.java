package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchActionBody.Verb;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.CommissioningBody;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.ProofSweepBody.Polarity;
import org.docksweep.contract.ProofSweepBody.Subject;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What proves a job, and what a sign-off does to baselines. */
@ExtendWith(RunningService.class)
class BenchProofTest {
    private final Api api;

    BenchProofTest(Api api) {
        this.api = api;
    }

    private List<Baseline> baselines(AssetTag tag) {
        return api.get(ApiPaths.KIOSK_SNAPSHOT).as(KioskSnapshot.class).baselines().stream()
                .filter(b -> b.tag().equals(tag))
                .toList();
    }

    private static List<String> missing(Api.Answer refused) {
        assertThat(refused.status()).as("%s", refused).isEqualTo(409);
        assertThat(refused.problem().type()).isEqualTo(ProblemTypes.NOT_PROVED);
        return refused.problem().errors().stream().map(Problem.Entry::message).toList();
    }

    private static Baseline baseline(AssetTag tag, String point) {
        return new Baseline(
                tag,
                point,
                House.NIGHT,
                15.0,
                BenchDesk.measurement(point, Verdict.PASS).judgement().impedance(),
                null);
    }

    @Test
    void signsNothingOffWithoutAFindingAndTwoCleanSweepsInARow() {
        BenchDesk desk = BenchDesk.withJob(api).act(Verb.ACCEPT, Verb.START_PROOF);

        assertThat(missing(desk.send(desk.action(Verb.SIGN_OFF))))
                .containsExactlyInAnyOrder(
                        "No confirmed cause is written down.", "Two clean sweeps of the cabinet in a row: 0 so far.");
        BenchDesk.expect(201, desk.find(ConfirmedCause.NO_FAULT_FOUND));
        BenchDesk.expect(201, desk.prove(BenchDesk.cabinetSweep(Verdict.PASS, Polarity.NOT_CHECKED)));
        assertThat(missing(desk.send(desk.action(Verb.SIGN_OFF)))).hasSize(1);
        BenchDesk.expect(201, desk.prove(BenchDesk.cabinetSweep(Verdict.FAIL, Polarity.NOT_CHECKED)));
        BenchDesk.expect(201, desk.prove(BenchDesk.cabinetSweep(Verdict.PASS, Polarity.NOT_CHECKED)));
        assertThat(missing(desk.send(desk.action(Verb.SIGN_OFF))))
                .containsExactly("Two clean sweeps of the cabinet in a row: 1 so far.");
        BenchDesk.expect(
                201,
                desk.prove(BenchDesk.sweep(
                        Subject.CABINET,
                        null,
                        Polarity.NOT_CHECKED,
                        false,
                        BenchDesk.measurement("LF", Verdict.PASS),
                        BenchDesk.measurement("HF", Verdict.PASS))));
        assertThat(missing(desk.send(desk.action(Verb.SIGN_OFF))))
                .as("a rattle that was heard")
                .contains("The newest sweep was not clean.");
        assertThat(desk.job().state()).isEqualTo(BenchJobBody.State.PROVING);
        assertThat(desk.cabinet().status()).isEqualTo(CabinetStatus.BENCH);

        desk.proveTwice().act(Verb.SIGN_OFF);

        assertThat(desk.cabinet().status()).isEqualTo(CabinetStatus.READY);
    }

    @Test
    void takesASweepThatMissesATestPointForUnclean() {
        BenchDesk desk = BenchDesk.withJob(api).act(Verb.ACCEPT, Verb.START_PROOF);
        BenchDesk.expect(201, desk.find(ConfirmedCause.NO_FAULT_FOUND));
        for (int i = 0; i < 2; i++) {
            BenchDesk.expect(
                    201,
                    desk.prove(BenchDesk.sweep(
                            Subject.CABINET, null, Polarity.PROVED, true, BenchDesk.measurement("HF", Verdict.PASS))));
        }

        assertThat(missing(desk.send(desk.action(Verb.SIGN_OFF))))
                .contains("Two clean sweeps of the cabinet in a row: 0 so far.");
    }

    @Test
    void wantsThePolarityProvedAfterADiaphragm() {
        BenchDesk desk = BenchDesk.withJob(api);
        desk.receive(desk.diaphragm, 1, "P-1");
        desk.act(Verb.ACCEPT, Verb.START_REPAIR);
        desk.find(ConfirmedCause.COIL_OPEN);
        BenchDesk.expect(201, desk.exchange(desk.newDiaphragm(desk.diaphragm, "D" + desk.tag, "P-1")));
        desk.act(Verb.START_PROOF);
        for (int i = 0; i < 2; i++) {
            BenchDesk.expect(201, desk.prove(BenchDesk.cabinetSweep(Verdict.PASS, Polarity.NOT_CHECKED)));
        }

        assertThat(missing(desk.send(desk.action(Verb.SIGN_OFF))))
                .containsExactly("The polarity of HF is not proved after its moving part was renewed.");

        BenchDesk.expect(201, desk.prove(BenchDesk.cabinetSweep(Verdict.PASS, Polarity.REVERSED)));
        assertThat(missing(desk.send(desk.action(Verb.SIGN_OFF)))).contains("The newest sweep was not clean.");

        desk.proveTwice().act(Verb.SIGN_OFF);
    }

    @Test
    void countsNoSweepFromBeforeTheLastRepair() {
        BenchDesk desk = BenchDesk.withJob(api).act(Verb.ACCEPT, Verb.START_PROOF);
        desk.find(ConfirmedCause.CONTACT);
        desk.proveTwice().act(Verb.START_REPAIR, Verb.START_PROOF);

        assertThat(missing(desk.send(desk.action(Verb.SIGN_OFF))))
                .containsExactly("Two clean sweeps of the cabinet in a row: 0 so far.");
    }

    @Test
    void countsNoSweepFromBeforeAFailureAtTheDock() {
        BenchDesk desk = BenchDesk.withJob(api).act(Verb.ACCEPT, Verb.START_PROOF);
        desk.find(ConfirmedCause.CONTACT);
        desk.proveTwice();
        BenchDesk.expect(201, House.put(api, House.fail(desk.tag, desk.model, House.newCode())));

        assertThat(missing(desk.send(desk.action(Verb.SIGN_OFF))))
                .containsExactly("Two clean sweeps of the cabinet in a row: 0 so far.");
    }

    @Test
    void acceptsTheBareDriverAsProofAndThenTrustsNoOldBaseline() {
        BenchDesk desk = BenchDesk.withJob(api);
        CommissioningBody before = new CommissioningBody(
                UUID.randomUUID(),
                desk.tag,
                House.NIGHT,
                "Ines Duna",
                List.of(baseline(desk.tag, "HF"), baseline(desk.tag, "LF")));
        BenchDesk.expect(201, api.put(ApiPaths.COMMISSIONINGS + "/" + before.id(), before));
        desk.receive(desk.diaphragm, 1, "B-1");
        desk.act(Verb.ACCEPT, Verb.START_REPAIR);
        desk.find(ConfirmedCause.COIL_BURNT);
        BenchDesk.expect(201, desk.exchange(desk.newDiaphragm(desk.diaphragm, "D" + desk.tag, "B-1")));
        desk.act(Verb.START_PROOF);
        BenchDesk.expect(201, desk.prove(BenchDesk.bareSweep("HF", Verdict.PASS, Polarity.PROVED)));
        assertThat(missing(desk.send(desk.action(Verb.SIGN_OFF))))
                .containsExactly("Two clean sweeps in a row of the cabinet, or of the bare driver of HF: 1 so far.");
        BenchDesk.expect(201, desk.prove(BenchDesk.bareSweep("HF", Verdict.PASS, Polarity.PROVED)));

        desk.act(Verb.SIGN_OFF);

        assertThat(baselines(desk.tag)).extracting(Baseline::testPointCode).containsExactly("LF");
        assertThat(api.get(ApiPaths.COMMISSIONINGS + "/" + before.id()).as(CommissioningBody.class))
                .isEqualTo(before);
    }
}
