package org.docksweep.service;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Flow;
import tools.jackson.core.JacksonException;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Gathers examples for the API description from what tests sent and were answered, when {@code
 * -Ddocksweep.examples.write=FILE} asks for it: of each operation the shortest accepted pair that says something. The file
 * is committed beside the description; {@code ContractTest} holds it against the records.
 */
final class ExampleBook {
    private static final String FILE = System.getProperty("docksweep.examples.write");
    private static final int LONGEST = 60_000;
    private static final Map<String, Pair> PAIRS = new TreeMap<>();
    private static List<String> operations;

    private ExampleBook() {}

    /** A body sent, or null, and the answer. */
    private record Pair(JsonNode request, JsonNode answer) {
        int cost() {
            boolean saysNothing = answer.isEmpty()
                    || answer.has("items") && answer.get("items").isEmpty();
            return (saysNothing ? LONGEST : 0) + length(answer) + (request == null ? 0 : length(request));
        }

        private static int length(JsonNode node) {
            return node.toString().length();
        }
    }

    static synchronized void note(HttpRequest request, HttpResponse<byte[]> response, Api api) {
        if (FILE == null
                || response.statusCode() >= 300
                || request.uri().getPath().startsWith("/v3/")) {
            return;
        }
        if (operations == null) {
            operations = new ArrayList<>();
            JsonNode paths = Api.MAPPER.readTree(api.get("/v3/api-docs").text()).get("paths");
            for (String path : paths.propertyNames()) {
                for (String method : paths.get(path).propertyNames()) {
                    operations.add(method.toUpperCase(Locale.ROOT) + " " + path);
                }
            }
            AtTheEnd.stop(ExampleBook::write);
        }
        JsonNode answer = json(response.body());
        if (answer == null) {
            return;
        }
        JsonNode sent = request.bodyPublisher()
                .map(ExampleBook::bytes)
                .map(ExampleBook::json)
                .orElse(null);
        String asked = request.method() + " " + request.uri().getPath();
        operations.stream()
                .filter(operation -> asked.matches(operation.replaceAll("\\{[a-zA-Z0-9]+\\}", "[^/]+")))
                .min(java.util.Comparator.comparingLong(
                        o -> o.chars().filter(c -> c == '{').count()))
                .ifPresent(operation -> PAIRS.merge(operation, new Pair(sent, answer), ExampleBook::better));
    }

    private static JsonNode json(byte[] bytes) {
        try {
            JsonNode node = bytes.length == 0 || bytes.length > LONGEST ? null : Api.MAPPER.readTree(bytes);
            return node == null ? null : harmless(node);
        } catch (JacksonException e) {
            // A PDF, a CSV, a recording.
            return null;
        }
    }

    /** Tokens of the tests open nothing; they are still no example. */
    private static JsonNode harmless(JsonNode node) {
        if (node instanceof ObjectNode object && object.path("token").isString()) {
            object.put("token", "43-letters-that-are-shown-once-and-never-again");
        }
        return node;
    }

    private static byte[] bytes(HttpRequest.BodyPublisher publisher) {
        List<ByteBuffer> parts = new ArrayList<>();
        publisher.subscribe(new Flow.Subscriber<>() {
            @Override
            public void onSubscribe(Flow.Subscription subscription) {
                subscription.request(Long.MAX_VALUE);
            }

            @Override
            public void onNext(ByteBuffer part) {
                parts.add(part);
            }

            @Override
            public void onError(Throwable thrown) {
                throw new IllegalStateException(thrown);
            }

            @Override
            public void onComplete() {
                // All parts are there.
            }
        });
        int size = parts.stream().mapToInt(ByteBuffer::remaining).sum();
        ByteBuffer all = ByteBuffer.allocate(size);
        parts.forEach(all::put);
        return all.array();
    }

    /** Beside what other virtual machines of the run found. */
    private static synchronized void write() {
        try (FileChannel file = FileChannel.open(
                        Path.of(FILE), StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
                FileLock alone = file.lock()) {
            byte[] before = new byte[Math.toIntExact(file.size())];
            file.read(ByteBuffer.wrap(before), 0);
            if (alone.isValid() && before.length > 0) {
                Api.MAPPER
                        .readValue(before, new TypeReference<Map<String, Pair>>() {})
                        .forEach((operation, pair) -> PAIRS.merge(operation, pair, ExampleBook::better));
            }
            byte[] now = (Api.MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(PAIRS) + "\n")
                    .getBytes(StandardCharsets.UTF_8);
            file.truncate(0);
            file.write(ByteBuffer.wrap(now), 0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Pair better(Pair a, Pair b) {
        return a.cost() <= b.cost() ? a : b;
    }
}
