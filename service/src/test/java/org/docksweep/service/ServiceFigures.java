package org.docksweep.service;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntFunction;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;

/**
 * Measures the service on a large fleet and prints the figures: {@code ServiceFigures FOLDER CABINETS MEASUREMENTS}.
 * Service and caller share one process and its heap. A folder that holds the fleet already is measured as it is.
 */
final class ServiceFigures {
    private static final int LOOKUPS = 2_000;
    private static final int CHECK_INS = 400;
    private static final int PER_SECOND = 100;
    private static final int SENDERS = 4;

    private ServiceFigures() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]).toAbsolutePath();
        int cabinets = Integer.parseInt(arguments[1]);
        int measurements = Integer.parseInt(arguments[2]);
        boolean fresh = !Files.exists(folder.resolve("figures-built"));
        Files.createDirectories(folder);
        say(
                "database %s, %d cabinets, %d measurements, load %.1f",
                Engine.ofThisRun(),
                cabinets,
                measurements,
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
        if (fresh) {
            try (RunningService.Instance service = RunningService.Instance.in(folder)) {
                say(
                        "import of %d cabinets by CSV: %.1f s",
                        cabinets, LargeHouse.importCabinets(service.api(), cabinets));
                say("past inserted in %.1f s", LargeHouse.insertPast(service.database(), cabinets, measurements));
            }
            Files.createFile(folder.resolve("figures-built"));
        }
        long begun = System.nanoTime();
        try (RunningService.Instance service = RunningService.Instance.in(folder)) {
            say("start on that fleet: %.1f s", (System.nanoTime() - begun) / 1e9);
            reads(service.api(), cabinets);
            writes(service, cabinets);
            System.gc();
            say(
                    "heap in use after a collection: %d MB of at most %d MB",
                    ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() >> 20,
                    Runtime.getRuntime().maxMemory() >> 20);
        }
    }

    private static void reads(Api api, int cabinets) {
        SplittableRandom random = new SplittableRandom(7);
        IntFunction<String> cabinet = i -> ApiPaths.CABINETS + "/" + LargeHouse.tag(1 + random.nextInt(cabinets));
        timed("cabinet by tag", LOOKUPS, i -> api.get(cabinet.apply(i)));
        timed("history of a cabinet", LOOKUPS, i -> api.get(cabinet.apply(i) + ApiPaths.HISTORY));
        timed(
                "page of 100 cabinets",
                200,
                i -> api.get(ApiPaths.CABINETS + "?after=" + LargeHouse.tag(1 + random.nextInt(cabinets))));
        timed("fleet status as JSON", 10, i -> api.get(ApiPaths.FLEET_STATUS));
        timed("fleet status as PDF", 10, i -> api.get(ApiPaths.FLEET_STATUS, "Accept", "application/pdf"));
        timed("kiosk snapshot", 3, i -> api.get(ApiPaths.KIOSK_SNAPSHOT));
    }

    private static void timed(String what, int times, IntFunction<Api.Answer> call) {
        List<Double> ms = new ArrayList<>();
        for (int i = 0; i < times + times / 10; i++) {
            long begun = System.nanoTime();
            Api.Answer answer = call.apply(i);
            if (answer.status() >= 300) {
                throw new IllegalStateException(what + ": " + answer);
            }
            // The first tenth warms up.
            if (i >= times / 10) {
                ms.add((System.nanoTime() - begun) / 1e6);
            }
        }
        say("%s: %s of %d", what, percentiles(ms), times);
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
        Api api = service.api();
        // Warm both ways before either is measured.
        http(api, cabinets, random, CHECK_INS / 2);
        raw(service, cabinets, random, CHECK_INS / 2);
        double raw = raw(service, cabinets, random, CHECK_INS);
        double http = http(api, cabinets, random, CHECK_INS);
        say(
                "check-ins per second, one sender: %.0f by plain inserts of the same rows, %.0f through the service: %.2f",
                raw, http, http / raw);
        say("check-ins per second, %d senders: %.0f through the service", SENDERS, parallel(api, cabinets, random));
        say("at %d check-ins a second: %s", PER_SECOND, paced(api, cabinets, random));
    }

    private static CheckInBody next(int cabinets, SplittableRandom random) {
        return House.pass(LargeHouse.tag(1 + random.nextInt(cabinets)), LargeHouse.MODEL);
    }

    /** Every check-in as durable as the service's: committed and forced to the disk. */
    private static double raw(RunningService.Instance service, int cabinets, SplittableRandom random, int count)
            throws Exception {
        List<CheckInBody> bodies = bodies(cabinets, random, count);
        try (Connection connection = service.database().getConnection();
                LargeHouse.RawCheckIn raw = new LargeHouse.RawCheckIn(connection);
                Statement force = connection.createStatement()) {
            connection.setAutoCommit(false);
            long begun = System.nanoTime();
            for (CheckInBody body : bodies) {
                raw.add(
                        body,
                        Instant.now(),
                        UUID.randomUUID(),
                        body.measurements().size());
                raw.flush();
                connection.commit();
                if (Engine.ofThisRun() == Engine.H2) {
                    force.execute("checkpoint sync");
                }
            }
            return count / ((System.nanoTime() - begun) / 1e9);
        }
    }

    private static List<CheckInBody> bodies(int cabinets, SplittableRandom random, int count) {
        List<CheckInBody> bodies = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            bodies.add(next(cabinets, random));
        }
        return bodies;
    }

    private static void send(Api api, CheckInBody body) {
        Api.Answer answer = House.put(api, body);
        if (answer.status() != 201) {
            throw new IllegalStateException(answer.toString());
        }
    }

    private static double http(Api api, int cabinets, SplittableRandom random, int count) {
        List<CheckInBody> bodies = bodies(cabinets, random, count);
        long begun = System.nanoTime();
        bodies.forEach(body -> send(api, body));
        return count / ((System.nanoTime() - begun) / 1e9);
    }

    private static double parallel(Api api, int cabinets, SplittableRandom random) throws InterruptedException {
        ConcurrentLinkedQueue<CheckInBody> bodies =
                new ConcurrentLinkedQueue<>(bodies(cabinets, random, 2 * CHECK_INS));
        AtomicInteger done = new AtomicInteger();
        List<Thread> senders = new ArrayList<>();
        long begun = System.nanoTime();
        for (int i = 0; i < SENDERS; i++) {
            Thread sender = new Thread(() -> {
                for (CheckInBody body = bodies.poll(); body != null; body = bodies.poll()) {
                    send(api, body);
                    done.incrementAndGet();
                }
            });
            sender.start();
            senders.add(sender);
        }
        for (Thread sender : senders) {
            sender.join();
        }
        return done.get() / ((System.nanoTime() - begun) / 1e9);
    }

    /** Sent at their times whatever became of those before; the wait for a free sender counts. */
    private static String paced(Api api, int cabinets, SplittableRandom random) throws InterruptedException {
        int count = 10 * PER_SECOND;
        List<CheckInBody> bodies = bodies(cabinets, random, count);
        List<Double> ms = Collections.synchronizedList(new ArrayList<>());
        AtomicInteger failed = new AtomicInteger();
        CountDownLatch all = new CountDownLatch(count);
        ScheduledExecutorService senders = Executors.newScheduledThreadPool(32);
        long begun = System.nanoTime();
        for (int i = 0; i < count; i++) {
            CheckInBody body = bodies.get(i);
            long due = begun + i * 1_000_000_000L / PER_SECOND;
            senders.schedule(
                    () -> {
                        try {
                            if (House.put(api, body).status() != 201) {
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
