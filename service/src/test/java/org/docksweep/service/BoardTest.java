package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.http.HttpClient;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BoardEvent;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import tools.jackson.core.type.TypeReference;

/** The stream as the standard of the web has it: https://html.spec.whatwg.org/multipage/server-sent-events.html */
@ExtendWith(RunningService.class)
class BoardTest {
    private static final long PATIENCE_S = 120;

    private final Api api;

    BoardTest(Api api) {
        this.api = api;
    }

    /** A stream that is listened to; reading is bounded by its future. */
    private static final class Stream implements AutoCloseable {
        private final HttpResponse<InputStream> response;
        private final BufferedReader lines;

        Stream(Api client, String... headers) throws IOException, InterruptedException {
            response = HttpClient.newHttpClient()
                    .send(
                            client.request(
                                            ApiPaths.BOARD_EVENTS,
                                            java.util.stream.Stream.concat(
                                                            java.util.stream.Stream.of("Accept", "text/event-stream"),
                                                            java.util.Arrays.stream(headers))
                                                    .toArray(String[]::new))
                                    .GET()
                                    .build(),
                            HttpResponse.BodyHandlers.ofInputStream());
            lines = new BufferedReader(new InputStreamReader(response.body(), StandardCharsets.UTF_8));
        }

        /** Up to the blank line that ends it. */
        List<String> block() throws Exception {
            return CompletableFuture.supplyAsync(() -> {
                        List<String> block = new ArrayList<>();
                        try {
                            for (String line = lines.readLine();
                                    line != null && !line.isEmpty();
                                    line = lines.readLine()) {
                                block.add(line);
                            }
                        } catch (IOException e) {
                            throw new java.io.UncheckedIOException(e);
                        }
                        return block;
                    })
                    .get(PATIENCE_S, TimeUnit.SECONDS);
        }

        /** The next event about that target; others of the house pass by. */
        BoardEvent next(String target) throws Exception {
            while (true) {
                List<String> block = block();
                assertThat(block).as("the stream ended").isNotEmpty();
                if (block.stream().noneMatch(l -> l.startsWith("data:"))) {
                    continue;
                }
                assertThat(block).contains("event:changed");
                BoardEvent event = Api.MAPPER.readValue(
                        block.stream()
                                .filter(l -> l.startsWith("data:"))
                                .findFirst()
                                .orElseThrow()
                                .substring(5),
                        BoardEvent.class);
                assertThat(block).contains("id:" + event.number());
                if (event.target().equals(target)) {
                    return event;
                }
            }
        }

        @Override
        public void close() throws IOException {
            response.body().close();
        }
    }

    private CheckInBody checkIn() {
        String model = House.newModel(api);
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        CheckInBody body = House.pass(tag, model);
        assertThat(House.put(api, body).status()).isEqualTo(201);
        return body;
    }

    private static String path(CheckInBody body) {
        return ApiPaths.CHECK_INS + "/" + body.id();
    }

    @Test
    void tellsWhatChangedAndGoesOnWhereAListenerWasCutOff() throws Exception {
        Api kiosk = Staff.kiosk(api, KioskToken.Role.DOCK);
        BoardEvent seen;
        try (Stream stream = new Stream(kiosk)) {
            assertThat(stream.response.statusCode()).isEqualTo(200);
            assertThat(stream.response.headers().firstValue("Content-Type").orElseThrow())
                    .startsWith("text/event-stream");
            assertThat(stream.block()).contains(":listening", "retry:1000");
            CheckInBody body = checkIn();

            seen = stream.next(path(body));

            assertThat(seen.topic()).isEqualTo("check-ins");
        }
        CheckInBody missed = checkIn();
        CheckInBody alsoMissed = checkIn();
        try (Stream stream = new Stream(kiosk, "Last-Event-ID", Long.toString(seen.number()))) {
            BoardEvent first = stream.next(path(missed));
            BoardEvent second = stream.next(path(alsoMissed));
            assertThat(first.number()).isGreaterThan(seen.number()).isLessThan(second.number());
            // And goes on with what comes.
            CheckInBody body = checkIn();
            assertThat(stream.next(path(body)).number()).isGreaterThan(second.number());
        }
    }

    @Test
    void answersThoseWhoRatherAsk() {
        org.docksweep.contract.Page<BoardEvent> begin = ask("");
        assertThat(begin.items()).isEmpty();
        CheckInBody body = checkIn();
        org.docksweep.contract.Page<BoardEvent> news = ask("?after=" + begin.next());
        assertThat(news.items().stream().map(BoardEvent::target)).contains(path(body));
        assertThat(news.items().stream().map(BoardEvent::topic)).contains("cabinets", "check-ins");
        // Tokens and people are nothing a board shows.
        Staff.kiosk(api, KioskToken.Role.DOCK);
        assertThat(ask("?after=" + news.next()).items()).isEmpty();
    }

    private org.docksweep.contract.Page<BoardEvent> ask(String query) {
        Api.Answer answer = api.get(ApiPaths.BOARD_EVENTS + query);
        assertThat(answer.status()).as("%s", answer).isEqualTo(200);
        return Api.MAPPER.readValue(answer.text(), new TypeReference<org.docksweep.contract.Page<BoardEvent>>() {});
    }

    @Test
    void tellsNothingToStrangersAndRefusesWhatIsNoPlaceInTheOrder() {
        for (String accept : new String[] {"text/event-stream", "application/json"}) {
            Api.Answer stranger = api.as(null).get(ApiPaths.BOARD_EVENTS, "Accept", accept);
            assertThat(stranger.status()).isEqualTo(401);
        }
        for (String last : new String[] {"-1", "x", "9223372036854775808"}) {
            Api.Answer answer = api.get(
                    ApiPaths.BOARD_EVENTS,
                    "Accept",
                    "text/event-stream, application/problem+json",
                    "Last-Event-ID",
                    last);
            assertThat(answer.status()).isEqualTo(400);
            assertThat(answer.problem().type()).isEqualTo(ProblemTypes.BAD_FIELD);
        }
    }
}
