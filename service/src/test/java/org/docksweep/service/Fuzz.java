package org.docksweep.service;

import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.Dispatch;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.Person;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.SignOn;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Reason;
import org.docksweep.service.store.StoredJson;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Sends every operation of the API description good and spoiled requests and looks at what comes back: never a status of
 * 500 and above, never a stack trace, and every refusal as problem details. {@code Fuzz REQUESTS SEED} runs many.
 */
final class Fuzz {
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

    private final Api api;
    private final SplittableRandom random;
    private final Map<String, String> operations = new TreeMap<>();
    private final Map<Integer, Integer> statuses = new TreeMap<>();
    private final Map<String, Integer> hits = new TreeMap<>();
    private final List<String> wrong = new ArrayList<>();
    private final Api kiosk;
    private final Person person;
    private final List<AssetTag> tags = new ArrayList<>();
    private String model;
    private int requests;
    private int accepted;

    Fuzz(Api api, long seed) {
        this.api = api;
        this.random = new SplittableRandom(seed);
        JsonNode paths = Api.MAPPER.readTree(api.get("/v3/api-docs").text()).get("paths");
        for (String path : paths.propertyNames()) {
            for (String method : paths.get(path).propertyNames()) {
                operations.put(method.toUpperCase(Locale.ROOT) + " " + path, path);
            }
        }
        kiosk = Staff.kiosk(api, KioskToken.Role.DOCK);
        person = Staff.hire(api, Person.Role.DOCK);
        renew();
    }

    /** New things to ask for, so that what grows per cabinet does not. */
    private void renew() {
        model = House.newModel(api);
        tags.clear();
        for (int i = 0; i < 5; i++) {
            tags.add(House.newCabinet(api, model, CabinetStatus.OUT));
        }
    }

    private <T> T any(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    /** A request as it is sent. */
    private record Shot(String path, Object body, String type) {}

    /** Sends so many requests, every operation in turn. */
    Fuzz run(int count) {
        List<String> all = List.copyOf(operations.keySet());
        for (int i = 0; i < count; i++) {
            if (i % 2_000 == 1_999) {
                renew();
            }
            fire(all.get(i % all.size()));
        }
        return this;
    }

    private void fire(String operation) {
        String method = operation.substring(0, operation.indexOf(' '));
        String path = operations.get(operation);
        Shot shot = good(operation, path);
        boolean spoil = random.nextInt(100) < 60;
        String sentPath = shot.path();
        byte[] body = bytes(shot.body());
        String type = shot.type();
        if (spoil) {
            int how = random.nextInt(10);
            if (how < 2 || shot.body() == null) {
                sentPath = spoiledPath(path);
            } else if (how == 2) {
                type = any(TYPES);
            } else if (how == 3) {
                body = spoiledBytes(body);
            } else {
                body = shot.body() instanceof byte[] ? spoiledBytes(body) : spoiledJson(shot.body());
            }
        }
        Api client = operation.startsWith("DELETE " + ApiPaths.CURRENT_SIGN_ON) && !spoil
                ? Staff.signedOn(kiosk, person)
                : api;
        List<String> headers = new ArrayList<>();
        if (type != null) {
            headers.addAll(List.of("Content-Type", type));
        }
        if (spoil && random.nextInt(5) == 0) {
            headers.addAll(List.of(
                    any(List.of(
                            "Accept", "Accept-Language", "If-None-Match", "X-Request-Id", "X-Forwarded-For", "Range")),
                    any(List.of(
                            "*", "text/html", "de;q=x", "bytes=0-,5-", "\"", "a".repeat(3_000), "W/\"x\"", ";;;"))));
        }
        Api.Answer answer;
        try {
            answer = client.send(client.request(sentPath, headers.toArray(String[]::new))
                    .method(method, body == null ? BodyPublishers.noBody() : BodyPublishers.ofByteArray(body)));
        } catch (IllegalArgumentException e) {
            // The client itself refuses such an address or header; nothing was sent, so nothing is counted.
            return;
        }
        note(operation, sentPath, answer);
    }

    private void note(String operation, String path, Api.Answer answer) {
        requests++;
        statuses.merge(answer.status(), 1, Integer::sum);
        hits.merge(operation, 1, Integer::sum);
        if (answer.status() < 400) {
            accepted++;
            return;
        }
        String text = answer.text();
        boolean leaks = text.contains("\tat ") || text.contains("org.springframework") || text.contains("java.lang.");
        String type = String.valueOf(answer.header("Content-Type"));
        boolean problem = type.equals(Problem.MEDIA_TYPE) || type.startsWith(Problem.MEDIA_TYPE + ";");
        if (answer.status() >= 500 || leaks || !problem) {
            wrong.add(operation + " at " + path.substring(0, Math.min(200, path.length())) + ": " + answer);
        }
    }

    private static byte[] bytes(Object body) {
        return body == null ? null : body instanceof byte[] raw ? raw : Api.MAPPER.writeValueAsBytes(body);
    }

    private Shot good(String operation, String path) {
        UUID id = UUID.randomUUID();
        AssetTag tag = any(tags);
        Map<String, String> values = new LinkedHashMap<>();
        values.put("tag", tag.value());
        values.put("id", id.toString());
        values.put("model", model);
        values.put("testPoint", any(List.of("LF", "HF")));
        Object body = null;
        String type = "application/json";
        switch (operation) {
            case "PUT /api/model-book" -> body = House.book(model);
            case "PUT /api/cabinets/{tag}" -> {
                AssetTag fresh = House.newTag();
                values.put("tag", fresh.value());
                body = House.cabinet(fresh, model, CabinetStatus.OUT);
            }
            case "POST /api/cabinets/import" -> {
                type = "text/csv";
                body = ("tag,model\n" + House.newTag() + "," + model + "\n").getBytes(StandardCharsets.UTF_8);
            }
            case "POST /api/cabinets/{tag}/history" ->
                body = List.of(new HistoryEvent(
                        id,
                        tag,
                        null,
                        House.NIGHT,
                        "Ines Duna",
                        HistoryEvent.Kind.REGISTERED,
                        Reason.of("verdict-pass")));
            case "PUT /api/return-lists/{id}" -> body = list(id, tag);
            case "POST /api/return-lists/import" -> {
                type = "text/csv";
                body = ("order_number,customer,due_on,tag\nF-" + House.next() + ",Harbour,2026-03-14," + tag + "\n")
                        .getBytes(StandardCharsets.UTF_8);
            }
            case "PUT /api/dispatches/{id}" ->
                body = new Dispatch(
                        id,
                        "D-1",
                        "Harbour",
                        LocalDate.of(2026, 3, 20),
                        LocalDate.of(2026, 3, 22),
                        List.of(new Dispatch.Line(model, 2)));
            case "PUT /api/check-ins/{id}" -> {
                var checkIn = random.nextBoolean() ? House.pass(tag, model) : House.fail(tag, model, House.newCode());
                values.put("id", checkIn.id().toString());
                body = checkIn;
            }
            case "PUT /api/recordings/{sha256}" -> {
                type = "application/zip";
                byte[] bytes = ("PK" + House.next()).getBytes(StandardCharsets.UTF_8);
                body = (bytes.length < 4 ? "PK00".getBytes(StandardCharsets.UTF_8) : bytes);
                values.put("sha256", StoredJson.sha256((byte[]) body));
            }
            case "PUT /api/people/{id}" ->
                body = new Person(id, "Fuzzed", "FUZZ-" + House.next(), Person.Role.DOCK, false);
            case "PUT /api/people/{id}/pin" -> {
                values.put("id", person.id().toString());
                body = new Person.Pin(Staff.PIN);
            }
            case "POST /api/sign-ons" -> body = new SignOn.Order(person.badge(), Staff.PIN);
            case "POST /api/kiosk-tokens" -> body = new KioskToken.Order("fuzz-" + House.next(), KioskToken.Role.DOCK);
            case "POST /api/kiosk-tokens/{name}/rotate" ->
                values.put("name", Staff.token(api, KioskToken.Role.DOCK).name());
            case "DELETE /api/kiosk-tokens/{name}" ->
                values.put("name", Staff.token(api, KioskToken.Role.DOCK).name());
            case "GET /api/people/{id}" -> values.put("id", person.id().toString());
            case "GET /api/check-ins/{id}" -> {
                var checkIn = House.pass(tag, model);
                House.put(api, checkIn);
                values.put("id", checkIn.id().toString());
            }
            case "GET /api/return-lists/{id}",
                    "GET /api/return-lists/{id}/report",
                    "POST /api/return-lists/{id}/close" ->
                values.put("id", House.newList(api, model, List.of(tag)).id().toString());
            default -> {
                if (!operation.startsWith("GET") && !operation.startsWith("DELETE")) {
                    body = Api.MAPPER.createObjectNode();
                }
            }
        }
        return new Shot(filled(path, values), body, body == null ? null : type);
    }

    private static ReturnList list(UUID id, AssetTag tag) {
        return new ReturnList(
                id,
                "F-" + House.next(),
                "Harbour",
                LocalDate.of(2026, 3, 14),
                false,
                List.of(new ReturnList.Line(tag, null)));
    }

    private static String filled(String path, Map<String, String> values) {
        String filled = path;
        for (Map.Entry<String, String> value : values.entrySet()) {
            filled = filled.replace("{" + value.getKey() + "}", value.getValue());
        }
        return filled.replaceAll("\\{[a-zA-Z0-9]+\\}", "nothing");
    }

    private String spoiledPath(String path) {
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

    private byte[] spoiledBytes(byte[] bytes) {
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

    private byte[] spoiledJson(Object body) {
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

    int requests() {
        return requests;
    }

    int accepted() {
        return accepted;
    }

    List<String> wrong() {
        return wrong;
    }

    boolean hitEverything() {
        return hits.keySet().equals(operations.keySet());
    }

    String report() {
        return "fuzz: " + requests + " requests over " + hits.size() + " of " + operations.size() + " operations, "
                + accepted + " accepted, " + wrong.size() + " wrong answers; by status " + statuses;
    }

    public static void main(String[] arguments) {
        try (RunningService.Instance service = RunningService.Instance.inNewFolder()) {
            Fuzz fuzz = new Fuzz(service.api(), Long.parseLong(arguments[1])).run(Integer.parseInt(arguments[0]));
            System.out.println(fuzz.report());
            fuzz.wrong().stream().limit(30).forEach(System.out::println);
            System.exit(fuzz.wrong().isEmpty() ? 0 : 1);
        }
    }
}
