package org.docksweep.service;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.List;
import org.docksweep.contract.Problem;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Talks to a running service as a kiosk does: HTTP and the contract's records, nothing of the service's own classes. */
final class Api {
    static final JsonMapper MAPPER = new JsonMapper();
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    private final HttpClient client;
    final URI root;
    private final String token;

    Api(URI root, String token) {
        this(HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build(), root, token);
    }

    private Api(HttpClient client, URI root, String token) {
        this.client = client;
        this.root = root;
        this.token = token;
    }

    /** The same service as another holder of a token, or as nobody with null. */
    Api as(String otherToken) {
        return new Api(client, root, otherToken);
    }

    /** The same service and token, for measuring. */
    LoadCaller loadCaller() {
        return new LoadCaller(root, token);
    }

    Answer get(String path, String... headers) {
        return send(request(path, headers).GET());
    }

    Answer put(String path, Object body) {
        return putText(path, MAPPER.writeValueAsString(body), "application/json");
    }

    Answer putText(String path, String body, String contentType) {
        return send(request(path, "Content-Type", contentType).PUT(BodyPublishers.ofString(body)));
    }

    Answer putBytes(String path, byte[] body, String contentType) {
        return send(request(path, "Content-Type", contentType).PUT(BodyPublishers.ofByteArray(body)));
    }

    Answer post(String path, Object body) {
        return postBytes(path, MAPPER.writeValueAsBytes(body), "application/json");
    }

    Answer postBytes(String path, byte[] body, String contentType) {
        return send(request(path, "Content-Type", contentType).POST(BodyPublishers.ofByteArray(body)));
    }

    Answer delete(String path) {
        return send(request(path).DELETE());
    }

    HttpRequest.Builder request(String path, String... headers) {
        HttpRequest.Builder request =
                HttpRequest.newBuilder(URI.create(root + path)).timeout(PATIENCE);
        if (token != null) {
            request.header("Authorization", "Bearer " + token);
        }
        return headers.length == 0 ? request : request.headers(headers);
    }

    Answer send(HttpRequest.Builder request) {
        try {
            HttpRequest built = request.build();
            HttpResponse<byte[]> response = client.send(built, BodyHandlers.ofByteArray());
            ExampleBook.note(built, response, this);
            return new Answer(response);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** What came back. */
    record Answer(HttpResponse<byte[]> response) {
        int status() {
            return response.statusCode();
        }

        String text() {
            return new String(response.body(), java.nio.charset.StandardCharsets.UTF_8);
        }

        String header(String name) {
            return response.headers().firstValue(name).orElse(null);
        }

        <T> T as(Class<T> type) {
            return MAPPER.readValue(response.body(), type);
        }

        <T> T as(TypeReference<T> type) {
            return MAPPER.readValue(response.body(), type);
        }

        <T> List<T> listOf(Class<T> type) {
            return MAPPER.readValue(response.body(), MAPPER.getTypeFactory().constructCollectionType(List.class, type));
        }

        Problem problem() {
            if (!Problem.MEDIA_TYPE.equals(header("Content-Type"))) {
                throw new AssertionError(
                        "expected problem details, but got " + status() + " " + header("Content-Type") + " " + text());
            }
            return as(Problem.class);
        }

        @Override
        public String toString() {
            String text = text();
            return status() + " " + text.substring(0, Math.min(800, text.length()));
        }
    }
}
