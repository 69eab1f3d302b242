package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.KioskToken;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StartTest {
    /** One of every feature. */
    private static final List<String> FIRST_ASKED = List.of(
            ApiPaths.MODEL_BOOK,
            ApiPaths.CABINETS,
            ApiPaths.RETURN_LISTS,
            ApiPaths.DISPATCHES,
            ApiPaths.BENCH_JOBS,
            ApiPaths.PARTS,
            ApiPaths.PART_ORDERS,
            ApiPaths.LIMITS,
            ApiPaths.KIOSK_SNAPSHOT,
            ApiPaths.KIOSK_TOKENS,
            ApiPaths.PEOPLE,
            ApiPaths.AUDIT,
            ApiPaths.FLEET_STATUS,
            ApiPaths.BOARD_EVENTS,
            ApiPaths.RELIABILITY,
            ApiPaths.DRIFT_WATCH,
            ApiPaths.LEARNED_PRIORS,
            ApiPaths.DOCK_CONFUSION,
            ApiPaths.HEALTH);

    @TempDir
    Path folder;

    @Test
    void keepsEverythingOverARestartAndCountsByPlainSql() throws Exception {
        CheckInBody body;
        String model;
        List<AssetTag> out = new ArrayList<>();
        try (RunningService.Instance service = RunningService.Instance.in(folder)) {
            Api api = service.api();
            model = House.newModel(api);
            for (int i = 0; i < 4; i++) {
                out.add(House.newCabinet(api, model, CabinetStatus.OUT));
            }
            body = House.fail(House.newCabinet(api, model, CabinetStatus.OUT), model, House.newCode());
            assertThat(House.put(api, body).status()).isEqualTo(201);
        }
        assertThat(count("select count(*) from check_in where id = '" + body.id() + "'"))
                .isEqualTo(1);
        assertThat(count("select count(*) from measurement_curve")).isEqualTo(2);

        Path portFile = folder.resolve("run/port");
        try (RunningService.Instance service =
                RunningService.Instance.in(folder, "--docksweep.port-file=" + portFile)) {
            Api api = service.api();
            assertThat(Integer.parseInt(Files.readString(portFile))).isEqualTo(api.root.getPort());
            answersAllWhoComeFirst(api, out, model);
            assertThat(House.put(api, body).status()).isEqualTo(200);
            assertThat(api.get(ApiPaths.BENCH_JOBS + "/" + body.jobCode()).status())
                    .isEqualTo(200);
        }
        refusesASchemaOfAnotherHistory();
    }

    /** The migrations run beside everything else; what is wrong with them still ends the start. */
    private void refusesASchemaOfAnotherHistory() throws Exception {
        try (Connection connection = Engine.ofThisRun().connect(folder);
                Statement statement = connection.createStatement()) {
            assertThat(statement.executeUpdate(
                            "update \"flyway_schema_history\" set \"checksum\" = 1 where \"version\" = '1'"))
                    .isEqualTo(1);
        }
        Path portFile = folder.resolve("run/never");
        assertThatThrownBy(() -> RunningService.Instance.in(folder, "--docksweep.port-file=" + portFile)
                        .close())
                .hasMessageContaining("checksum mismatch for migration version 1");
        assertThat(portFile).doesNotExist();
    }

    /** Everything is made when it is first asked something: by many at once, beside what makes the rest ready. */
    private static void answersAllWhoComeFirst(Api api, List<AssetTag> out, String model) throws Exception {
        List<Callable<Api.Answer>> requests = new ArrayList<>();
        for (AssetTag tag : out) {
            CheckInBody pass = House.pass(tag, model);
            CheckInBody fail = House.fail(tag, model, House.newCode());
            requests.add(() -> House.put(api, pass));
            requests.add(() -> House.put(api, fail));
            requests.add(() -> api.get(ApiPaths.CABINETS + "/" + tag + ApiPaths.HISTORY));
        }
        for (String path : FIRST_ASKED) {
            requests.add(() -> api.get(path));
        }
        CyclicBarrier together = new CyclicBarrier(requests.size());
        ExecutorService threads = Executors.newFixedThreadPool(requests.size());
        try {
            List<Future<Api.Answer>> answers = new ArrayList<>();
            for (Callable<Api.Answer> request : requests) {
                answers.add(threads.submit(() -> {
                    together.await(60, TimeUnit.SECONDS);
                    return request.call();
                }));
            }
            for (Future<Api.Answer> answer : answers) {
                assertThat(answer.get(120, TimeUnit.SECONDS).status())
                        .as(answer.get()::toString)
                        .isIn(200, 201);
            }
        } finally {
            threads.shutdownNow();
        }
    }

    private long count(String sql) throws Exception {
        try (Connection connection = Engine.ofThisRun().connect(folder);
                ResultSet result = connection.createStatement().executeQuery(sql)) {
            result.next();
            return result.getLong(1);
        }
    }

    @Test
    void printsAManagerCodeThatIssuesTheFirstTokenAndThenEnds() {
        PrintStream console = System.out;
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
        try (RunningService.Instance service = RunningService.Instance.in(folder, "--docksweep.bootstrap-token=")) {
            System.setOut(console);
            Matcher code =
                    Pattern.compile("One-time manager code: (\\S+)").matcher(printed.toString(StandardCharsets.UTF_8));
            assertThat(code.find()).isTrue();
            Api first = service.api().as(code.group(1));

            assertThat(first.get(ApiPaths.CABINETS).status()).isEqualTo(403);
            assertThat(first.post(ApiPaths.KIOSK_TOKENS, new KioskToken.Order("dock", KioskToken.Role.DOCK))
                            .status())
                    .isEqualTo(400);
            KioskToken manager = first.post(
                            ApiPaths.KIOSK_TOKENS, new KioskToken.Order("office", KioskToken.Role.MANAGER))
                    .as(KioskToken.class);

            assertThat(first.post(ApiPaths.KIOSK_TOKENS, new KioskToken.Order("again", KioskToken.Role.MANAGER))
                            .status())
                    .isEqualTo(401);
            assertThat(first.as(manager.token()).get(ApiPaths.CABINETS).status())
                    .isEqualTo(200);
            assertThat(first.as(RunningService.MANAGER_TOKEN)
                            .get(ApiPaths.CABINETS)
                            .status())
                    .isEqualTo(401);
        } finally {
            System.setOut(console);
        }
    }

    @Test
    void staysClosedBeyondLoopbackWithoutTls() {
        assertThatThrownBy(() -> RunningService.Instance.in(folder, "--server.address=0.0.0.0")
                        .close())
                .rootCause()
                .hasMessageContaining("without TLS");
    }

    @Test
    void refusesAShortBootstrapToken() {
        assertThatThrownBy(() -> RunningService.Instance.in(folder, "--docksweep.bootstrap-token=short")
                        .close())
                .rootCause()
                .hasMessageContaining("at least 32 characters");
    }
}
