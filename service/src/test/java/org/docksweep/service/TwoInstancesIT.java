package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.CheckInReceipt;
import org.docksweep.contract.StockMoveBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartKind;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two running services on one PostgreSQL database, pushed at the same rows at the same moment. */
class TwoInstancesIT {
    private static final int ROUNDS = 40;
    private static final int SENDERS = 8;

    @TempDir
    static Path folder;

    private static RunningService.Instance first;
    private static RunningService.Instance second;
    private static ExecutorService senders;

    /** Once for all: every test has a model of its own and counts its own rows. */
    @BeforeAll
    static void start() {
        senders = Executors.newFixedThreadPool(SENDERS);
        PostgresServer.required();
        first = RunningService.Instance.on(Engine.POSTGRESQL, folder);
        second = RunningService.Instance.on(Engine.POSTGRESQL, folder);
    }

    @AfterAll
    static void stop() {
        senders.shutdownNow();
        for (RunningService.Instance instance : new RunningService.Instance[] {first, second}) {
            if (instance != null) {
                instance.close();
            }
        }
    }

    /** Sends all bodies at once, in turn to the one and the other service. */
    private static List<Api.Answer> atOnce(List<CheckInBody> bodies) throws Exception {
        List<Callable<Api.Answer>> calls = new ArrayList<>();
        for (int i = 0; i < bodies.size(); i++) {
            Api api = (i % 2 == 0 ? first : second).api();
            CheckInBody body = bodies.get(i);
            calls.add(() -> House.put(api, body));
        }
        return sendAtOnce(calls);
    }

    private static List<Api.Answer> sendAtOnce(List<Callable<Api.Answer>> calls) throws Exception {
        CountDownLatch go = new CountDownLatch(1);
        List<Future<Api.Answer>> futures = new ArrayList<>();
        for (Callable<Api.Answer> call : calls) {
            Callable<Api.Answer> send = () -> {
                go.await();
                return call.call();
            };
            futures.add(senders.submit(send));
        }
        go.countDown();
        List<Api.Answer> answers = new ArrayList<>();
        for (Future<Api.Answer> future : futures) {
            answers.add(future.get());
        }
        return answers;
    }

    @Test
    void storesACheckInSentToBothOnceAndAnswersAllTheSame() throws Exception {
        String model = House.newModel(first.api());
        int created = 0;
        int repeated = 0;
        for (int round = 0; round < ROUNDS; round++) {
            AssetTag tag = House.newCabinet(first.api(), model, CabinetStatus.OUT);
            CheckInBody body = House.fail(tag, model, House.newCode());
            List<Api.Answer> answers = atOnce(java.util.Collections.nCopies(SENDERS, body));
            assertThat(answers)
                    .allSatisfy(a -> assertThat(a.status()).as("%s", a).isIn(200, 201));
            assertThat(answers.stream().map(a -> a.as(CheckInReceipt.class)).distinct())
                    .hasSize(1);
            created += (int) answers.stream().filter(a -> a.status() == 201).count();
            repeated += (int) answers.stream().filter(a -> a.status() == 200).count();
        }
        assertThat(created).isEqualTo(ROUNDS);
        assertThat(repeated).isEqualTo(ROUNDS * (SENDERS - 1));
        assertThat(count("select count(*) from check_in where model_code = '" + model + "'"))
                .isEqualTo(ROUNDS);
        assertThat(count("select count(*) from measurement where check_in_id in (select id from check_in"
                        + " where model_code = '" + model + "')"))
                .isEqualTo(2L * ROUNDS);
        assertThat(count("select count(*) from bench_job where " + ofModel(model)))
                .isEqualTo(ROUNDS);
        assertThat(count("select count(*) from history_event where kind = 'CHECKED_IN' and " + ofModel(model)))
                .isEqualTo(3L * ROUNDS);
        System.out.println("two instances, same check-in: " + ROUNDS + " check-ins sent " + SENDERS + " times each, "
                + created + " created, " + repeated + " repeated, 0 doubled, 0 lost");
    }

    @Test
    void opensOneJobForACabinetThatFailsAtBoth() throws Exception {
        String model = House.newModel(first.api());
        int opened = 0;
        int joined = 0;
        for (int round = 0; round < ROUNDS; round++) {
            AssetTag tag = House.newCabinet(first.api(), model, CabinetStatus.OUT);
            List<CheckInBody> bodies = new ArrayList<>();
            for (int i = 0; i < SENDERS; i++) {
                bodies.add(House.fail(tag, model, House.newCode()));
            }
            List<Api.Answer> answers = atOnce(bodies);
            assertThat(answers)
                    .allSatisfy(a -> assertThat(a.status()).as("%s", a).isEqualTo(201));
            List<CheckInReceipt> receipts =
                    answers.stream().map(a -> a.as(CheckInReceipt.class)).toList();
            assertThat(receipts.stream().map(CheckInReceipt::jobCode).distinct())
                    .hasSize(1);
            opened += (int) receipts.stream().filter(r -> !r.joinedOpenJob()).count();
            joined += (int)
                    receipts.stream().filter(CheckInReceipt::joinedOpenJob).count();
        }
        assertThat(opened).isEqualTo(ROUNDS);
        assertThat(joined).isEqualTo(ROUNDS * (SENDERS - 1));
        String jobs = "bench_job where open_marker and " + ofModel(model);
        assertThat(count("select count(*) from " + jobs)).isEqualTo(ROUNDS);
        assertThat(count("select count(*) from bench_job_code where job_code in (select code from " + jobs + ")"))
                .isEqualTo((long) ROUNDS * SENDERS);
        assertThat(count("select count(*) from bench_job_check_in where job_code in (select code from " + jobs + ")"))
                .isEqualTo((long) ROUNDS * SENDERS);
        System.out.println("two instances, same cabinet: " + ROUNDS * SENDERS + " failing check-ins of " + ROUNDS
                + " cabinets, " + opened + " jobs opened, " + joined + " joined, 0 second open jobs");
    }

    @Test
    void takesNoPieceTwiceWhenBothReachForTheSameStock() throws Exception {
        BenchDesk desk = BenchDesk.withJob(first.api());
        int taken = 0;
        int refused = 0;
        for (int round = 0; round < ROUNDS / 4; round++) {
            Part part = desk.part("R-" + round, PartKind.DIAPHRAGM, List.of("REED-1"), 8.0, false);
            desk.receive(part, SENDERS / 2);
            List<Callable<Api.Answer>> takes = new ArrayList<>();
            for (int i = 0; i < SENDERS; i++) {
                StockMoveBody body = new StockMoveBody(
                        UUID.randomUUID(),
                        part.number(),
                        House.NIGHT,
                        "Ines Duna",
                        StockMoveBody.Kind.SCRAPPED,
                        1,
                        List.of(),
                        null);
                Api api = (i % 2 == 0 ? first : second).api();
                takes.add(() -> api.put(ApiPaths.STOCK_MOVES + "/" + body.id(), body));
            }
            List<Integer> statuses =
                    sendAtOnce(takes).stream().map(Api.Answer::status).toList();
            assertThat(statuses).allMatch(s -> s == 201 || s == 409);
            taken += (int) statuses.stream().filter(s -> s == 201).count();
            refused += (int) statuses.stream().filter(s -> s == 409).count();
            assertThat(desk.inStock(part)).isZero();
        }
        assertThat(taken).isEqualTo(ROUNDS / 4 * SENDERS / 2);
        assertThat(refused).isEqualTo(ROUNDS / 4 * SENDERS / 2);
        System.out.println("two instances, same stock: " + (taken + refused) + " takes of " + taken + " pieces, "
                + taken + " taken, " + refused + " refused, 0 taken twice");
    }

    private static String ofModel(String model) {
        return "tag in (select tag from cabinet where model_code = '" + model + "')";
    }

    private static long count(String sql) throws Exception {
        try (Connection connection = Engine.POSTGRESQL.connect(folder);
                ResultSet result = connection.createStatement().executeQuery(sql)) {
            result.next();
            return result.getLong(1);
        }
    }
}
