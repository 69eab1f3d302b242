package org.docksweep.kiosk.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicReference;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.kiosk.spool.Delivery;
import org.docksweep.kiosk.spool.OutboxItem;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ServiceClientTest {
    private final AtomicReference<String> authorization = new AtomicReference<>();
    private HttpServer server;
    private volatile int status;
    private volatile String body = "";

    @BeforeEach
    void start() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", exchange -> {
            authorization.set(exchange.getRequestHeaders().getFirst("Authorization"));
            exchange.getRequestBody().readAllBytes();
            byte[] answer = body.getBytes(StandardCharsets.UTF_8);
            exchange.sendResponseHeaders(status, answer.length == 0 ? -1 : answer.length);
            exchange.getResponseBody().write(answer);
            exchange.close();
        });
        server.start();
    }

    @AfterEach
    void stop() {
        server.stop(0);
    }

    @Test
    void carriesTheTokenAndTellsTheProblemInWords() throws Exception {
        status = 400;
        body = "{\"type\":\"" + ProblemTypes.BAD_FIELD + "\",\"title\":\"Wrong value\",\"status\":400,"
                + "\"detail\":\"no such model\",\"field\":\"modelCode\",\"hint\":\"Load the model book first.\"}";
        assertThatThrownBy(() -> client().put(ApiPaths.CABINETS + "/TST-000001", java.util.Map.of()))
                .isInstanceOfSatisfying(ServiceProblem.class, p -> {
                    assertThat(p.type()).isEqualTo(ProblemTypes.BAD_FIELD);
                    assertThat(p.status()).isEqualTo(400);
                })
                .hasMessageContainingAll("no such model", "modelCode", "Load the model book first.");
        assertThat(authorization).hasValue("Bearer secret");
    }

    @Test
    void deliversOnSuccess() {
        status = 201;
        assertThat(deliver(OutboxItem.Kind.CHECK_IN)).isInstanceOf(Delivery.Delivered.class);
    }

    @ParameterizedTest
    @ValueSource(ints = {400, 404, 409, 413, 422})
    void refusesForGoodWhatCanNeverSucceed(int refused) {
        status = refused;
        assertThat(deliver(OutboxItem.Kind.CHECK_IN)).isInstanceOf(Delivery.Refused.class);
    }

    @ParameterizedTest
    @ValueSource(ints = {401, 403, 408, 429, 500, 503})
    void triesAgainWhatMaySucceedLater(int later) {
        status = later;
        assertThat(deliver(OutboxItem.Kind.CHECK_IN))
                .isInstanceOfSatisfying(
                        Delivery.NotNow.class,
                        n -> assertThat(n.trouble().serviceAnswered()).isTrue());
    }

    @Test
    void triesAgainWhenNobodyAnswers() {
        server.stop(0);
        assertThat(deliver(OutboxItem.Kind.CHECK_IN))
                .isInstanceOfSatisfying(
                        Delivery.NotNow.class,
                        n -> assertThat(n.trouble().serviceAnswered()).isFalse());
    }

    @Test
    void takesAListThatIsClosedAlreadyAsClosed() {
        status = 409;
        body = "{\"type\":\"" + ProblemTypes.WRONG_STATE + "\",\"title\":\"closed\",\"status\":409}";
        assertThat(deliver(OutboxItem.Kind.CLOSE)).isInstanceOf(Delivery.Delivered.class);
        assertThat(deliver(OutboxItem.Kind.CHECK_IN)).isInstanceOf(Delivery.Refused.class);
    }

    @Test
    void refusesRecordingThatIsNoLongerThere() {
        status = 201;
        assertThat(deliver(OutboxItem.Kind.RECORDING))
                .isInstanceOfSatisfying(
                        Delivery.Refused.class, r -> assertThat(r.words()).contains("gone"));
    }

    private Delivery deliver(OutboxItem.Kind kind) {
        ServiceCourier courier = new ServiceCourier(client(), sha256 -> {
            throw new IOException("gone");
        });
        return courier.deliver(new OutboxItem(1, kind, "/api/x/1", new byte[] {'{', '}'}, 0));
    }

    private ServiceClient client() {
        return new ServiceClient(
                URI.create("http://127.0.0.1:" + server.getAddress().getPort()), "secret");
    }
}
