package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

import java.net.http.HttpRequest.BodyPublishers;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Supplier;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.Person;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ProblemTypes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import tools.jackson.databind.JsonNode;

/**
 * Every operation of the API description by everybody who can come: who is not signed on hears 401, who may not hears
 * 403, who may gets through to the body, which is wrong on purpose.
 */
@ExtendWith(RunningService.class)
class RoleMatrixTest {
    private static final int DOCK = 1;
    private static final int BENCH = 2;
    private static final int MANAGER = 3;

    /** What needs more than the dock. A new operation that is not named here must be open to the dock, or this fails. */
    private static final Map<String, Integer> MORE_THAN_DOCK = Map.ofEntries(
            entry("PUT /api/model-book", MANAGER),
            entry("PUT /api/references/{model}/{testPoint}", MANAGER),
            entry("PUT /api/lessons/{model}", MANAGER),
            entry("PUT /api/limits/{version}", MANAGER),
            entry("POST /api/limit-rehearsals", MANAGER),
            entry("POST /api/cabinets/import", MANAGER),
            entry("POST /api/cabinets/{tag}/history", MANAGER),
            entry("PUT /api/cabinets/{tag}/asset-keys", MANAGER),
            entry("PUT /api/cabinets/{tag}/safety-test", BENCH),
            entry("PUT /api/return-lists/{id}", MANAGER),
            entry("POST /api/return-lists/import", MANAGER),
            entry("PUT /api/dispatches/{id}", MANAGER),
            entry("GET /api/kiosk-tokens", MANAGER),
            entry("POST /api/kiosk-tokens", MANAGER),
            entry("DELETE /api/kiosk-tokens/{name}", MANAGER),
            entry("POST /api/kiosk-tokens/{name}/rotate", MANAGER),
            entry("GET /api/people", MANAGER),
            entry("GET /api/people/{id}", MANAGER),
            entry("PUT /api/people/{id}", MANAGER),
            entry("PUT /api/people/{id}/pin", MANAGER),
            entry("GET /api/audit", MANAGER),
            entry("GET /api/audit/export", MANAGER),
            entry("GET /api/export", MANAGER),
            entry("GET /api/retention", MANAGER),
            entry("POST /api/retention", MANAGER),
            entry("PUT /api/driver-bench-data/{driverModel}", MANAGER),
            entry("PUT /api/driver-references/{driverModel}", MANAGER),
            entry("PUT /api/parts/{number}", MANAGER),
            entry("POST /api/past-part-lives", MANAGER),
            entry("PUT /api/learning-decisions/{id}", MANAGER),
            entry("PUT /api/bench-jobs/{code}/actions/{id}", BENCH),
            entry("PUT /api/bench-jobs/{code}/findings/{id}", BENCH),
            entry("PUT /api/bench-jobs/{code}/exchanges/{id}", BENCH),
            entry("PUT /api/bench-jobs/{code}/ticks/{id}", BENCH),
            entry("PUT /api/bench-jobs/{code}/proofs/{id}", BENCH),
            entry("PUT /api/stock-moves/{id}", BENCH),
            entry("PUT /api/spare-repairs/{id}", BENCH));

    private final Api api;

    RoleMatrixTest(Api api) {
        this.api = api;
    }

    private Map<String, String> operations() {
        Map<String, String> found = new TreeMap<>();
        JsonNode paths = Api.MAPPER.readTree(api.get("/v3/api-docs").text()).get("paths");
        for (String path : paths.propertyNames()) {
            for (String method : paths.get(path).propertyNames()) {
                JsonNode content =
                        paths.get(path).get(method).path("requestBody").path("content");
                String type = content.propertyNames().isEmpty()
                        ? "application/json"
                        : content.propertyNames().iterator().next();
                found.put(method.toUpperCase(Locale.ROOT) + " " + path, type);
            }
        }
        return found;
    }

    @Test
    void letsEverybodyDoWhatTheRoleAllowsAndNothingElse() {
        Person dockHand = Staff.hire(api, Person.Role.DOCK);
        Person technician = Staff.hire(api, Person.Role.BENCH);
        Person manager = Staff.hire(api, Person.Role.MANAGER);
        Api kiosk = Staff.kiosk(api, KioskToken.Role.DOCK);
        Api ended = Staff.signedOn(kiosk, technician);
        ended.delete(ApiPaths.CURRENT_SIGN_ON);
        KioskToken revoked = Staff.token(api, KioskToken.Role.MANAGER);
        api.delete(ApiPaths.KIOSK_TOKENS + "/" + revoked.name());

        Map<String, Supplier<Api>> everybody = new LinkedHashMap<>();
        Map<String, Integer> rights = new LinkedHashMap<>();
        add(everybody, rights, "nobody", 0, () -> api.as(null));
        add(everybody, rights, "an unknown token", 0, () -> api.as("x".repeat(43)));
        add(everybody, rights, "a revoked token", 0, () -> api.as(revoked.token()));
        add(everybody, rights, "an ended sign-on", 0, () -> ended);
        add(everybody, rights, "a kiosk", DOCK, () -> kiosk);
        add(everybody, rights, "a dock hand", DOCK, () -> Staff.signedOn(kiosk, dockHand));
        add(everybody, rights, "a technician", BENCH, () -> Staff.signedOn(kiosk, technician));
        add(everybody, rights, "a manager", MANAGER, () -> Staff.signedOn(kiosk, manager));
        add(everybody, rights, "a manager's token", MANAGER, () -> api);
        Map<String, Api> standing = new LinkedHashMap<>();
        everybody.forEach((who, client) -> standing.put(who, client.get()));

        Map<String, String> operations = operations();
        assertThat(operations.keySet()).containsAll(MORE_THAN_DOCK.keySet());
        int answers = 0;
        List<String> wrong = new ArrayList<>();
        for (Map.Entry<String, String> operation : operations.entrySet()) {
            int needed = MORE_THAN_DOCK.getOrDefault(operation.getKey(), DOCK);
            for (String who : everybody.keySet()) {
                // Ending the sign-on would end it for the operations that follow.
                Api client = operation.getKey().startsWith("DELETE /api/sign-ons")
                        ? everybody.get(who).get()
                        : standing.get(who);
                Api.Answer answer = send(client, operation.getKey(), operation.getValue());
                int right = rights.get(who);
                int status = answer.status();
                boolean asItShouldBe = right == 0
                        ? status == 401 && is(answer, ProblemTypes.NOT_SIGNED_ON)
                        : right < needed
                                ? status == 403 && is(answer, ProblemTypes.NOT_ALLOWED)
                                : status != 401 && status != 403 && status < 500;
                if (!asItShouldBe) {
                    wrong.add(operation.getKey() + " by " + who + ": " + answer);
                }
                answers++;
            }
        }
        assertThat(wrong).isEmpty();
        System.out.println("role matrix: " + operations.size() + " operations x " + everybody.size() + " callers = "
                + answers + " answers, all as they should be");
    }

    private static void add(
            Map<String, Supplier<Api>> everybody,
            Map<String, Integer> rights,
            String who,
            int right,
            Supplier<Api> client) {
        everybody.put(who, client);
        rights.put(who, right);
    }

    private static boolean is(Api.Answer answer, String type) {
        return answer.as(Problem.class).type().equals(type);
    }

    private static Api.Answer send(Api client, String operation, String type) {
        String method = operation.substring(0, operation.indexOf(' '));
        String path = operation
                .substring(operation.indexOf(' ') + 1)
                .replaceAll("\\{id\\}", UUID.randomUUID().toString())
                .replaceAll("\\{tag\\}", "MCH-999999")
                .replaceAll("\\{[a-zA-Z0-9]+\\}", "nothing");
        return method.equals("GET") || method.equals("DELETE")
                ? client.send(client.request(path).method(method, BodyPublishers.noBody()))
                : client.send(client.request(path, "Content-Type", type)
                        .method(method, BodyPublishers.ofString("{\"wrong\":1}")));
    }
}
