package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.docksweep.contract.ApiPaths;
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
}
