package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import javax.sql.DataSource;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.CheckInReceipt;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.Page;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

@ExtendWith(RunningService.class)
class CheckInsTest {
    /** Of each of two points: more values than go to the database in one text. */
    private static final int MANY_READINGS = 2_000;

    private final Api api;
    private final String model;

    CheckInsTest(Api api) {
        this.api = api;
        this.model = House.newModel(api);
    }

    private CabinetStatus status(AssetTag tag) {
        return api.get(ApiPaths.CABINETS + "/" + tag).as(CabinetBody.class).status();
    }

    private BenchJobBody job(JobCode code) {
        return api.get(ApiPaths.BENCH_JOBS + "/" + code).as(BenchJobBody.class);
    }

    private List<HistoryEvent> history(AssetTag tag) {
        return api.get(ApiPaths.CABINETS + "/" + tag + ApiPaths.HISTORY)
                .as(new TypeReference<Page<HistoryEvent>>() {})
                .items();
    }

    @Test
    void storesOnceAndAnswersTheSameAgain() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody body = House.pass(tag, model);

        Api.Answer first = House.put(api, body);
        Api.Answer second = House.put(api, body);

        assertThat(first.status()).as("%s", first).isEqualTo(201);
        assertThat(second.status()).as("%s", second).isEqualTo(200);
        assertThat(second.as(CheckInReceipt.class))
                .isEqualTo(first.as(CheckInReceipt.class))
                .isEqualTo(new CheckInReceipt(body.id(), CabinetStatus.READY, null, false));
        assertThat(status(tag)).isEqualTo(CabinetStatus.READY);
        assertThat(history(tag))
                .filteredOn(e -> e.kind() == HistoryEvent.Kind.CHECKED_IN)
                .hasSize(3);
    }

    @Test
    void givesBackWhatWasStoredToTheLastDigit() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody body = House.fail(tag, model, House.newCode());
        House.put(api, body);

        assertThat(api.get(ApiPaths.CHECK_INS + "/" + body.id()).as(CheckInBody.class))
                .isEqualTo(body);
    }

    @Test
    void takesBodiesAsTheSameWhateverTheirOrderAndNanoseconds() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody body = House.pass(tag, model);
        House.put(api, body);

        ObjectNode turned = Api.MAPPER.createObjectNode();
        ObjectNode tree = Api.MAPPER.valueToTree(body);
        List<java.util.Map.Entry<String, tools.jackson.databind.JsonNode>> members =
                new java.util.ArrayList<>(tree.propertyStream().toList());
        java.util.Collections.reverse(members);
        members.forEach(e -> turned.set(e.getKey(), e.getValue()));
        turned.put("startedAt", "2026-03-14T02:10:00.123456789Z");

        assertThat(api.put(ApiPaths.CHECK_INS + "/" + body.id(), turned).status())
                .isEqualTo(200);
    }

    @Test
    void refusesAnotherBodyUnderTheSameId() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody body = House.pass(tag, model);
        House.put(api, body);
        CheckInBody held = House.checkIn(tag, model, null, null, Route.MANUAL_HOLD, null);
        ObjectNode other = Api.MAPPER.valueToTree(held);
        other.put("id", body.id().toString());

        Api.Answer answer = api.put(ApiPaths.CHECK_INS + "/" + body.id(), other);

        assertThat(answer.status()).isEqualTo(409);
        assertThat(answer.problem().type()).isEqualTo(ProblemTypes.ID_REUSED);
        assertThat(status(tag)).isEqualTo(CabinetStatus.READY);
    }

    @Test
    void storesOneOfTwoEqualPutsAtOnce() throws Exception {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody body = House.fail(tag, model, House.newCode());

        List<Api.Answer> answers = atOnce(() -> House.put(api, body), () -> House.put(api, body));

        assertThat(answers).extracting(Api.Answer::status).containsExactlyInAnyOrder(201, 200);
        assertThat(job(body.jobCode()).checkInIds()).containsExactly(body.id());
    }

    @Test
    void opensOneJobForTwoCheckInsAtOnceAndFindsItByBothCodes() throws Exception {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody one = House.fail(tag, model, House.newCode());
        CheckInBody two = House.fail(tag, model, House.newCode());

        List<Api.Answer> answers = atOnce(() -> House.put(api, one), () -> House.put(api, two));

        assertThat(answers).extracting(Api.Answer::status).containsExactly(201, 201);
        assertThat(answers)
                .extracting(a -> a.as(CheckInReceipt.class).joinedOpenJob())
                .containsExactlyInAnyOrder(true, false);
        assertThat(job(one.jobCode())).isEqualTo(job(two.jobCode()));
        assertThat(job(one.jobCode()).checkInIds()).containsExactlyInAnyOrder(one.id(), two.id());
        assertThat(status(tag)).isEqualTo(CabinetStatus.BENCH);
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
    void leavesAnOpenJobOpenWhenTheCabinetPassesLater() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody failed = House.fail(tag, model, House.newCode());
        House.put(api, failed);
        CheckInBody passed = House.pass(tag, model);

        Api.Answer answer = House.put(api, passed);

        assertThat(answer.status()).isEqualTo(201);
        assertThat(answer.as(CheckInReceipt.class))
                .isEqualTo(new CheckInReceipt(passed.id(), CabinetStatus.BENCH, failed.jobCode(), true));
        assertThat(job(failed.jobCode()).state()).isEqualTo(BenchJobBody.State.WAITING);
        assertThat(status(tag)).isEqualTo(CabinetStatus.BENCH);
    }

    @Test
    void keepsASafetyHoldWhateverALaterSweepSays() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        House.put(api, House.checkIn(tag, model, null, Verdict.PASS, Route.SAFETY_HOLD, null));
        assertThat(status(tag)).isEqualTo(CabinetStatus.SAFETY_HOLD);

        House.put(api, House.pass(tag, model));

        assertThat(status(tag)).isEqualTo(CabinetStatus.SAFETY_HOLD);
    }

    @Test
    void refusesACodePrintedForAnotherCabinet() {
        CheckInBody one = House.fail(House.newCabinet(api, model, CabinetStatus.OUT), model, House.newCode());
        House.put(api, one);
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody two = House.fail(tag, model, one.jobCode());

        Api.Answer answer = House.put(api, two);

        assertThat(answer.problem().type()).isEqualTo(ProblemTypes.WRONG_STATE);
        assertThat(answer.problem().detail()).contains(one.tag().value());
        assertThat(api.get(ApiPaths.CHECK_INS + "/" + two.id()).status()).isEqualTo(404);
        assertThat(status(tag)).isEqualTo(CabinetStatus.OUT);
    }

    @Test
    void saysToRegisterAnUnknownCabinetFirst() {
        Api.Answer answer = House.put(api, House.pass(House.newTag(), model));

        assertThat(answer.status()).isEqualTo(404);
        assertThat(answer.problem().type()).isEqualTo(ProblemTypes.NOT_FOUND);
        assertThat(answer.problem().field()).isEqualTo("tag");
        assertThat(answer.problem().hint()).contains("register");
    }

    @Test
    void refusesAnUnknownReturnListAndStoresNothing() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody body = House.checkIn(tag, model, UUID.randomUUID(), Verdict.PASS, Route.SHELF, null);

        Api.Answer answer = House.put(api, body);

        assertThat(answer.status()).isEqualTo(404);
        assertThat(answer.problem().field()).isEqualTo("returnListId");
        assertThat(status(tag)).isEqualTo(CabinetStatus.OUT);
    }

    @Test
    void refusesAMeasurementIdOfAnotherCheckIn() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody one = House.pass(tag, model);
        House.put(api, one);
        CheckInBody two = House.pass(tag, model);
        ObjectNode tree = Api.MAPPER.valueToTree(two);
        ((ObjectNode) tree.get("measurements").get(1))
                .put("id", one.measurements().get(0).id().toString());

        Api.Answer answer = api.put(ApiPaths.CHECK_INS + "/" + two.id(), tree);

        assertThat(answer.problem().type()).isEqualTo(ProblemTypes.ID_REUSED);
        assertThat(api.get(ApiPaths.CHECK_INS + "/" + two.id()).status()).isEqualTo(404);
    }

    @Test
    void storesEveryReadingOfALongCheckIn(DataSource database) throws SQLException {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        ObjectNode tree = Api.MAPPER.valueToTree(House.pass(tag, model));
        for (JsonNode measurement : tree.get("measurements")) {
            ArrayNode readings = ((ObjectNode) measurement.get("judgement")).putArray("readings");
            String point = measurement.get("judgement").get("testPointCode").asString();
            for (int i = 0; i < MANY_READINGS; i++) {
                readings.addPOJO(
                        new Reading(ReadingKind.WAY_LEVEL, point, point, 90, 0.1, null, 88.0, 92.0, ReadingState.OK));
            }
        }

        Api.Answer answer = api.put(ApiPaths.CHECK_INS + "/" + tree.get("id").asString(), tree);

        assertThat(answer.status()).as("%s", answer).isEqualTo(201);
        try (Connection connection = database.getConnection();
                PreparedStatement count =
                        connection.prepareStatement("select count(*) from trend_reading where tag = ?")) {
            count.setString(1, tag.value());
            try (ResultSet row = count.executeQuery()) {
                assertThat(row.next()).isTrue();
                assertThat(row.getInt(1)).isEqualTo(2 * MANY_READINGS);
            }
        }
    }

    @Test
    void saysWhatIsWrongWithABodyBeforeItSaysThatNobodyKnowsTheCabinet() {
        ObjectNode tree = Api.MAPPER.valueToTree(House.pass(House.newTag(), model));
        tree.put("faultPositionCode", "MF9");

        Api.Answer answer = api.put(ApiPaths.CHECK_INS + "/" + tree.get("id").asString(), tree);

        assertThat(answer.problem().type()).isEqualTo(ProblemTypes.BAD_FIELD);
        assertThat(answer.problem().errors()).extracting(e -> e.column()).containsExactly("faultPositionCode");
    }

    @Test
    void takesOneOfTwoCabinetsSentUnderTheSameIdAtOnce() throws Exception {
        AssetTag one = House.newCabinet(api, model, CabinetStatus.OUT);
        AssetTag other = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody first = House.pass(one, model);
        ObjectNode second = Api.MAPPER.valueToTree(House.pass(other, model));
        second.put("id", first.id().toString());

        List<Api.Answer> answers =
                atOnce(() -> House.put(api, first), () -> api.put(ApiPaths.CHECK_INS + "/" + first.id(), second));

        assertThat(answers).extracting(Api.Answer::status).containsExactlyInAnyOrder(201, 409);
        assertThat(List.of(status(one), status(other)))
                .containsExactlyInAnyOrder(CabinetStatus.READY, CabinetStatus.OUT);
    }

    @Test
    void namesEveryWrongFieldAtOnce() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        ObjectNode tree = Api.MAPPER.valueToTree(House.checkIn(tag, model, null, Verdict.FAIL, Route.SHELF, null));
        tree.put("finishedAt", "2026-03-14T01:00:00Z");
        tree.set("visualDamage", Api.MAPPER.valueToTree(Set.of(VisualItem.RIGGING)));
        tree.put("faultPositionCode", "MF9");

        Api.Answer answer = api.put(ApiPaths.CHECK_INS + "/" + tree.get("id").asString(), tree);

        assertThat(answer.problem().type()).isEqualTo(ProblemTypes.BAD_FIELD);
        assertThat(answer.problem().errors())
                .extracting(e -> e.column())
                .containsExactlyInAnyOrder("finishedAt", "route", "route", "faultPositionCode");
        assertThat(status(tag)).isEqualTo(CabinetStatus.OUT);
    }
}
