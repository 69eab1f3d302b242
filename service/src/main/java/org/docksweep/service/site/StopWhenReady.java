package org.docksweep.service.site;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import org.docksweep.contract.ApiPaths;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/**
 * Starts, answers one request, and stops in good order when {@code docksweep.stop-when-ready} says so: the trial start
 * that tries settings and migrations, and that a class-data archive is made from.
 */
@Component
class StopWhenReady {
    private static final Logger LOG = LoggerFactory.getLogger(StopWhenReady.class);
    private static final Duration PATIENCE = Duration.ofSeconds(30);

    private final boolean wanted;

    StopWhenReady(@Value("${docksweep.stop-when-ready:false}") boolean wanted) {
        this.wanted = wanted;
    }

    @EventListener
    @Order(Ordered.LOWEST_PRECEDENCE)
    void ready(ApplicationReadyEvent event) {
        if (!wanted) {
            return;
        }
        if (event.getApplicationContext() instanceof WebServerApplicationContext web) {
            askOnce(web.getWebServer().getPort());
        }
        LOG.info("Ready, and stopping as docksweep.stop-when-ready says");
        SpringApplication.exit(event.getApplicationContext());
    }

    /** Without a token, so the answer is a refusal: it takes the same way through the house up to there. */
    private static void askOnce(int port) {
        URI address = URI.create("http://127.0.0.1:" + port + ApiPaths.LIMITS);
        try {
            int status = HttpClient.newHttpClient()
                    .send(
                            HttpRequest.newBuilder(address).timeout(PATIENCE).build(),
                            HttpResponse.BodyHandlers.discarding())
                    .statusCode();
            LOG.info("{} answers {}", address, status);
        } catch (IOException e) {
            // With TLS, or bound to another address, a plain request to loopback is refused; the start itself went
            // well.
            LOG.info("{} was not asked: {}", address, e.toString());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
