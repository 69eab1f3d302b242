package org.docksweep.kiosk.bench;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobBody.State;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.DemoHouseProvider;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.Page;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.ProofState;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.bench.BenchState.Activity;
import org.docksweep.kiosk.dock.DockParts;
import org.docksweep.kiosk.dock.DockSettings;
import org.docksweep.kiosk.dock.Link;
import org.docksweep.kiosk.dock.RealGate;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.listening.Earphones;
import org.docksweep.kiosk.listening.Listening;
import org.docksweep.kiosk.rig.Lead;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.spool.Wire;
import org.docksweep.suspect.Priors;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CurveCorrection;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepPlans;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the bench says when something is missing, against a service that answers one job of the demo house. */
class BenchDriverTest {
    /** Far beyond any wait on a busy machine; only a hang reaches it. */
    private static final long PATIENCE_S = 20;

    private static final Instant AT = Instant.parse("2026-05-02T01:30:00Z");
    private static final JobCode CODE = JobCode.of(1, 17);

    private final DemoHouse house = ServiceLoader.load(DemoHouseProvider.class)
            .findFirst()
            .orElseThrow()
            .house(3);
    private final CabinetBody cabinet = house.cabinets().stream()
            .filter(c -> house.book().cabinetModel(c.modelCode()).feed() == Feed.POWERED)
            .findFirst()
            .orElseThrow();
    private final BlockingQueue<BenchState> states = new LinkedBlockingQueue<>();
    private volatile List<DriverBenchData> benchData = house.bench().benchData();
    private volatile State state = State.PROVING;
    private volatile CheckInBody checkIn;
    private volatile byte[] recording;
    private final List<double[]> heard = new CopyOnWriteArrayList<>();

    @TempDir
    private Path folder;

    private HttpServer server;
    private PracticeRig rig;
    private Bench bench;

    @BeforeEach
    void opens() throws Exception {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", this::answer);
        server.start();
        rig = (PracticeRig) Rigs.open("virtual", Map.of("seed", "3"));
        LocalFleet fleet = new LocalFleet(snapshot(), List.of());
        DockParts parts = new DockParts(
                null,
                new UntilStopped(),
                Lead.of(rig),
                () -> new RigStanding(Reason.of("dock-rig-passed", "21:10"), ReadingState.OK, CurveCorrection.NONE),
                new RealGate(),
                new RecordingKeeper(folder.resolve("recordings")),
                null,
                Link.NONE,
                Clock.systemUTC(),
                new DockSettings("kiosk-1", 1, "Ines", Locale.ENGLISH, Duration.ZERO));
        URI address = URI.create("http://127.0.0.1:" + server.getAddress().getPort());
        bench = new Bench(
                new BenchParts(parts, new ServiceClient(address, "secret"), () -> fleet, "bench-1", listening()));
        bench.addListener(states::add);
    }

    /** The virtual rig, but a slow sweep of the whole band goes on until it is stopped. */
    private final class UntilStopped implements Rig {
        private final CountDownLatch stopped = new CountDownLatch(1);

        @Override
        public String id() {
            return rig.id();
        }

        @Override
        public int sampleRateHz() {
            return rig.sampleRateHz();
        }

        @Override
        public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
            if (plan.signal().durationS() < 10) {
                return rig.play(plan, kind, listener);
            }
            listener.progressed(0.3);
            try {
                assertThat(stopped.await(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
            throw new RigException(RigException.Cause.STOPPED, Reason.of("dock-stopped"));
        }

        @Override
        public void stop() {
            stopped.countDown();
            rig.stop();
        }

        @Override
        public void close() {
            rig.close();
        }
    }

    private Listening listening() {
        Earphones ears = new Earphones() {
            @Override
            public Optional<Reason> play(double[] samples, int sampleRateHz) {
                heard.add(samples);
                return Optional.empty();
            }

            @Override
            public void silence() {
                heard.clear();
            }
        };
        return new Listening(ears, folder.resolve("sounds"));
    }

    @AfterEach
    void closes() {
        bench.close();
        rig.close();
        server.stop(0);
    }

    private KioskSnapshot snapshot() {
        return new KioskSnapshot(
                AT,
                house.siteName(),
                house.timeZone(),
                house.book(),
                house.cabinets(),
                List.of(),
                List.of(),
                LimitSet.initial(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Priors.USUAL,
                List.of());
    }

    private BenchJobFile file() {
        UUID id = UUID.fromString("8d7d4f2e-0000-4000-8000-000000000001");
        return new BenchJobFile(
                new BenchJobBody(
                        CODE,
                        cabinet.tag(),
                        cabinet.modelCode(),
                        state,
                        AT,
                        null,
                        "HF",
                        Reason.of("verdict-way-weak"),
                        List.of(),
                        checkIn == null ? List.of() : List.of(checkIn.id()),
                        3,
                        "bench-1",
                        "Ines",
                        null,
                        30),
                new CabinetBody(
                        cabinet.tag(), cabinet.modelCode(), "F-1", CabinetStatus.BENCH, false, cabinet.drivers()),
                List.of(),
                List.of(),
                List.of(),
                List.of(new PartExchangeBody(
                        id, AT, "Ines", "bench-1", "LF", null, null, new PartExchangeBody.Fitted("RK", null, 1))),
                List.of(),
                List.of(),
                new ProofState(false, 0, Map.of(), List.of()));
    }

    private void answer(HttpExchange exchange) throws IOException {
        String path = exchange.getRequestURI().getPath();
        boolean put = exchange.getRequestMethod().equals("PUT");
        if (put) {
            state = State.PROVING;
        }
        Object body = switch (path) {
            case ApiPaths.BENCH_JOBS -> new Page<>(List.of(file().job()), null);
            case ApiPaths.DRIVER_BENCH_DATA -> benchData;
            case ApiPaths.DRIVER_REFERENCES -> List.of();
            default -> {
                if (path.startsWith(ApiPaths.RECORDINGS)) {
                    yield recording;
                }
                yield path.startsWith(ApiPaths.CHECK_INS) ? checkIn : put ? file().job() : file();
            }
        };
        exchange.getRequestBody().readAllBytes();
        byte[] bytes = body == recording ? recording : Wire.json().writeValueAsBytes(body);
        exchange.sendResponseHeaders(200, bytes.length);
        exchange.getResponseBody().write(bytes);
        exchange.close();
    }

    private BenchState await(Predicate<BenchState> wanted) throws InterruptedException {
        BenchState now = bench.state();
        while (now.busy() || !wanted.test(now)) {
            now = states.poll(PATIENCE_S, TimeUnit.SECONDS);
            assertThat(now).as("the bench shows %s", bench.state()).isNotNull();
        }
        return now;
    }

    private BenchState says(String key) throws InterruptedException {
        return await(s -> s.message().filter(m -> m.text().key().equals(key)).isPresent());
    }

    private void open() throws InterruptedException {
        bench.scan(CODE.value());
        await(s -> s.activity() == Activity.JOB);
    }

    @Test
    void opensAJobWhoseTagCannotBeReadByItsTypedNumber() throws InterruptedException {
        bench.scan("smudge");
        assertThat(says("bench-unreadable").message().orElseThrow().state()).isEqualTo(ReadingState.FAULT);

        bench.scan(" j01-00017 ");

        assertThat(await(s -> s.activity() == Activity.JOB)
                        .job()
                        .orElseThrow()
                        .file()
                        .job()
                        .code())
                .isEqualTo(CODE);
    }

    @Test
    void saysThatADriverWithoutReferenceCannotPassAndStillSweepsIt() throws InterruptedException {
        open();
        bench.step(BenchStep.DRIVER_ON_BENCH);

        BenchState shown = says("bench-bare-no-reference");

        assertThat(shown.message().orElseThrow().state()).isEqualTo(ReadingState.WATCH);
        assertThat(shown.activity()).isEqualTo(Activity.PROOF);
        assertThat(shown.prompt().key())
                .as("the cone that was worked on comes first")
                .isEqualTo("bench-ask-bare-cone");
        assertThat(shown.steps()).contains(BenchStep.SWEEP, BenchStep.WHOLE_CABINET, BenchStep.OTHER_PLACE);
        bench.step(BenchStep.OTHER_PLACE);
        await(s -> s.prompt().key().equals("bench-ask-bare-horn"));
        bench.step(BenchStep.WHOLE_CABINET);
        assertThat(await(s -> s.steps().contains(BenchStep.DRIVER_ON_BENCH))
                        .prompt()
                        .key())
                .isEqualTo("bench-ask-proof");
    }

    @Test
    void doesNotPlayToADriverWhoseLevelNobodyRecorded() throws InterruptedException {
        benchData = List.of();
        open();
        bench.step(BenchStep.DRIVER_ON_BENCH);

        BenchState shown = says("bench-bare-no-level");

        assertThat(shown.message().orElseThrow().state()).isEqualTo(ReadingState.FAULT);
        assertThat(shown.message().orElseThrow().text().arguments())
                .containsExactly(
                        "LF",
                        house.book()
                                .cabinetModel(cabinet.modelCode())
                                .position("LF")
                                .driverModelCode());
        assertThat(shown.steps()).contains(BenchStep.DRIVER_ON_BENCH).doesNotContain(BenchStep.WHOLE_CABINET);
    }

    @Test
    void beginsTheProofOfAPoweredCabinetWithTheDriverThatWasWorkedOn() throws InterruptedException {
        state = State.ACCEPTED;
        open();
        bench.step(BenchStep.BEGIN_PROOF);

        BenchState shown =
                await(s -> s.activity() == Activity.PROOF && s.message().isPresent());

        assertThat(shown.prompt().key()).isEqualTo("bench-ask-bare-cone");
        assertThat(shown.steps()).contains(BenchStep.WHOLE_CABINET);
    }

    @Test
    void letsHearAndKeepWhatWasHeardBesidesTheSweep() throws Exception {
        open();
        bench.step(BenchStep.SWEEP);
        BenchState asked = await(s -> s.steps().contains(BenchStep.SOUND_CLEAN));
        assertThat(asked.steps()).contains(BenchStep.LISTEN, BenchStep.KEEP_SOUND);

        bench.step(BenchStep.LISTEN);
        says("listen-plays");
        double first = loudest(heard.get(0));
        heard.clear();
        bench.step(BenchStep.LISTEN);
        await(s -> s.message().filter(m -> m.text().arguments().contains("2")).isPresent());
        assertThat(loudest(heard.get(0)) / first).isBetween(1.8, 2.1);
        bench.step(BenchStep.KEEP_SOUND);
        BenchState kept = says("listen-kept");

        Path file = Path.of(kept.message().orElseThrow().text().arguments().get(0));
        try (AudioInputStream sound = AudioSystem.getAudioInputStream(file.toFile())) {
            assertThat(sound.getFormat().getSampleRate()).isEqualTo(48_000);
            assertThat(sound.getFrameLength()).isBetween(100_000L, 400_000L);
        }
        bench.stop();
        assertThat(heard).isEmpty();
    }

    @Test
    void letsHearTheSweepThatBroughtTheCabinetHereFromTheService() throws Exception {
        TestPoint point = house.book().cabinetModel(cabinet.modelCode()).testPoint("LINE");
        rig.plug(cabinet.tag(), point.code());
        Capture capture = rig.play(SweepPlans.dock(point, rig.sampleRateHz()), point.kind(), share -> {});
        RecordingKeeper docks = new RecordingKeeper(folder.resolve("dock"));
        String sha256 = docks.keep(capture);
        recording = docks.bytes(sha256);
        checkIn = checkIn(sha256);
        state = State.WAITING;
        open();
        assertThat(bench.state().steps()).contains(BenchStep.TAKE, BenchStep.LISTEN, BenchStep.KEEP_SOUND);

        bench.step(BenchStep.LISTEN);

        assertThat(says("listen-plays").message().orElseThrow().text().arguments())
                .startsWith("LINE");
        assertThat(heard).hasSize(1);
        recording = new byte[] {1, 2, 3};
        checkIn = checkIn("0".repeat(64));
        bench.step(BenchStep.BACK);
        await(s -> s.activity() == Activity.QUEUE);
        open();
        bench.step(BenchStep.LISTEN);
        assertThat(says("listen-unreadable").message().orElseThrow().state()).isEqualTo(ReadingState.FAULT);
    }

    private CheckInBody checkIn(String sha256) {
        PointJudgement failed = new PointJudgement(
                "LINE",
                Verdict.FAIL,
                Prompt.NONE,
                Reason.of("verdict-way-weak"),
                null,
                null,
                List.of(),
                List.of(),
                List.of());
        return new CheckInBody(
                UUID.randomUUID(),
                cabinet.tag(),
                cabinet.modelCode(),
                null,
                "kiosk-1",
                "Ines",
                AT,
                AT,
                Set.of(),
                Verdict.FAIL,
                Route.BENCH,
                false,
                Reason.of("verdict-way-weak"),
                "HF",
                List.of(),
                List.of(),
                CODE,
                "8",
                1,
                List.of(new MeasurementBody(UUID.randomUUID(), AT, 1, sha256, 20.0, failed)));
    }

    private static double loudest(double[] samples) {
        return Arrays.stream(samples).map(Math::abs).max().orElseThrow();
    }

    @Test
    void sweepsSlowlyUntilStoppedAndAgainAroundThere() throws InterruptedException {
        open();
        await(s -> s.steps().contains(BenchStep.FIND));
        bench.step(BenchStep.DRIVER_ON_BENCH);
        await(s -> s.steps().contains(BenchStep.SLOW_SWEEP));
        bench.step(BenchStep.WHOLE_CABINET);
        await(s -> s.steps().contains(BenchStep.SLOW_SWEEP) && !s.steps().contains(BenchStep.WHOLE_CABINET));

        bench.step(BenchStep.SLOW_SWEEP);
        BenchState now = bench.state();
        while (now.sweepShare().filter(share -> share > 0.02).isEmpty()) {
            now = states.poll(PATIENCE_S, TimeUnit.SECONDS);
            assertThat(now).isNotNull();
        }
        assertThat(now.prompt().key()).isEqualTo("bench-slow-at");
        bench.stop();

        BenchState stopped = says("bench-slow-stopped");
        // 0.3 of 0.5 s of silence, some 18.7 s of 30 Hz to 20 kHz and 0.2 s: 5.3 s, or 2.6 octaves above 30 Hz
        double hz = Double.parseDouble(
                stopped.message().orElseThrow().text().arguments().get(1));
        assertThat(hz).isBetween(170.0, 210.0);
        assertThat(stopped.steps()).contains(BenchStep.SLOW_AROUND);
        bench.step(BenchStep.SLOW_AROUND);
        says("bench-slow-done");
    }

    @Test
    void storesNothingAndSaysSoWithoutTheService() throws InterruptedException {
        open();
        server.stop(0);
        bench.step(BenchStep.DRIVER_ON_BENCH);

        assertThat(says("bench-no-service").message().orElseThrow().state()).isEqualTo(ReadingState.WATCH);
    }
}
