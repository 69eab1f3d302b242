package org.docksweep.service;

import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
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

/**
 * Sends every operation of the API description good and spoiled requests and looks at what comes back: never a status of
 * 500 and above, never a stack trace, and every refusal as problem details. {@code Fuzz REQUESTS SEED} runs many.
 */
final class Fuzz {
    private final Api api;
    private final SplittableRandom random;
    private final Spoiler spoiler;
    private final Map<String, String> operations = new TreeMap<>();
    /** By operation and status: types of problems, none for an answer that is none. */
    private final Map<String, Map<String, Set<String>>> described = new TreeMap<>();

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
        this.spoiler = new Spoiler(random);
        JsonNode paths = Api.MAPPER.readTree(api.get("/v3/api-docs").text()).get("paths");
        for (String path : paths.propertyNames()) {
            for (String method : paths.get(path).propertyNames()) {
                String operation = method.toUpperCase(Locale.ROOT) + " " + path;
                operations.put(operation, path);
                described.put(operation, answers(paths.get(path).get(method).get("responses")));
            }
        }
        kiosk = Staff.kiosk(api, KioskToken.Role.DOCK);
        person = Staff.hire(api, Person.Role.DOCK);
        renew();
    }

    private static Map<String, Set<String>> answers(JsonNode responses) {
        Map<String, Set<String>> answers = new TreeMap<>();
        for (String status : responses.propertyNames()) {
            Set<String> types = new TreeSet<>();
            responses
                    .get(status)
                    .path("content")
                    .path(Problem.MEDIA_TYPE)
                    .path("examples")
                    .forEach(example ->
                            types.add(example.path("value").path("type").asString()));
            answers.put(status, types);
        }
        return answers;
    }

    /** New things to ask for, so that what grows per cabinet does not. */
    private void renew() {
        model = House.newModel(api);
        tags.clear();
        for (int i = 0; i < 5; i++) {
            tags.add(House.newCabinet(api, model, CabinetStatus.OUT));
        }
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
                sentPath = spoiler.path(path);
            } else if (how == 2) {
                type = spoiler.type();
            } else if (how == 3) {
                body = spoiler.bytes(body);
            } else {
                body = shot.body() instanceof byte[] ? spoiler.bytes(body) : spoiler.json(shot.body());
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
                    spoiler.any(List.of(
                            "Accept", "Accept-Language", "If-None-Match", "X-Request-Id", "X-Forwarded-For", "Range")),
                    spoiler.any(List.of(
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
        note(operation, sentPath, sentPath.equals(shot.path()), answer);
    }

    private void note(String operation, String path, boolean asDescribed, Api.Answer answer) {
        requests++;
        statuses.merge(answer.status(), 1, Integer::sum);
        hits.merge(operation, 1, Integer::sum);
        if (answer.status() < 400) {
            accepted++;
            if (!described.get(operation).containsKey(Integer.toString(answer.status()))) {
                wrong.add(operation + ": a status that is not described: " + answer);
            }
            return;
        }
        String text = answer.text();
        boolean leaks = text.contains("\tat ") || text.contains("org.springframework") || text.contains("java.lang.");
        String type = String.valueOf(answer.header("Content-Type"));
        boolean problem = type.equals(Problem.MEDIA_TYPE) || type.startsWith(Problem.MEDIA_TYPE + ";");
        if (answer.status() >= 500 || leaks || !problem) {
            wrong.add(operation + " at " + path.substring(0, Math.min(200, path.length())) + ": " + answer);
        } else if (asDescribed && !isDescribed(operation, answer)) {
            wrong.add(operation + ": a refusal that is not described: " + answer);
        }
    }

    private boolean isDescribed(String operation, Api.Answer answer) {
        return described
                .get(operation)
                .getOrDefault(Integer.toString(answer.status()), Set.of())
                .contains(answer.problem().type());
    }

    private static byte[] bytes(Object body) {
        return body == null ? null : body instanceof byte[] raw ? raw : Api.MAPPER.writeValueAsBytes(body);
    }

    private Shot good(String operation, String path) {
        UUID id = UUID.randomUUID();
        AssetTag tag = spoiler.any(tags);
        Map<String, String> values = new LinkedHashMap<>();
        values.put("tag", tag.value());
        values.put("id", id.toString());
        values.put("model", model);
        values.put("testPoint", spoiler.any(List.of("LF", "HF")));
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
