package org.docksweep.kiosk.setup;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.util.List;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.kiosk.dock.SmallHouse;
import org.docksweep.kiosk.spool.Wire;

/** Answers a set-up walk as the service does: two tokens, of which one may not work at a dock. */
final class HouseService implements AutoCloseable {
    static final String TOKEN = "token-of-kiosk-seven-0123456789";
    static final String OTHER_ROLE = "token-of-another-role-0123456789";

    private final HttpServer server;
    /** Status with which everything is answered; 0 for the usual answers. */
    volatile int ill;
    /** Whether something else than the service answers. */
    volatile boolean somethingElse;

    HouseService() throws IOException {
        this(HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0));
    }

    private HouseService(HttpServer server) {
        this.server = server;
        server.createContext("/", this::answer);
        server.start();
    }

    /** With a certificate that nobody trusts. */
    static HouseService overTls(Path folder) throws Exception {
        Path store = folder.resolve("house.p12");
        Process keytool = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "keytool")
                                .toString(),
                        "-genkeypair",
                        "-alias",
                        "house",
                        "-keyalg",
                        "EC",
                        "-dname",
                        "CN=localhost",
                        "-ext",
                        "SAN=dns:localhost,ip:127.0.0.1",
                        "-storetype",
                        "PKCS12",
                        "-storepass",
                        "for-a-test",
                        "-keystore",
                        store.toString()))
                .redirectErrorStream(true)
                .start();
        String said = new String(keytool.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (keytool.waitFor() != 0) {
            throw new IllegalStateException("keytool: " + said);
        }
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (InputStream in = Files.newInputStream(store)) {
            keys.load(in, "for-a-test".toCharArray());
        }
        KeyManagerFactory managers = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
        managers.init(keys, "for-a-test".toCharArray());
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(managers.getKeyManagers(), null, null);
        HttpsServer https = HttpsServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        https.setHttpsConfigurator(new HttpsConfigurator(context));
        return new HouseService(https);
    }

    String authority() {
        return "127.0.0.1:" + server.getAddress().getPort();
    }

    private void answer(HttpExchange exchange) throws IOException {
        String bearer = exchange.getRequestHeaders().getFirst("Authorization");
        if (somethingElse) {
            send(exchange, 200, "<html>It works!</html>");
        } else if (ill != 0) {
            send(exchange, ill, "{\"type\":\"" + ProblemTypes.DEFECT + "\",\"title\":\"ill\",\"status\":" + ill + "}");
        } else if (("Bearer " + OTHER_ROLE).equals(bearer)) {
            send(exchange, 403, "{\"type\":\"" + ProblemTypes.NOT_ALLOWED + "\",\"title\":\"no\",\"status\":403}");
        } else if (!("Bearer " + TOKEN).equals(bearer)) {
            send(exchange, 401, "{\"type\":\"" + ProblemTypes.NOT_SIGNED_ON + "\",\"title\":\"no\",\"status\":401}");
        } else if (exchange.getRequestURI().getPath().equals(ApiPaths.KIOSK_SNAPSHOT)) {
            send(exchange, 200, Wire.json().writeValueAsString(SmallHouse.snapshot()));
        } else {
            send(exchange, 404, "{\"type\":\"" + ProblemTypes.NOT_FOUND + "\",\"title\":\"no\",\"status\":404}");
        }
    }

    private static void send(HttpExchange exchange, int status, String body) throws IOException {
        byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
        exchange.sendResponseHeaders(status, bytes.length);
        exchange.getResponseBody().write(bytes);
        exchange.close();
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
