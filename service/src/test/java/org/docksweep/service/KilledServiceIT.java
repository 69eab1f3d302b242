package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.sql.Connection;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Queue;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.docksweep.contract.CheckInBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/**
 * SIGKILL of the service while check-ins pour in, at seeded counts of acknowledged ones; {@code -Ddocksweep.kills=100} for
 * the long run. What was acknowledged is there afterwards; what was sent and not acknowledged is sent again, as a kiosk
 * does; everything is there once. Counted by plain SQL.
 */
class KilledServiceIT {
    private static final int KILLS = Integer.getInteger("docksweep.kills", 2);
    /** The engines killed on, and after so many minutes no more kills on one; for long runs only. */
    private static final List<Engine> ENGINES = Arrays.stream(
                    System.getProperty("docksweep.kills.engines", "H2,POSTGRESQL")
                            .split(","))
            .map(Engine::valueOf)
            .toList();

    private static final long WITHIN_MINUTES = Long.getLong("docksweep.kills.minutes", 600);

    private static final long KILL_SEED = 20260503;
    private static final int SENDERS = 4;
    private static final int CABINETS = 20;
    /** A kill falls after so many acknowledged check-ins of a round, and up to so many microseconds more. */
    private static final int MOST_BEFORE = 40;

    private static final int MOST_LATER_US = 20_000;
    private static final long PATIENCE_S = 300;

    @TempDir
    Path folder;

    private final Queue<CheckInBody> waiting = new ConcurrentLinkedQueue<>();
    private final Set<UUID> sent = ConcurrentHashMap.newKeySet();
    private final Set<UUID> acknowledged = ConcurrentHashMap.newKeySet();
    private final Queue<String> wrong = new ConcurrentLinkedQueue<>();
    private int inDoubt;
    private int kills;
    private volatile Process service;

    private Process start(Engine engine, Path portFile) throws IOException {
        Files.deleteIfExists(portFile);
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xmx256m"));
        command.addAll(quickest());
        command.addAll(List.of(
                "--server.port=0",
                "--docksweep.data-dir=" + folder,
                "--docksweep.port-file=" + portFile,
                "--docksweep.bootstrap-token=" + RunningService.MANAGER_TOKEN,
                "--logging.level.root=WARN"));
        command.addAll(engine.settings(folder));
        service = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        folder.resolve("service.log").toFile()))
                .start();
        return service;
    }

    /** As a house starts it, where the build took the jar apart and archived its classes; else from the class path. */
    private static List<String> quickest() throws IOException {
        Path classes = Path.of(DocksweepService.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .getPath());
        try (Stream<Path> folders = Files.list(classes.getParent())) {
            for (Path folder : folders.toList()) {
                Path archive = folder.resolve("classes.jsa");
                if (Files.isRegularFile(archive) && isNewer(archive, classes)) {
                    return List.of(
                            "-XX:SharedArchiveFile=" + archive,
                            "-Dspring.aot.enabled=true",
                            "-jar",
                            folder.resolve(folder.getFileName() + ".jar").toString());
                }
            }
        }
        return List.of(
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                DocksweepService.class.getName());
    }

    /** Else it is of a build before this one. */
    private static boolean isNewer(Path archive, Path classes) throws IOException {
        FileTime made = Files.getLastModifiedTime(archive);
        try (Stream<Path> files = Files.walk(classes)) {
            for (Path file : files.toList()) {
                if (Files.getLastModifiedTime(file).compareTo(made) > 0) {
                    return false;
                }
            }
        }
        return true;
    }

    private Api awaitReady(Process process, Path portFile) throws Exception {
        CountDownLatch never = new CountDownLatch(1);
        for (long i = 0; i < PATIENCE_S * 10 && !Files.exists(portFile); i++) {
            assertThat(process.isAlive())
                    .as("%s", Files.readString(folder.resolve("service.log")))
                    .isTrue();
            never.await(100, TimeUnit.MILLISECONDS);
        }
        return new Api(URI.create("http://127.0.0.1:" + Files.readString(portFile)), RunningService.MANAGER_TOKEN);
    }

    /** Until the service is gone; the last one until it has sent enough. */
    private void send(
            Api api, CountDownLatch enough, boolean untilGone, List<AssetTag> tags, String model, Random random) {
        while (untilGone || enough.getCount() > 0) {
            CheckInBody again = waiting.poll();
            CheckInBody body = again != null
                    ? again
                    : random.nextInt(4) == 0
                            ? House.fail(tags.get(random.nextInt(CABINETS)), model, House.newCode())
                            : House.pass(tags.get(random.nextInt(CABINETS)), model);
            sent.add(body.id());
            try {
                Api.Answer answer = House.put(api, body);
                if (answer.status() != 200 && answer.status() != 201) {
                    wrong.add(answer.toString());
                    return;
                }
                acknowledged.add(body.id());
                enough.countDown();
            } catch (UncheckedIOException e) {
                waiting.add(body);
                // A crowded machine may let a request wait too long; that is not the end of the service.
                if (!service.isAlive()) {
                    return;
                }
            }
        }
    }

    @ParameterizedTest
    @FieldSource("ENGINES")
    void losesAndDoublesNothing(Engine engine) throws Exception {
        Random random = new Random(KILL_SEED);
        Path portFile = folder.resolve("port");
        Process process = start(engine, portFile);
        List<AssetTag> tags = new ArrayList<>();
        try {
            Api first = awaitReady(process, portFile);
            String model = House.newModel(first);
            for (int i = 0; i < CABINETS; i++) {
                tags.add(House.newCabinet(first, model, CabinetStatus.OUT));
            }
            long until = System.nanoTime() + TimeUnit.MINUTES.toNanos(WITHIN_MINUTES);
            boolean last = false;
            while (!last) {
                Api api = awaitReady(process, portFile);
                last = kills == KILLS || System.nanoTime() > until;
                boolean goOn = !last;
                // The last round only sends again what was in doubt, and is stopped in good order.
                CountDownLatch enough =
                        new CountDownLatch(last ? Math.max(1, waiting.size()) : 1 + random.nextInt(MOST_BEFORE));
                List<Thread> senders = new ArrayList<>();
                for (int i = 0; i < (last ? 1 : SENDERS); i++) {
                    Random own = new Random(random.nextLong());
                    Thread sender = new Thread(() -> send(api, enough, goOn, tags, model, own), "sender");
                    sender.start();
                    senders.add(sender);
                }
                assertThat(enough.await(PATIENCE_S, TimeUnit.SECONDS))
                        .as(
                                "wrong answers %s; the service wrote: %s",
                                wrong, Files.readString(folder.resolve("service.log")))
                        .isTrue();
                if (!last) {
                    long moment = System.nanoTime() + 1_000L * random.nextInt(MOST_LATER_US);
                    while (System.nanoTime() < moment) {
                        Thread.onSpinWait();
                    }
                    process.destroyForcibly();
                    kills++;
                    assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
                }
                for (Thread sender : senders) {
                    sender.join();
                }
                inDoubt += waiting.size();
                if (!last) {
                    process = start(engine, portFile);
                }
            }
            process.destroy();
            assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
        } finally {
            process.destroyForcibly();
        }
        count(engine);
    }

    private void count(Engine engine) throws Exception {
        List<UUID> rows = new ArrayList<>();
        long measurements;
        long curves;
        long events;
        long openTwice;
        try (Connection connection = engine.connect(folder)) {
            try (ResultSet all = connection.createStatement().executeQuery("select id from check_in")) {
                while (all.next()) {
                    rows.add(all.getObject(1, UUID.class));
                }
            }
            measurements = number(connection, "select count(*) from measurement");
            curves = number(connection, "select count(*) from measurement_curve");
            events = number(connection, "select count(*) from history_event where kind = 'CHECKED_IN'");
            openTwice = number(
                    connection,
                    "select count(*) from (select tag from bench_job where open_marker group by tag having count(*) > 1) t");
        }
        Set<UUID> lost = new java.util.HashSet<>(acknowledged);
        rows.forEach(lost::remove);
        System.out.printf(
                "%s: %d kills, %d check-ins sent, %d acknowledged, %d in doubt and sent again, %d rows, %d lost%n",
                engine, kills, sent.size(), acknowledged.size(), inDoubt, rows.size(), lost.size());
        assertThat(wrong).isEmpty();
        assertThat(lost).isEmpty();
        assertThat(rows).doesNotHaveDuplicates();
        assertThat(acknowledged).containsExactlyInAnyOrderElementsOf(rows);
        assertThat(measurements).isEqualTo(2L * rows.size());
        assertThat(curves).isEqualTo(measurements);
        assertThat(events).isEqualTo(3L * rows.size());
        assertThat(openTwice).isZero();
    }

    private static long number(Connection connection, String sql) throws Exception {
        try (ResultSet result = connection.createStatement().executeQuery(sql)) {
            result.next();
            return result.getLong(1);
        }
    }
}
