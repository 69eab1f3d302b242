package org.docksweep.service.description;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.examples.Example;
import io.swagger.v3.oas.models.media.MediaType;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Bodies that were sent and answered in tests, one of each operation; see {@code ExampleBook} for how they are kept. */
final class Examples {
    private static final String FILE = "examples.json";
    private static final String NAME = "example";
    private static final String JSON = "application/json";

    private final Map<String, Pair> pairs;

    /** A body sent, or null, and the answer. */
    record Pair(Object request, Object answer) {}

    private Examples(Map<String, Pair> pairs) {
        this.pairs = pairs;
    }

    static Examples read() {
        try (InputStream in = Examples.class.getResourceAsStream(FILE)) {
            if (in == null) {
                throw new IllegalStateException("there is no " + FILE + " beside the description");
            }
            return new Examples(new JsonMapper().readValue(in, new TypeReference<Map<String, Pair>>() {}));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    void addTo(String name, Operation operation) {
        Pair pair = pairs.get(name);
        if (pair == null) {
            return;
        }
        if (pair.request() != null && operation.getRequestBody() != null) {
            add(operation.getRequestBody().getContent().get(JSON), pair.request());
        }
        operation.getResponses().forEach((status, response) -> {
            if (status.startsWith("2") && pair.answer() != null && response.getContent() != null) {
                MediaType media = response.getContent().get(JSON);
                add(media == null ? response.getContent().get("*/*") : media, pair.answer());
            }
        });
    }

    private static void add(MediaType media, Object value) {
        if (media != null) {
            media.addExamples(NAME, new Example().value(value));
        }
    }
}
