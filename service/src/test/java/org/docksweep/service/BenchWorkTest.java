package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchActionBody;
import org.docksweep.contract.BenchActionBody.Verb;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.CheckInReceipt;
import org.docksweep.contract.CommissioningBody;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.Page;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.ProofState;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.contract.ProofSweepBody.Polarity;
import org.docksweep.contract.ProofSweepBody.Subject;
import org.docksweep.contract.StepTickBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.ProcedureCard;
import org.docksweep.fleet.ProcedurePurpose;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.core.type.TypeReference;

@ExtendWith(RunningService.class)
class BenchWorkTest {
    private final Api api;

    BenchWorkTest(Api api) {
        this.api = api;
    }

    private String token(KioskToken.Role role) {
        return api.post(ApiPaths.KIOSK_TOKENS, new KioskToken.Order("token " + House.next(), role))
                .as(KioskToken.class)
                .token();
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

    @Test
    void bringsAFailedCabinetBackToTheShelfWithANewBaselineAndItsStory() {
        BenchDesk desk = BenchDesk.withJob(api);
        Instant hire = Instant.parse("2026-03-01T08:00:00Z");
        CommissioningBody before = new CommissioningBody(
                UUID.randomUUID(),
                desk.tag,
                hire,
                "Ines Duna",
                List.of(new Baseline(
                        desk.tag,
                        "HF",
                        hire,
                        15.0,
                        BenchDesk.measurement("HF", Verdict.PASS).judgement().impedance(),
                        null)));
        BenchDesk.expect(201, api.put(ApiPaths.COMMISSIONINGS + "/" + before.id(), before));
        BenchDesk.expect(201, desk.receive(desk.diaphragm, 2, "N-1", "N-2"));

        desk.act(Verb.ACCEPT);
        BenchDesk.expect(201, desk.find(ConfirmedCause.LEAD_IN_JOINT));
        desk.act(Verb.START_REPAIR);
        BenchDesk.expect(201, desk.exchange(desk.newDiaphragm(desk.diaphragm, "D" + desk.tag, "N-1")));
        desk.act(Verb.START_PROOF).proveTwice();
        assertThat(desk.file().proof()).isEqualTo(new ProofState(true, 2, Map.of(), List.of()));
        desk.act(Verb.SIGN_OFF);

        assertThat(desk.job().state()).isEqualTo(BenchJobBody.State.SIGNED_OFF);
        assertThat(desk.cabinet().status()).isEqualTo(CabinetStatus.READY);
        assertThat(desk.at("HF")).satisfies(driver -> {
            assertThat(driver.driverSerial()).isEqualTo("H" + desk.tag);
            assertThat(driver.diaphragmSerial()).isEqualTo("N-1");
            assertThat(driver.diaphragmSource()).isEqualTo(PartSource.ORIGINAL);
        });
        assertThat(desk.inStock(desk.diaphragm)).isEqualTo(1);
        assertThat(desk.history())
                .extracting(HistoryEvent::kind)
                .contains(
                        HistoryEvent.Kind.AT_BENCH,
                        HistoryEvent.Kind.FOUND,
                        HistoryEvent.Kind.REMOVED,
                        HistoryEvent.Kind.INSTALLED,
                        HistoryEvent.Kind.PROVED,
                        HistoryEvent.Kind.SIGNED_OFF,
                        HistoryEvent.Kind.COMMISSIONED);
        assertThat(baselines(desk.tag)).extracting(Baseline::testPointCode).containsExactly("HF", "LF");
        assertThat(baselines(desk.tag)).allSatisfy(b -> assertThat(b.takenAt()).isAfter(hire));
        assertThat(api.get(ApiPaths.COMMISSIONINGS + "/" + before.id()).as(CommissioningBody.class))
                .as("the old baseline is kept")
                .isEqualTo(before);
        assertThat(desk.file().findings())
                .singleElement()
                .satisfies(f -> assertThat(f.cause()).isEqualTo(ConfirmedCause.LEAD_IN_JOINT));
    }

    @Test
    void givesAJobToOneOfTwoBenchesThatTakeItAtOnce() throws Exception {
        for (int round = 0; round < 5; round++) {
            BenchDesk desk = BenchDesk.withJob(api);
            BenchActionBody one = desk.action(Verb.ACCEPT, "bench-1", null);
            BenchActionBody two = desk.action(Verb.ACCEPT, "bench-2", null);
            // Two clients with connections of their own, as two kiosks have.
            Api first = new Api(api.root, token(KioskToken.Role.BENCH));
            Api second = new Api(api.root, token(KioskToken.Role.BENCH));

            List<Api.Answer> answers = atOnce(() -> desk.send(first, one), () -> desk.send(second, two));

            assertThat(answers).extracting(Api.Answer::status).containsExactlyInAnyOrder(201, 409);
            Api.Answer lost =
                    answers.stream().filter(a -> a.status() == 409).findFirst().orElseThrow();
            String winner = answers.get(0).status() == 201 ? "bench-1" : "bench-2";
            assertThat(lost.problem().detail()).contains(winner, "ACCEPTED");
            assertThat(desk.job().bench()).isEqualTo(winner);
            assertThat(desk.file().actions()).hasSize(1);
        }
    }

    private static List<Api.Answer> atOnce(Callable<Api.Answer> one, Callable<Api.Answer> two) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            CyclicBarrier start = new CyclicBarrier(2);
            Future<Api.Answer> first = threads.submit(() -> {
                start.await(10, TimeUnit.SECONDS);
                return one.call();
            });
            Future<Api.Answer> second = threads.submit(() -> {
                start.await(10, TimeUnit.SECONDS);
                return two.call();
            });
            return List.of(first.get(60, TimeUnit.SECONDS), second.get(60, TimeUnit.SECONDS));
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void keepsAnotherBenchFromAJobThatIsHeld() {
        BenchDesk desk = BenchDesk.withJob(api).act(Verb.ACCEPT);
        Api other = api.as(token(KioskToken.Role.BENCH));

        Api.Answer refused = desk.send(other, desk.action(Verb.START_REPAIR, "bench-2", null));

        assertThat(refused.problem().type()).isEqualTo(ProblemTypes.WRONG_STATE);
        assertThat(refused.problem().detail()).contains(BenchDesk.BY, BenchDesk.BENCH);
        assertThat(desk.send(desk.action(Verb.START_REPAIR, "bench-2", null)).status())
                .as("a manager gives back, and does no more at another bench")
                .isEqualTo(409);
        assertThat(desk.job().state()).isEqualTo(BenchJobBody.State.ACCEPTED);
        BenchDesk.expect(201, desk.send(desk.action(Verb.HAND_BACK, "office", null)));
        BenchDesk.expect(201, desk.send(other, desk.action(Verb.ACCEPT, "bench-2", null)));
    }

    @ParameterizedTest
    @EnumSource(
            value = Verb.class,
            names = {"ACCEPT"},
            mode = EnumSource.Mode.EXCLUDE)
    void saysFromWhichStateAVerbIsPossible(Verb verb) {
        BenchDesk desk = BenchDesk.withJob(api);
        desk.part("W-" + desk.tag, PartKind.CONNECTOR, List.of(), null, false);
        BenchActionBody action =
                desk.action(verb, BenchDesk.BENCH, verb == Verb.WAIT_FOR_PART ? "W-" + desk.tag : null);

        Api.Answer refused = desk.send(action);

        assertThat(refused.status()).as("%s", refused).isEqualTo(409);
        assertThat(refused.problem().detail()).contains("WAITING", verb.name());
        assertThat(desk.job().revision()).isZero();
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
    void storesARecordOnceAndRefusesAnotherUnderItsId() {
        BenchDesk desk = BenchDesk.withJob(api);
        BenchActionBody accept = desk.action(Verb.ACCEPT);

        assertThat(desk.send(accept).status()).isEqualTo(201);
        assertThat(desk.send(accept).status()).isEqualTo(200);
        BenchActionBody other = new BenchActionBody(
                accept.id(), Verb.HAND_BACK, 1, accept.at(), BenchDesk.BY, BenchDesk.BENCH, null, null, null);
        assertThat(desk.send(other).problem().type()).isEqualTo(ProblemTypes.ID_REUSED);
        assertThat(desk.job().revision()).isEqualTo(1);
        ProofSweepBody sweep = BenchDesk.cabinetSweep(Verdict.PASS, Polarity.PROVED);
        desk.act(Verb.START_PROOF);
        assertThat(desk.prove(sweep).status()).isEqualTo(201);
        assertThat(desk.prove(sweep).status()).isEqualTo(200);
        assertThat(desk.file().proofs()).containsExactly(sweep);
    }

    @Test
    void refusesADateInTheFuture() {
        BenchDesk desk = BenchDesk.withJob(api);
        Instant tomorrow = BenchDesk.now().plusSeconds(86_400);
        BenchActionBody accept = new BenchActionBody(
                UUID.randomUUID(), Verb.ACCEPT, 0, tomorrow, BenchDesk.BY, BenchDesk.BENCH, null, null, null);

        Api.Answer refused = desk.send(accept);

        assertThat(refused.problem().field()).isEqualTo("at");
        assertThat(refused.problem().detail()).contains("future");
        assertThat(desk.job().state()).isEqualTo(BenchJobBody.State.WAITING);
    }

    @Test
    void letsTheDockLookButNotWork() {
        BenchDesk desk = BenchDesk.withJob(api);
        Api dock = api.as(token(KioskToken.Role.DOCK));
        Api bench = api.as(token(KioskToken.Role.BENCH));

        Api.Answer refused = desk.send(dock, desk.action(Verb.ACCEPT));

        assertThat(refused.status()).isEqualTo(403);
        assertThat(refused.problem().type()).isEqualTo(ProblemTypes.NOT_ALLOWED);
        assertThat(dock.get(desk.path() + ApiPaths.FILE).status()).isEqualTo(200);
        for (Verb verb : List.of(Verb.ACCEPT, Verb.START_PROOF)) {
            BenchDesk.expect(201, desk.send(bench, desk.action(verb)));
        }
        desk.find(ConfirmedCause.NO_FAULT_FOUND);
        desk.proveTwice();
        assertThat(desk.send(dock, desk.action(Verb.SIGN_OFF)).status()).isEqualTo(403);
        assertThat(desk.job().state()).isEqualTo(BenchJobBody.State.PROVING);
        assertThat(bench.put(ApiPaths.PARTS + "/" + desk.diaphragm.number(), desk.diaphragm)
                        .status())
                .as("the catalogue is the manager's")
                .isEqualTo(403);
        BenchDesk.expect(201, desk.send(bench, desk.action(Verb.SIGN_OFF)));
    }

    @Test
    void sendsWhatIsNotRepairedToManualHoldOrOutOfTheFleetAndOpensANewJobLater() {
        BenchDesk returned = BenchDesk.withJob(api).act(Verb.ACCEPT, Verb.RETURN_UNREPAIRED);
        BenchDesk scrapped = BenchDesk.withJob(api).act(Verb.ACCEPT, Verb.SCRAP);

        assertThat(returned.cabinet().status()).isEqualTo(CabinetStatus.MANUAL_HOLD);
        assertThat(scrapped.cabinet().status()).isEqualTo(CabinetStatus.RETIRED);
        assertThat(returned.job().state()).isEqualTo(BenchJobBody.State.RETURNED_UNREPAIRED);
        assertThat(returned.send(returned.action(Verb.ACCEPT)).problem().detail())
                .contains("RETURNED_UNREPAIRED");
        CheckInBody again = House.fail(returned.tag, returned.model, House.newCode());
        assertThat(House.put(api, again).as(CheckInReceipt.class).jobCode()).isEqualTo(again.jobCode());
    }

    @Test
    void keepsASafetyHoldWhateverTheBenchSignsOff() {
        BenchDesk desk = BenchDesk.withJob(api).act(Verb.ACCEPT, Verb.START_PROOF);
        desk.find(ConfirmedCause.NO_FAULT_FOUND);
        BenchDesk.expect(
                201, House.put(api, House.checkIn(desk.tag, desk.model, null, Verdict.PASS, Route.SAFETY_HOLD, null)));
        desk.proveTwice().act(Verb.SIGN_OFF);

        assertThat(desk.cabinet().status()).isEqualTo(CabinetStatus.SAFETY_HOLD);
    }

    @Test
    void keepsTicksAndTheirTakingBackAndRefusesAStepNoCardHas() {
        BenchDesk desk = BenchDesk.withJob(api).act(Verb.ACCEPT);
        StepTickBody tick = tick("clean-gap", true);
        StepTickBody untick = tick("clean-gap", false);

        BenchDesk.expect(201, api.put(desk.path() + ApiPaths.TICKS + "/" + tick.id(), tick));
        BenchDesk.expect(201, api.put(desk.path() + ApiPaths.TICKS + "/" + untick.id(), untick));
        StepTickBody unknown = tick("polish", true);
        Api.Answer refused = api.put(desk.path() + ApiPaths.TICKS + "/" + unknown.id(), unknown);

        assertThat(desk.file().ticks()).containsExactly(tick, untick);
        assertThat(refused.problem().field()).isEqualTo("stepCode");
        assertThat(refused.problem().detail()).contains("clean-gap", "polish");
    }

    private static StepTickBody tick(String step, boolean done) {
        return new StepTickBody(
                UUID.randomUUID(),
                BenchDesk.now(),
                BenchDesk.BY,
                BenchDesk.BENCH,
                ProcedurePurpose.DIAPHRAGM_REPLACEMENT,
                "HF",
                step,
                done);
    }

    @Test
    void suggestsTheProcedureOfTheSuspectAndItsEffort() {
        BenchDesk desk = BenchDesk.withJob(api);

        assertThat(desk.file().cards())
                .containsExactly(new BenchJobFile.Card(ProcedurePurpose.DIAPHRAGM_REPLACEMENT, "HF", "REED-1", 0.9));
        ProcedureCard card = BenchDesk.expect(
                        200, api.get(ApiPaths.PROCEDURES + "/" + ProcedurePurpose.DIAPHRAGM_REPLACEMENT + "/REED-1"))
                .as(ProcedureCard.class);
        assertThat(desk.job().expectedEffortMinutes()).isEqualTo(card.effortMinutes());
    }

    @Test
    void namesEveryWrongFieldOfAFinding() {
        BenchDesk desk = BenchDesk.withJob(api).act(Verb.ACCEPT);
        FindingBody wrong = new FindingBody(
                UUID.randomUUID(),
                BenchDesk.now(),
                BenchDesk.BY,
                BenchDesk.BENCH,
                "MF",
                null,
                -1.0,
                null,
                true,
                Set.of(),
                ConfirmedCause.OTHER,
                null,
                null);

        Api.Answer refused = api.put(desk.path() + ApiPaths.FINDINGS + "/" + wrong.id(), wrong);

        assertThat(refused.problem().errors())
                .extracting(Problem.Entry::column)
                .containsExactlyInAnyOrder("positionCode", "coilResistanceOhm", "coilOpen", "causeText", "charge");
        assertThat(desk.file().findings()).isEmpty();
    }

    @Test
    void findsAJobByItsCabinetWhenTheTagCannotBeRead() {
        BenchDesk desk = BenchDesk.withJob(api);

        Page<BenchJobBody> found =
                api.get(ApiPaths.BENCH_JOBS + "?tag=" + desk.tag).as(new TypeReference<Page<BenchJobBody>>() {});
        Api.Answer unknown = api.get(ApiPaths.BENCH_JOBS + "/J99-99999");
        Api.Answer unreadable = api.get(ApiPaths.BENCH_JOBS + "/J1-2");

        assertThat(found.items()).extracting(BenchJobBody::code).containsExactly(desk.code);
        assertThat(unknown.status()).isEqualTo(404);
        assertThat(unknown.problem().hint()).contains("Type the code");
        assertThat(unreadable.status()).isEqualTo(400);
        assertThat(unreadable.problem().detail()).contains("J01-00042");
    }
}
