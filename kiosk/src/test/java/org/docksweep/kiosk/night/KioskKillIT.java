package org.docksweep.kiosk.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.docksweep.kiosk.service.ServiceClient;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * SIGKILL of the kiosk at seeded instants of a night, while the service goes on. Whatever cabinet the screen had called
 * done before must be at the service in the end, once. Ten kills by default; {@code -Ddocksweep.kills=200} takes as
 * many nights of one house as that needs, some fifteen kills each, from {@code -Ddocksweep.first-night=5} on, so that a long run can be
 * cut in pieces: the number of a night decides the instants. The first kiosk of all takes one cabinet in and ends by itself, which
 * leaves the archive of classes that all others start from, as a packaged kiosk does.
 */
class KioskKillIT {
    private static final long FIRST_NIGHT = Long.getLong("docksweep.first-night", 5);
    private static final long HOUSE = Long.getLong("docksweep.house", 5);
    private static final long KILL_SEED = 20261126;
    private static final int KILLS = Integer.getInteger("docksweep.kills", 10);
    /** A kill waits for fewer cabinets than this. */
    private static final int DONE_BEFORE = 3;
    /** Waited for, and called done in the moment before the kill; a kiosk with fewer left might end by itself. */
    private static final int AT_MOST_PER_KILL = 7;
    /** A kill falls within this after the kiosk is up or called a cabinet done: in a scan, a sweep, a write, a sending. */
    private static final int WITHIN_MS = 1200;

    private static final long PATIENCE_S = 240;
    /** What a Unix tells of a process ended by signal 9. */
    private static final int SIGKILLED = 128 + 9;

    @TempDir
    Path folder;

    private PreparedStart kiosks;
    private boolean archived;

    @Test
    void losesAndDoublesNothing() throws Exception {
        Path jar = Capability.serviceJar();
        kiosks = new PreparedStart(folder.resolve("start"));
        int left = KILLS;
        for (long number = FIRST_NIGHT; left > 0; number++) {
            left -= killedNight(folder.resolve("night-" + number), number, jar, left);
        }
    }

    /** As many kills as are left, while there are cabinets for another one. */
    private int killedNight(Path nightFolder, long number, Path jar, int kills) throws Exception {
        Random random = new Random(KILL_SEED + number);
        StringWriter told = new StringWriter();
        Set<String> calledDone = new HashSet<>();
        int cabinets;
        int onDisk;
        int killed = 0;
        try (DockNight night =
                PreparedHouse.night(new NightOptions(nightFolder, HOUSE, jar, false), new PrintWriter(told))) {
            night.open();
            cabinets = night.house().arrivals().size();
            URI service = night.leaveDock();
            if (!archived) {
                end(start(kiosks::archiving, nightFolder, service, night.token(), 0, 1), calledDone);
                archived = true;
            }
            for (int kill = 0; kill < kills && calledDone.size() < cabinets - AT_MOST_PER_KILL; kill++) {
                Process kiosk =
                        start(kiosks::program, nightFolder, service, night.token(), calledDone.size(), cabinets);
                Kill instant = new Kill(random.nextInt(DONE_BEFORE), random.nextInt(WITHIN_MS));
                read(kiosk, calledDone, instant, "kill " + kill + " of night " + number);
                assertThat(kiosk.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
                assertThat(kiosk.exitValue()).as("killed, not ended").isEqualTo(SIGKILLED);
                killed++;
            }
            onDisk = calledDone.size();
            end(start(kiosks::program, nightFolder, service, night.token(), onDisk, cabinets), calledDone);
        }
        NightRows rows = new NightRows(nightFolder);
        List<UUID> ids = rows.checkIns();
        Set<String> lost = new HashSet<>(calledDone);
        ids.forEach(id -> lost.remove(id.toString()));
        int doubled = ids.size() - new HashSet<>(ids).size() + rows.cabinetsCheckedInTwice();
        System.out.printf(
                "night %d of house %d: kiosk killed %d times, %d cabinets called done until then and %d in all, %d rows,"
                        + " %d lost, %d doubled%n",
                number, HOUSE, killed, onDisk, calledDone.size(), ids.size(), lost.size(), doubled);
        assertThat(calledDone).as("every cabinet was called done").hasSize(cabinets);
        assertThat(lost).isEmpty();
        assertThat(doubled).isZero();
        assertThat(ids).hasSize(cabinets);
        assertThat(rows.benchJobs()).isEqualTo(rows.benchCheckIns());
        return killed;
    }

    /** A way to start a program. */
    @FunctionalInterface
    private interface Start {
        ProcessBuilder program(List<String> options, Class<?> main, String... arguments);
    }

    private static Process start(Start how, Path nightFolder, URI service, String token, int from, int to)
            throws IOException {
        ProcessBuilder builder = how.program(
                List.of("-Djava.awt.headless=true", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"),
                Mortal.class,
                nightFolder.toString(),
                Long.toString(HOUSE),
                service.toString(),
                Integer.toString(from),
                Integer.toString(to));
        builder.environment().put("DOCKSWEEP_TOKEN", token);
        return builder.redirectError(ProcessBuilder.Redirect.INHERIT).start();
    }

    /** Lets a kiosk end by itself. */
    private static void end(Process kiosk, Set<String> calledDone) throws IOException, InterruptedException {
        read(kiosk, calledDone, null, "it ended");
        assertThat(kiosk.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
        assertThat(kiosk.exitValue())
                .as("a kiosk that nobody killed ended well")
                .isZero();
    }

    /** An instant of a kiosk's life: so many milliseconds after so many cabinets were called done. */
    private record Kill(int cabinetsDone, int afterMs) {}

    /** Reads what the kiosk calls done, and kills it at an instant, if there is one. */
    private static void read(Process kiosk, Set<String> calledDone, Kill instant, String which) throws IOException {
        int seen = -1;
        try (BufferedReader lines = kiosk.inputReader(StandardCharsets.UTF_8)) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                boolean done = line.startsWith("done ");
                if (done) {
                    calledDone.add(line.substring(5));
                }
                if (done || line.equals("up")) {
                    seen++;
                    if (instant != null && seen == instant.cabinetsDone()) {
                        CompletableFuture.delayedExecutor(instant.afterMs(), TimeUnit.MILLISECONDS)
                                .execute(kiosk::destroyForcibly);
                    }
                }
            }
        }
        assertThat(seen).as("the kiosk came up before %s", which).isNotNegative();
    }

    /** A kiosk that goes on where the one before it was killed. */
    static final class Mortal {
        private Mortal() {}

        public static void main(String[] arguments) throws Exception {
            Path nightFolder = Path.of(arguments[0]);
            long seed = Long.parseLong(arguments[1]);
            ServiceClient client = new ServiceClient(URI.create(arguments[2]), System.getenv("DOCKSWEEP_TOKEN"));
            PrintWriter nowhere = new PrintWriter(new StringWriter());
            try (DockNight night = new DockNight(new NightOptions(nightFolder, seed, null, false), nowhere)) {
                night.openAgain(client);
                System.out.println("up");
                var arrivals = night.house().arrivals();
                int to = Integer.parseInt(arguments[4]);
                for (var arrival : arrivals.subList(Integer.parseInt(arguments[3]), to)) {
                    night.checkIn(arrival);
                    // The screen has the answer: from here on the cabinet may not be lost.
                    var recorded = night.checkIns().stream()
                            .filter(c -> c.tag().equals(arrival.label()))
                            .findFirst();
                    System.out.println("done " + recorded.orElseThrow().id());
                }
                if (to == arrivals.size()) {
                    night.closeNight();
                }
            }
        }
    }
}
