package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ProblemTypes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import tools.jackson.databind.JsonNode;

/** Holds the contract's paths, the controllers and the API description together. */
@ExtendWith(RunningService.class)
class ContractTest {
    /** Root, and the parts that follow an id. */
    private static final Set<String> PARTS = Set.of(
            "API",
            "HISTORY",
            "ASSET_KEYS",
            "SAFETY_TEST",
            "REPORT",
            "CLOSE",
            "ACTIONS",
            "FINDINGS",
            "EXCHANGES",
            "TICKS",
            "PROOFS",
            "FILE",
            "EVIDENCE",
            "FIT",
            "MOVES",
            "ROTATE",
            "PIN");

    private static final Set<String> OUTSIDE_THE_DESCRIPTION = Set.of("HEALTH");

    /** Whole references with curves, and hundreds of lives: no example to read. */
    private static final Set<String> TOO_LONG = Set.of("PUT /api/lessons/{model}", "POST /api/past-part-lives");

    private final Api api;

    ContractTest(Api api) {
        this.api = api;
    }

    @Test
    void describesEveryPathOfTheContractAndNoOther() throws IllegalAccessException {
        Api.Answer answer = api.get("/v3/api-docs");
        assertThat(answer.status()).as("%s", answer).isEqualTo(200);
        JsonNode paths = Api.MAPPER.readTree(answer.text()).get("paths");
        List<String> described = new ArrayList<>(paths.propertyNames());

        List<String> roots = new ArrayList<>();
        List<String> parts = new ArrayList<>();
        for (Field field : ApiPaths.class.getFields()) {
            if (Modifier.isStatic(field.getModifiers()) && !OUTSIDE_THE_DESCRIPTION.contains(field.getName())) {
                (PARTS.contains(field.getName()) ? parts : roots).add((String) field.get(null));
            }
        }
        assertThat(roots)
                .hasSizeGreaterThan(10)
                .allSatisfy(root ->
                        assertThat(described).anyMatch(path -> path.equals(root) || path.startsWith(root + "/")));
        assertThat(described)
                .allSatisfy(
                        path -> assertThat(roots).anyMatch(root -> path.equals(root) || path.startsWith(root + "/")));
        parts.remove(ApiPaths.API);
        assertThat(parts)
                .allSatisfy(part -> assertThat(described)
                        .anyMatch(path -> path.endsWith("}" + part) || path.contains("}" + part + "/{")));
    }

    private JsonNode operations() {
        return Api.MAPPER.readTree(api.get("/v3/api-docs").text());
    }

    /** RFC 9457, 3.1.1 and 4: a type is an address of its own, described for people. */
    @Test
    void namesTheProblemTypesOfEveryOperationAndExplainsEachOnce() throws Exception {
        Set<String> types = new TreeSet<>();
        for (Field field : ProblemTypes.class.getFields()) {
            types.add((String) field.get(null));
        }
        JsonNode description = operations();
        assertThat(description.get("openapi").asString()).startsWith("3.1");
        Set<String> named = new TreeSet<>();
        List<String> wrong = new ArrayList<>();
        forEachOperation(description, (operation, node) -> {
            JsonNode responses = node.get("responses");
            for (String status : responses.propertyNames()) {
                if (status.charAt(0) < '4') {
                    continue;
                }
                JsonNode examples = responses
                        .get(status)
                        .path("content")
                        .path(Problem.MEDIA_TYPE)
                        .path("examples");
                if (examples.isEmpty()) {
                    wrong.add(operation + " " + status);
                }
                examples.forEach(e -> named.add(
                        Api.MAPPER.treeToValue(e.get("value"), Problem.class).type()));
            }
            for (String status : List.of("400", "401", "403", "500")) {
                if (!responses.has(status)) {
                    wrong.add(operation + " without " + status);
                }
            }
        });
        assertThat(wrong).isEmpty();
        assertThat(named).isEqualTo(types);

        String page = Files.readString(Path.of("../docs/problems.md"));
        assertThat(types)
                .allSatisfy(type -> assertThat(page).contains("`" + type.substring(type.lastIndexOf('/') + 1) + "`"));
    }

    /** What an example says must be there in the schema it stands beside, by name and depth. */
    @Test
    void givesExamplesThatFitTheirSchemas() {
        JsonNode description = operations();
        JsonNode schemas = description.path("components").path("schemas");
        List<String> wrong = new ArrayList<>();
        int[] bodies = new int[2];
        forEachOperation(description, (operation, node) -> {
            JsonNode body = node.path("requestBody").path("content").path("application/json");
            if (body.isObject()) {
                bodies[0]++;
                bodies[1] += body.has("examples") ? 1 : 0;
                if (!body.has("examples") && !TOO_LONG.contains(operation)) {
                    wrong.add(operation + " without an example");
                }
            }
            check(operation, body, schemas, wrong);
            node.get("responses")
                    .forEach(response ->
                            check(operation, response.path("content").path("application/json"), schemas, wrong));
        });
        assertThat(wrong).isEmpty();
        System.out.println("examples: " + bodies[1] + " of " + bodies[0] + " bodies that are sent");
        assertThat(bodies[1]).isGreaterThan(20);
    }

    private static void check(String operation, JsonNode media, JsonNode schemas, List<String> wrong) {
        media.path("examples")
                .forEach(example -> check(operation, example.get("value"), media.path("schema"), schemas, wrong));
    }

    private static void check(String at, JsonNode value, JsonNode schema, JsonNode schemas, List<String> wrong) {
        JsonNode meant =
                schema.has("$ref") ? schemas.path(schema.get("$ref").asString().replaceFirst(".*/", "")) : schema;
        if (value.isArray()) {
            value.forEach(item -> check(at + "[]", item, meant.path("items"), schemas, wrong));
        } else if (value.isObject() && meant.has("properties")) {
            for (String name : value.propertyNames()) {
                if (meant.get("properties").has(name)) {
                    check(
                            at + "." + name,
                            value.get(name),
                            meant.get("properties").get(name),
                            schemas,
                            wrong);
                } else {
                    wrong.add(at + "." + name);
                }
            }
        }
    }

    private static void forEachOperation(JsonNode description, BiConsumer<String, JsonNode> visit) {
        JsonNode paths = description.get("paths");
        for (String path : paths.propertyNames()) {
            for (String method : paths.get(path).propertyNames()) {
                visit.accept(
                        method.toUpperCase(Locale.ROOT) + " " + path,
                        paths.get(path).get(method));
            }
        }
    }
}
