package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.docksweep.contract.KioskToken;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

class MetricsTest {
    private static final String METRICS = "/actuator/metrics";

    @TempDir
    Path folder;

    private static double value(Api api, String path, String statistic) {
        for (JsonNode measurement : Api.MAPPER.readTree(api.get(path).text()).get("measurements")) {
            if (measurement.get("statistic").stringValue().equals(statistic)) {
                return measurement.get("value").doubleValue();
            }
        }
        throw new AssertionError(path + " has no " + statistic);
    }

    @Test
    void countsWhatTheHouseDoesForAManager() {
        String profiles = Engine.ofThisRun() == Engine.POSTGRESQL ? "postgresql,metrics" : "metrics";
        try (RunningService.Instance service =
                RunningService.Instance.in(folder, "--spring.profiles.active=" + profiles)) {
            Api api = service.api();
            String model = House.newModel(api);
            for (int i = 0; i < 3; i++) {
                assertThat(House.put(api, House.pass(House.newCabinet(api, model, CabinetStatus.OUT), model))
                                .status())
                        .isEqualTo(201);
            }
            assertThat(House.put(
                                    api,
                                    House.fail(House.newCabinet(api, model, CabinetStatus.OUT), model, House.newCode()))
                            .status())
                    .isEqualTo(201);

            assertThat(value(api, METRICS + "/docksweep.check-ins?tag=route:SHELF", "COUNT"))
                    .isEqualTo(3);
            assertThat(value(api, METRICS + "/docksweep.check-ins?tag=route:BENCH", "COUNT"))
                    .isEqualTo(1);
            assertThat(value(
                            api,
                            METRICS + "/http.server.requests?tag=uri:/api/check-ins/%7Bid%7D&tag=status:201",
                            "COUNT"))
                    .isEqualTo(4);
            assertThat(value(api, METRICS + "/jdbc.connections.active", "VALUE"))
                    .isNotNegative();
            assertThat(Staff.kiosk(api, KioskToken.Role.DOCK).get(METRICS).status())
                    .isEqualTo(403);
        }
    }
}
