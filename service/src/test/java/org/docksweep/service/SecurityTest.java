package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.ProblemTypes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@ExtendWith(RunningService.class)
class SecurityTest {
    private final Api api;

    SecurityTest(Api api) {
        this.api = api;
    }

    private KioskToken issue(KioskToken.Role role) {
        Api.Answer answer = api.post(ApiPaths.KIOSK_TOKENS, new KioskToken.Order("token " + House.next(), role));
        assertThat(answer.status()).as("%s", answer).isEqualTo(201);
        return answer.as(KioskToken.class);
    }

    @Test
    void tellsAnyoneWhetherItIsAliveAndNothingMore() {
        Api.Answer answer = api.as(null).get(ApiPaths.HEALTH);
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.text()).contains("UP").doesNotContain("h2", "diskSpace");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/cabinets",
                "/api/kiosk-snapshot",
                "/api/nowhere",
                "/nowhere",
                "/v3/api-docs",
                "/actuator",
                "/actuator/env",
                "/error",
                "/"
            })
    void answersNobodyWithoutAKnownToken(String path) {
        for (String token : new String[] {null, "", "wrong", RunningService.MANAGER_TOKEN + "x", "a".repeat(2_000)}) {
            Api.Answer answer = api.as(token).get(path);
            assertThat(answer.status()).as(path + " with " + token).isEqualTo(401);
            assertThat(answer.problem().type()).isEqualTo(ProblemTypes.NOT_SIGNED_ON);
            assertThat(answer.header("WWW-Authenticate")).isEqualTo("Bearer");
        }
    }

    @Test
    void keepsManagersWorkFromTheDock() {
        Api dock = api.as(issue(KioskToken.Role.DOCK).token());
        String id = UUID.randomUUID().toString();
        List<Api.Answer> refused = List.of(
                dock.put(ApiPaths.MODEL_BOOK, House.book("TERN-X")),
                dock.put(ApiPaths.REFERENCES + "/TERN-X/LF", List.of()),
                dock.put(ApiPaths.DISPATCHES + "/" + id, List.of()),
                dock.put(ApiPaths.RETURN_LISTS + "/" + id, List.of()),
                dock.postBytes(ApiPaths.CABINETS_IMPORT, new byte[0], "text/csv"),
                dock.postBytes(ApiPaths.RETURN_LISTS_IMPORT, new byte[0], "text/csv"),
                dock.post(ApiPaths.CABINETS + "/MCH-000001" + ApiPaths.HISTORY, List.of()),
                dock.post(ApiPaths.KIOSK_TOKENS, new KioskToken.Order("mine", KioskToken.Role.MANAGER)),
                dock.delete(ApiPaths.KIOSK_TOKENS + "/mine"),
                dock.delete(ApiPaths.CABINETS + "/MCH-000001"));

        assertThat(refused).allSatisfy(answer -> {
            assertThat(answer.status()).as("%s", answer).isEqualTo(403);
            assertThat(answer.problem().type()).isEqualTo(ProblemTypes.NOT_ALLOWED);
        });
        assertThat(dock.get(ApiPaths.CABINETS).status()).isEqualTo(200);
        assertThat(dock.put(ApiPaths.CHECK_INS + "/" + id, List.of()).status()).isEqualTo(400);
    }

    @Test
    void endsATokenWhenItIsRevoked() {
        KioskToken token = issue(KioskToken.Role.DOCK);
        String path = ApiPaths.KIOSK_TOKENS + "/" + token.name().replace(" ", "%20");
        assertThat(api.as(token.token()).get(ApiPaths.LIMITS).status()).isEqualTo(200);

        assertThat(api.delete(path).status()).isEqualTo(204);

        assertThat(api.as(token.token()).get(ApiPaths.LIMITS).status()).isEqualTo(401);
        assertThat(api.delete(path).status()).isEqualTo(404);
    }

    @Test
    void refusesASecondTokenOfTheSameName() {
        KioskToken token = issue(KioskToken.Role.DOCK);
        Api.Answer answer = api.post(ApiPaths.KIOSK_TOKENS, new KioskToken.Order(token.name(), KioskToken.Role.DOCK));
        assertThat(answer.problem().type()).isEqualTo(ProblemTypes.WRONG_STATE);
    }
}
