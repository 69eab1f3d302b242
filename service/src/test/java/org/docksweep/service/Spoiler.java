package org.docksweep.service;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SplittableRandom;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Makes bad requests out of good ones, for {@link Fuzz}. */
final class Spoiler {
    private static final List<String> NASTY = List.of(
            "",
            " ",
            "\u0000",
            "a\u0000b",
            "'; drop table cabinet; --",
            "=cmd|' /C calc'!A0",
            "../../../../etc/passwd",
            "%00",
            "%2e%2e%2f",
            "\ud800",
            "\ud83d\ude00",
            "\u202eabc",
            "\u0130",
            "{{7*7}}",
            "${jndi:ldap://x/a}",
            "<script>alert(1)</script>",
            "9".repeat(400),
            "x".repeat(5_000),
            "-1",
            "1e999",
            "NaN",
            "null",
            "true",
            "2026-02-30",
            "2026-03-14T02:10:00+99:00",
            "+1000000000-12-31T23:59:59Z",
            "0001-01-01T00:00:00Z",
            "00000000-0000-0000-0000-000000000000",
            "MCH-000001 ",
            "mch-000001",
            "MCH\u2010000001");
    private static final List<String> NUMBERS = List.of(
            "-1", "0", "2147483648", "9223372036854775808", "1e308", "-1e-320", "1E400", "0.1", "NaN", "Infinity");
    private static final List<String> TYPES = List.of(
            "application/json",
            "text/csv",
            "application/zip",
            "text/plain",
            "application/xml",
            "multipart/form-data",
            "application/json;charset=utf-16",
            "text/csv;charset=ISO-8859-1",
            "*/*",
            "nonsense");

    private final SplittableRandom random;

    Spoiler(SplittableRandom random) {
        this.random = random;
    }

    <T> T any(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    String type() {
        return any(TYPES);
    }

    String path(String path) {
        String spoiled = path;
        while (spoiled.contains("{")) {
            spoiled = spoiled.replaceFirst(
                    "\\{[a-zA-Z0-9]+\\}", encoded(any(NASTY)).replace("\\", "").replace("$", ""));
        }
        if (random.nextBoolean()) {
            String name = any(List.of("limit", "after", "status", "recordings", "open", "x"));
            spoiled += "?" + name + "=" + encoded(any(random.nextBoolean() ? NASTY : NUMBERS));
        }
        return spoiled;
    }

    private static String encoded(String text) {
        return java.net.URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }

    byte[] bytes(byte[] bytes) {
        if (bytes == null || bytes.length == 0) {
            return new byte[] {(byte) 0xff};
        }
        byte[] spoiled = bytes.clone();
        return switch (random.nextInt(4)) {
            case 0 -> java.util.Arrays.copyOf(spoiled, random.nextInt(spoiled.length));
            case 1 -> {
                spoiled[random.nextInt(spoiled.length)] ^= (byte) (1 << random.nextInt(8));
                yield spoiled;
            }
            case 2 -> ("[".repeat(2_000) + "]".repeat(2_000)).getBytes(StandardCharsets.UTF_8);
            default -> new byte[0];
        };
    }

    byte[] json(Object body) {
        JsonNode tree = Api.MAPPER.valueToTree(body);
        int changes = 1 + random.nextInt(2);
        for (int i = 0; i < changes; i++) {
            spoil(tree, 0);
        }
        return Api.MAPPER.writeValueAsBytes(tree);
    }

    /** Walks down at random and changes one thing there. */
    private void spoil(JsonNode node, int depth) {
        if (node instanceof ObjectNode object && !object.isEmpty()) {
            String name = any(List.copyOf(object.propertyNames()));
            JsonNode child = object.get(name);
            if (child.isContainer() && !child.isEmpty() && random.nextInt(3) > 0) {
                spoil(child, depth + 1);
            } else if (random.nextInt(5) == 0) {
                object.remove(name);
            } else if (random.nextInt(8) == 0) {
                object.put(any(NASTY), 1);
            } else {
                object.set(name, odd());
            }
        } else if (node instanceof ArrayNode array && !array.isEmpty()) {
            int at = random.nextInt(array.size());
            JsonNode child = array.get(at);
            if (child.isContainer() && !child.isEmpty() && random.nextInt(3) > 0) {
                spoil(child, depth + 1);
            } else if (random.nextInt(4) == 0) {
                array.add(child);
            } else {
                array.set(at, odd());
            }
        }
    }

    private JsonNode odd() {
        return switch (random.nextInt(6)) {
            case 0 -> Api.MAPPER.getNodeFactory().nullNode();
            case 1 -> Api.MAPPER.createArrayNode().add(1);
            case 2 -> Api.MAPPER.createObjectNode().put("x", "y");
            case 3 -> Api.MAPPER.getNodeFactory().numberNode(any(List.of(-1.0, 0.0, 1e308, 2147483648.0, 0.5)));
            default -> Api.MAPPER.getNodeFactory().stringNode(any(NASTY));
        };
    }
}
