package org.docksweep.kiosk.dock;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.SSLContext;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.kiosk.spool.Wire;

/**
 * The other end of the wire in its bad moods: speaks HTTP as the service does, stores what comes by its path, and counts what was new
 * and what came again.
 */
final class FaultService implements AutoCloseable {
    /** How it is today. */
    enum Mood {
        WELL(0),
        /** Takes the request and does not answer until the mood changes. */
        SILENT(0),
        FAULTY(500),
        BUSY(503),
        KNOWS_NOBODY(401),
        REFUSES(409);

        private final int status;

        Mood(int status) {
            this.status = status;
        }
    }

    private final Clock clock;
    private final ExecutorService threads = Executors.newCachedThreadPool();
    private final Map<String, byte[]> stored = new LinkedHashMap<>();
    private final CountDownLatch silence = new CountDownLatch(1);
    private int repeated;
    private int changed;
    private boolean listClosed;
    private HttpServer server;
    private int port;
    private volatile Mood mood = Mood.WELL;

    FaultService(Clock clock) throws IOException {
        this.clock = clock;
        comeBack();
    }

    /** A service whose certificate is its own word only. */
    FaultService(Clock clock, SSLContext certificate) throws IOException {
        this.clock = clock;
        HttpsServer secure = HttpsServer.create(address(0), 0);
        secure.setHttpsConfigurator(new HttpsConfigurator(certificate));
        run(secure);
    }

    private static InetSocketAddress address(int port) {
        return new InetSocketAddress(InetAddress.getLoopbackAddress(), port);
    }

    private void run(HttpServer made) {
        server = made;
        server.setExecutor(threads);
        server.createContext("/", this::answer);
        server.start();
        port = server.getAddress().getPort();
    }

    URI address() {
        boolean secure = server instanceof HttpsServer;
        return URI.create((secure ? "https" : "http") + "://127.0.0.1:" + port);
    }

    void goDown() {
        server.stop(0);
    }

    void comeBack() throws IOException {
        run(HttpServer.create(address(port), 0));
    }

    void mood(Mood next) {
        mood = next;
        if (next != Mood.SILENT) {
            silence.countDown();
        }
    }

    synchronized void closeList() {
        listClosed = true;
        changed++;
    }

    /** Everything stored under the paths of check-ins, oldest first. */
    synchronized List<CheckInBody> checkIns() {
        return stored.entrySet().stream()
                .filter(e -> e.getKey().startsWith(ApiPaths.CHECK_INS + "/"))
                .map(e -> Wire.json().readValue(e.getValue(), CheckInBody.class))
                .toList();
    }

    synchronized int repeated() {
        return repeated;
    }

    private void answer(HttpExchange exchange) throws IOException {
        byte[] body = exchange.getRequestBody().readAllBytes();
        if (mood == Mood.SILENT) {
            await();
        }
        String path = exchange.getRequestURI().getPath();
        if (mood.status != 0) {
            String type = mood == Mood.REFUSES ? ProblemTypes.WRONG_STATE : ProblemTypes.DEFECT;
            problem(exchange, mood.status, type);
        } else if (path.equals(ApiPaths.KIOSK_CHANGES)) {
            // As a service from before there were changes.
            problem(exchange, 404, ProblemTypes.NOT_FOUND);
        } else if (exchange.getRequestMethod().equals("GET")) {
            snapshot(exchange);
        } else {
            reply(exchange, store(path, body), "application/json", "{}".getBytes(StandardCharsets.UTF_8));
        }
    }

    private void await() {
        try {
            if (!silence.await(DockEyes.PATIENCE_S, TimeUnit.SECONDS)) {
                throw new IllegalStateException("nobody ended the silence");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** As the service does: new 201, the same again 200, another body under the same id 409. */
    private synchronized int store(String path, byte[] body) {
        byte[] before = stored.putIfAbsent(path, body);
        if (before == null) {
            listClosed |= path.endsWith(ApiPaths.CLOSE);
            changed++;
            return 201;
        }
        repeated++;
        return java.util.Arrays.equals(before, body) ? 200 : 409;
    }

    private void snapshot(HttpExchange exchange) throws IOException {
        String etag;
        byte[] body;
        synchronized (this) {
            etag = "\"" + changed + "\"";
            body = Wire.json().writeValueAsBytes(snapshot());
        }
        exchange.getResponseHeaders().set("ETag", etag);
        if (etag.equals(exchange.getRequestHeaders().getFirst("If-None-Match"))) {
            reply(exchange, 304, "application/json", new byte[0]);
        } else {
            reply(exchange, 200, "application/json", body);
        }
    }

    private synchronized KioskSnapshot snapshot() {
        KioskSnapshot house = SmallHouse.snapshot();
        Map<AssetTag, ReturnReport.Row> newest = new LinkedHashMap<>();
        checkIns().stream()
                .sorted(Comparator.comparing(CheckInBody::finishedAt))
                .forEach(c -> newest.put(
                        c.tag(),
                        new ReturnReport.Row(
                                c.tag(),
                                c.modelCode(),
                                c.finishedAt(),
                                c.verdict(),
                                c.route(),
                                c.watch(),
                                c.reason(),
                                c.jobCode())));
        return new KioskSnapshot(
                clock.instant(),
                house.siteName(),
                house.timeZone(),
                house.book(),
                house.cabinets(),
                house.references(),
                house.baselines(),
                house.limits(),
                listClosed ? List.of() : house.returnLists(),
                listClosed ? List.of() : List.copyOf(newest.values()),
                house.recentEvents(),
                house.needs(),
                house.priors(),
                house.labels());
    }

    private static void problem(HttpExchange exchange, int status, String type) throws IOException {
        String body = "{\"type\":\"" + type + "\",\"title\":\"Conflict\",\"status\":" + status
                + ",\"detail\":\"cabinet TST-000001 was retired meanwhile\",\"hint\":\"Take it back into the fleet.\"}";
        reply(exchange, status, "application/problem+json", body.getBytes(StandardCharsets.UTF_8));
    }

    private static void reply(HttpExchange exchange, int status, String type, byte[] body) throws IOException {
        exchange.getResponseHeaders().set("Content-Type", type);
        exchange.sendResponseHeaders(status, body.length == 0 ? -1 : body.length);
        exchange.getResponseBody().write(body);
        exchange.close();
    }

    @Override
    public void close() {
        silence.countDown();
        server.stop(0);
        threads.shutdownNow();
    }
}
