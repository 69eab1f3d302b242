package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.zip.GZIPInputStream;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.KioskToken;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(RunningService.class)
class HeadersTest {
    private final Api api;

    HeadersTest(Api api) {
        this.api = api;
    }

    @Test
    void tellsBrowsersToDoNothingWithItsAnswersWhetherRefusedOrNot() {
        for (Api client : new Api[] {api, api.as(null)}) {
            Api.Answer answer = client.get(ApiPaths.LIMITS);
            assertThat(answer.header("Content-Security-Policy")).contains("default-src 'none'");
            assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
            assertThat(answer.header("X-Frame-Options")).isEqualTo("DENY");
            assertThat(answer.header("Referrer-Policy")).isEqualTo("no-referrer");
            assertThat(answer.header("Cache-Control")).contains("no-store");
            assertThat(answer.header("Server")).isNull();
            assertThat(answer.header("X-Request-Id")).matches("[0-9a-f-]{36}");
        }
    }

    @Test
    void givesARequestIdOfItsOwnWhenTheOneSentIsNotPlain() {
        assertThat(api.get(ApiPaths.LIMITS, "X-Request-Id", "kiosk-1.42").header("X-Request-Id"))
                .isEqualTo("kiosk-1.42");
        for (String sent : new String[] {"a b", "x".repeat(65), "<b>", "a%0d%0ab"}) {
            assertThat(api.get(ApiPaths.LIMITS, "X-Request-Id", sent).header("X-Request-Id"))
                    .isNotEqualTo(sent);
        }
    }

    @Test
    void packsLargeAnswersWhenAsked() throws Exception {
        String model = House.newModel(api);
        for (int i = 0; i < 20; i++) {
            House.newCabinet(api, model, CabinetStatus.READY);
        }
        Api.Answer packed = api.get(ApiPaths.CABINETS + "?limit=20", "Accept-Encoding", "gzip");
        assertThat(packed.header("Content-Encoding")).isEqualTo("gzip");
        byte[] plain =
                new GZIPInputStream(new ByteArrayInputStream(packed.response().body())).readAllBytes();
        assertThat(new String(plain, StandardCharsets.UTF_8)).startsWith("{");
        assertThat(packed.response().body().length).isLessThan(plain.length / 2);
    }

    @Test
    void tellsAManagerWhatIsHealthyAndNobodyElse() {
        String details = api.get(ApiPaths.HEALTH).text();
        assertThat(details).contains("\"db\"", "\"diskSpace\"", "\"recordings\"", "\"clock\"");
        for (Api client : new Api[] {api.as(null), Staff.kiosk(api, KioskToken.Role.DOCK)}) {
            Api.Answer answer = client.get(ApiPaths.HEALTH);
            assertThat(answer.status()).isEqualTo(200);
            assertThat(answer.text()).doesNotContain("diskSpace", "recordings", "clock");
        }
    }
}
