package org.docksweep.kiosk.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * SIGKILL of the service at seeded instants of a night. What it acknowledged before must be in its database afterwards,
 * once; what it did not must have come later, once. Counted by plain SQL on the database file.
 */
class ServiceKillIT {
    private static final long NIGHT_SEED = 5;
    private static final long KILL_SEED = 20260502;
    private static final int KILLS = 10;
    /** A kill falls within this after a cabinet is scanned: during its sweep, or while it is being sent. */
    private static final int WITHIN_MS = 2500;

    private static final long PATIENCE_S = 180;

    @TempDir
    Path folder;

    private CompletableFuture<Void> restart = CompletableFuture.completedFuture(null);

    @Test
    void losesAndDoublesNothing() throws Exception {
        Path jar = Capability.serviceJar();
        Random random = new Random(KILL_SEED);
        Set<UUID> acknowledged;
        Set<UUID> recorded;
        try (DockNight night = PreparedHouse.night(
                new NightOptions(folder, NIGHT_SEED, jar, false), new PrintWriter(System.out, true))) {
            night.open();
            Map<Integer, Integer> killMsByCabinet = killMsByCabinet(random);
            night.takeTruckIn(index -> {
                Integer killMs = killMsByCabinet.get(index);
                if (killMs != null) {
                    awaitRestart();
                    restart = killAfter(night, killMs);
                }
            });
            awaitRestart();
            night.closeNight();
            acknowledged = new HashSet<>(night.acknowledged());
            recorded = night.recorded();
            assertThat(night.acknowledged()).as("acknowledged once").doesNotHaveDuplicates();
        }
        NightRows database = new NightRows(folder);
        List<UUID> rows = database.checkIns();
        Set<UUID> lost = new HashSet<>(acknowledged);
        rows.forEach(lost::remove);
        int doubled = rows.size() - new HashSet<>(rows).size();
        System.out.printf(
                "%d kills: %d check-ins recorded, %d acknowledged, %d rows, %d lost, %d doubled%n",
                KILLS, recorded.size(), acknowledged.size(), rows.size(), lost.size(), doubled);
        assertThat(lost).isEmpty();
        assertThat(rows).containsExactlyInAnyOrderElementsOf(recorded);
        assertThat(database.cabinetsCheckedInTwice())
                .as("cabinets checked in twice")
                .isZero();
        assertThat(database.benchCheckIns())
                .as("bench jobs of failing cabinets")
                .isEqualTo(database.benchJobs());
    }

    private static Map<Integer, Integer> killMsByCabinet(Random random) {
        List<Integer> cabinets = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            cabinets.add(i);
        }
        java.util.Collections.shuffle(cabinets, random);
        Map<Integer, Integer> instants = new TreeMap<>();
        cabinets.subList(0, KILLS).forEach(c -> instants.put(c, random.nextInt(WITHIN_MS)));
        return instants;
    }

    private static CompletableFuture<Void> killAfter(DockNight night, int killMs) {
        Executor later = CompletableFuture.delayedExecutor(killMs, TimeUnit.MILLISECONDS);
        return CompletableFuture.runAsync(
                () -> {
                    try {
                        night.killAndRestartService();
                    } catch (IOException e) {
                        throw new UncheckedIOException(e);
                    }
                },
                later);
    }

    private void awaitRestart() throws InterruptedException {
        try {
            restart.get(PATIENCE_S, TimeUnit.SECONDS);
        } catch (ExecutionException | java.util.concurrent.TimeoutException e) {
            throw new AssertionError("the service did not come back", e);
        }
    }
}
