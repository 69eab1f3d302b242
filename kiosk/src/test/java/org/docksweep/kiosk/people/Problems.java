package org.docksweep.kiosk.people;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;

/** Refusals as a service sends them. */
final class Problems {
    private Problems() {}

    static ServiceProblem wrongBadgeOrPin() {
        return of(401, ProblemTypes.WRONG_BADGE_OR_PIN);
    }

    static ServiceProblem of(int status, String type) {
        try {
            HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
            byte[] body = ("{\"type\":\"" + type + "\",\"title\":\"Refused\",\"status\":" + status + "}")
                    .getBytes(StandardCharsets.UTF_8);
            server.createContext("/", exchange -> {
                exchange.sendResponseHeaders(status, body.length);
                exchange.getResponseBody().write(body);
                exchange.close();
            });
            server.start();
            try {
                new ServiceClient(
                                URI.create("http://127.0.0.1:"
                                        + server.getAddress().getPort()),
                                "t")
                        .get("/", String.class);
                throw new AssertionError("was not refused");
            } catch (ServiceProblem e) {
                return e;
            } finally {
                server.stop(0);
            }
        } catch (IOException | ServiceUnreachable e) {
            throw new AssertionError(e);
        }
    }
}
