package org.docksweep.service;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Queue;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntFunction;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;
import org.docksweep.service.LoadCaller.Written;

/**
 * Measures the service on a large fleet and prints the figures: {@code ServiceFigures FOLDER CABINETS MEASUREMENTS}, with
 * {@code snapshot}, {@code reads}, {@code writes} or {@code paced} behind it only these. Service and caller share one
 * process and its heap. A folder that holds the fleet already (each engine needs one of its own) is measured as it is.
 */
final class ServiceFigures {
    private static final int LOOKUPS = 2_000;
    private static final int CHECK_INS = 1_000;
    private static final int WARM_UP = Integer.getInteger("docksweep.figures.warm-up", 10_000);
    private static final int ROUNDS = 5;
    private static final int PER_SECOND = 100;

    /** Long enough to meet the housekeeping of the database many times. */
    private static final int PACED_S = 30;

    private static final int SENDERS = 4;
    private static final int CREATED = 201;
    private static final List<String> ROWS = new ArrayList<>();

    private ServiceFigures() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]).toAbsolutePath();
        int cabinets = Integer.parseInt(arguments[1]);
        int measurements = Integer.parseInt(arguments[2]);
        System.setProperty(PostgresServer.DURABLE, "true");
        Files.createDirectories(folder);
        System.setProperty(PostgresServer.FOLDER, folder.resolve("postgresql").toString());
        boolean fresh = !Files.exists(folder.resolve("figures-built"));
        say(
                "database %s, %d cabinets, %d measurements, load %.1f",
                Engine.ofThisRun(),
                cabinets,
                measurements,
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
        if (fresh) {
            try (RunningService.Instance service = RunningService.Instance.in(folder)) {
                row(
                        "import of " + cabinets + " cabinets by CSV",
                        seconds(LargeHouse.importCabinets(service.api(), cabinets)),
                        "");
                row(
                        "past inserted, " + measurements + " measurements",
                        seconds(LargeHouse.insertPast(service.database(), cabinets, measurements)),
                        "");
            }
            Files.createFile(folder.resolve("figures-built"));
        }
        long begun = System.nanoTime();
        try (RunningService.Instance service = RunningService.Instance.in(folder)) {
            row("start on that fleet, in this process", seconds((System.nanoTime() - begun) / 1e9), "");
            String only = arguments.length < 4 ? "" : arguments[3];
            switch (only) {
                case "" -> {
                    snapshot(service.api());
                    reads(service.api(), cabinets);
                    writes(service, cabinets);
                    paced(service, cabinets);
                }
                case "snapshot" -> snapshot(service.api());
                case "reads" -> reads(service.api(), cabinets);
                case "writes" -> writes(service, cabinets);
                case "paced" -> paced(service, cabinets);
                default ->
                    throw new IllegalArgumentException(
                            "expected snapshot, reads, writes or paced, but this is " + only);
            }
            System.gc();
            row(
                    "heap in use after a collection",
                    String.format(
                            Locale.ROOT,
                            "%d MB of at most %d MB",
                            ManagementFactory.getMemoryMXBean()
                                            .getHeapMemoryUsage()
                                            .getUsed()
                                    >> 20,
                            Runtime.getRuntime().maxMemory() >> 20),
                    "at most 512 MB");
        }
        System.out.println("\n| what | figure | wanted |\n| --- | --- | --- |");
        ROWS.forEach(System.out::println);
    }

    private static String seconds(double seconds) {
        return String.format(Locale.ROOT, "%.1f s", seconds);
    }

    /** Said at once, and once more in the table at the end. */
    private static void row(String what, String figure, String wanted) {
        say("%s: %s", what, figure);
        ROWS.add("| " + what + " | " + figure + " | " + wanted + " |");
    }

    private static void reads(Api api, int cabinets) {
        SplittableRandom random = new SplittableRandom(7);
        IntFunction<String> cabinet = i -> ApiPaths.CABINETS + "/" + LargeHouse.tag(1 + random.nextInt(cabinets));
        timed("cabinet by tag", LOOKUPS, "p99 at most 20 ms", i -> api.get(cabinet.apply(i)));
        timed("history of a cabinet", LOOKUPS, "p99 at most 20 ms", i -> api.get(cabinet.apply(i) + ApiPaths.HISTORY));
        timed(
                "page of 100 cabinets",
                200,
                "",
                i -> api.get(ApiPaths.CABINETS + "?after=" + LargeHouse.tag(1 + random.nextInt(cabinets))));
        timed("fleet status as JSON", 10, "at most 3 s", i -> api.get(ApiPaths.FLEET_STATUS));
        timed(
                "fleet status as PDF",
                10,
                "at most 3 s",
                i -> api.get(ApiPaths.FLEET_STATUS, "Accept", "application/pdf"));
        timed("kiosk snapshot, later", 10, "", i -> api.get(ApiPaths.KIOSK_SNAPSHOT));
    }

    /** The first one counts the returns of every driver model; what it counted holds for a day. */
    private static void snapshot(Api api) {
        long begun = System.nanoTime();
        Api.Answer answer = api.get(ApiPaths.KIOSK_SNAPSHOT);
        if (answer.status() != 200) {
            throw new IllegalStateException("kiosk snapshot: " + answer);
        }
        row("kiosk snapshot, the first of a day", seconds((System.nanoTime() - begun) / 1e9), "");
    }

    private static void timed(String what, int times, String wanted, IntFunction<Api.Answer> call) {
        List<Double> ms = new ArrayList<>();
        for (int i = 0; i < 2 * times; i++) {
            long begun = System.nanoTime();
            Api.Answer answer = call.apply(i);
            if (answer.status() >= 300) {
                throw new IllegalStateException(what + ": " + answer);
            }
            // As a service that runs for a while: what Java does the first time is not asked about.
            if (i >= times) {
                ms.add((System.nanoTime() - begun) / 1e6);
            }
        }
        row(what, percentiles(ms) + " of " + times, wanted);
    }

    private static String percentiles(List<Double> ms) {
        Collections.sort(ms);
        return String.format(
                Locale.ROOT,
                "p50 %.1f ms, p99 %.1f ms, most %.1f ms",
                ms.get(ms.size() / 2),
                ms.get(Math.min(ms.size() - 1, (int) (ms.size() * 0.99))),
                ms.get(ms.size() - 1));
    }

    private static void writes(RunningService.Instance service, int cabinets) throws Exception {
        SplittableRandom random = new SplittableRandom(11);
        LoadCaller caller = service.api().loadCaller();
        // Warm both ways before either is measured: a service runs for weeks.
        http(caller, cabinets, random, WARM_UP);
        raw(service, cabinets, random, WARM_UP);
        // In turn, so that what else the machine does meets both alike.
        List<Double> raw = new ArrayList<>();
        List<Double> http = new ArrayList<>();
        ProcessorTime rawTime = ProcessorTime.NONE;
        ProcessorTime httpTime = ProcessorTime.NONE;
        for (int i = 0; i < ROUNDS; i++) {
            ProcessorTime begun = ProcessorTime.now();
            raw.add(raw(service, cabinets, random, CHECK_INS));
            ProcessorTime between = ProcessorTime.now();
            http.add(http(caller, cabinets, random, CHECK_INS));
            rawTime = rawTime.and(between.since(begun));
            httpTime = httpTime.and(ProcessorTime.now().since(between));
        }
        row("processor time of a check-in by plain inserts", rawTime.of(ROUNDS * CHECK_INS), "");
        row("the same through the service", httpTime.of(ROUNDS * CHECK_INS), "");
        row(
                "check-ins per second, one sender",
                String.format(
                        Locale.ROOT,
                        "%.0f by plain inserts of the same rows, %.0f through the service: %.2f (medians of %d)",
                        median(raw),
                        median(http),
                        median(http) / median(raw),
                        ROUNDS),
                "at least 0.5");
        raw.clear();
        http.clear();
        for (int i = 0; i < ROUNDS; i++) {
            raw.add(parallel(bodies(cabinets, random, CHECK_INS), waiting -> insertAll(service, waiting)));
            http.add(parallel(bodies(cabinets, random, CHECK_INS), waiting -> sendAll(caller, waiting)));
        }
        row(
                "check-ins per second, " + SENDERS + " senders",
                String.format(
                        Locale.ROOT,
                        "%.0f by plain inserts of the same rows, %.0f through the service: %.2f (medians of %d)",
                        median(raw),
                        median(http),
                        median(http) / median(raw),
                        ROUNDS),
                "at least 0.5");
    }

    private static void paced(RunningService.Instance service, int cabinets) throws InterruptedException, SQLException {
        SplittableRandom random = new SplittableRandom(13);
        http(service.api().loadCaller(), cabinets, random, WARM_UP);
        long before = writtenBytes(service);
        ProcessorTime begun = ProcessorTime.now();
        row(
                "at " + PER_SECOND + " check-ins a second for " + PACED_S + " s",
                atTheirTimes(service.api().loadCaller(), cabinets, random),
                "p99 at most 50 ms");
        row(
                "meanwhile, per check-in",
                String.format(
                        Locale.ROOT,
                        "%d kB written, processor time %s",
                        (writtenBytes(service) - before) / (1024 * PACED_S * PER_SECOND),
                        ProcessorTime.now().since(begun).of(PACED_S * PER_SECOND)),
                "");
    }

    /** What has to reach the disk before an answer: of H2 its file, of PostgreSQL its log. */
    private static long writtenBytes(RunningService.Instance service) throws SQLException {
        String sql = Engine.ofThisRun() == Engine.H2
                ? "select cast(setting_value as bigint) from information_schema.settings"
                        + " where setting_name = 'info.FILE_WRITE_BYTES'"
                : "select cast(pg_current_wal_lsn() - pg_lsn('0/0') as bigint)";
        try (Connection connection = service.database().getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        }
    }

    private static double median(List<Double> values) {
        return values.stream().sorted().toList().get(values.size() / 2);
    }

    private static CheckInBody next(int cabinets, SplittableRandom random) {
        return LargeHouse.pass(LargeHouse.tag(1 + random.nextInt(cabinets)), random);
    }

    private static double raw(RunningService.Instance service, int cabinets, SplittableRandom random, int count)
            throws Exception {
        Queue<Written> bodies = new ConcurrentLinkedQueue<>(bodies(cabinets, random, count));
        long begun = System.nanoTime();
        insertAll(service, bodies);
        return count / ((System.nanoTime() - begun) / 1e9);
    }

    /** Every check-in as durable as the service's: committed and forced to the disk before the next. */
    private static void insertAll(RunningService.Instance service, Queue<Written> waiting) throws SQLException {
        try (Connection connection = service.database().getConnection();
                LargeHouse.RawCheckIn raw = new LargeHouse.RawCheckIn(connection);
                Statement force = connection.createStatement()) {
            connection.setAutoCommit(false);
            for (Written next = waiting.poll(); next != null; next = waiting.poll()) {
                raw.addAsSent(next.body());
                raw.flush();
                connection.commit();
                if (Engine.ofThisRun() == Engine.H2) {
                    force.execute("checkpoint sync");
                }
            }
        }
    }

    private static List<Written> bodies(int cabinets, SplittableRandom random, int count) {
        List<Written> bodies = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            bodies.add(Written.of(next(cabinets, random)));
        }
        return bodies;
    }

    private static double http(LoadCaller caller, int cabinets, SplittableRandom random, int count) {
        List<Written> bodies = bodies(cabinets, random, count);
        long begun = System.nanoTime();
        bodies.forEach(caller::create);
        return count / ((System.nanoTime() - begun) / 1e9);
    }

    private static void sendAll(LoadCaller caller, Queue<Written> waiting) {
        for (Written next = waiting.poll(); next != null; next = waiting.poll()) {
            caller.create(next);
        }
    }

    /** Takes what waits until there is no more. */
    private interface Sender {
        void empty(Queue<Written> waiting) throws SQLException;
    }

    private static double parallel(List<Written> bodies, Sender sender)
            throws InterruptedException, ExecutionException {
        Queue<Written> waiting = new ConcurrentLinkedQueue<>(bodies);
        ExecutorService senders = Executors.newFixedThreadPool(SENDERS);
        long begun = System.nanoTime();
        List<Future<?>> running = new ArrayList<>();
        for (int i = 0; i < SENDERS; i++) {
            Callable<Void> empty = () -> {
                sender.empty(waiting);
                return null;
            };
            running.add(senders.submit(empty));
        }
        for (Future<?> one : running) {
            one.get();
        }
        senders.shutdown();
        return bodies.size() / ((System.nanoTime() - begun) / 1e9);
    }

    /** Sent at their times whatever became of those before; the wait for a free sender counts. */
    private static String atTheirTimes(LoadCaller caller, int cabinets, SplittableRandom random)
            throws InterruptedException {
        int count = PACED_S * PER_SECOND;
        List<Written> bodies = bodies(cabinets, random, count);
        List<Double> ms = Collections.synchronizedList(new ArrayList<>());
        AtomicInteger failed = new AtomicInteger();
        CountDownLatch all = new CountDownLatch(count);
        ScheduledExecutorService senders = Executors.newScheduledThreadPool(32);
        long begun = System.nanoTime();
        for (int i = 0; i < count; i++) {
            Written body = bodies.get(i);
            long due = begun + i * 1_000_000_000L / PER_SECOND;
            senders.schedule(
                    () -> {
                        try {
                            if (caller.put(body) != CREATED) {
                                failed.incrementAndGet();
                            }
                            ms.add((System.nanoTime() - due) / 1e6);
                        } finally {
                            all.countDown();
                        }
                    },
                    Math.max(0, due - System.nanoTime()),
                    TimeUnit.NANOSECONDS);
        }
        all.await();
        senders.shutdown();
        return percentiles(ms) + ", " + failed + " of " + count + " failed";
    }

    private static void say(String text, Object... values) {
        System.out.printf(Locale.ROOT, text + "%n", values);
    }
}
