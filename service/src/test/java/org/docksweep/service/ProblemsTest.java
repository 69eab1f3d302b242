package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.node.ObjectNode;

@ExtendWith(RunningService.class)
class ProblemsTest {
    private static final int FIFTY_MEGABYTES = 50_000_000;
    private static final String JSON = "application/json";

    private final Api api;

    ProblemsTest(Api api) {
        this.api = api;
    }

    private static void assertProblem(Api.Answer answer, int status, String type) {
        Problem problem = answer.problem();
        assertThat(answer.status()).as("%s", answer).isEqualTo(status);
        assertThat(problem.status()).isEqualTo(status);
        assertThat(problem.type()).isEqualTo(type);
        assertThat(problem.title()).isNotBlank();
        assertThat(problem.detail()).isNotBlank();
        assertThat(problem.hint()).isNotBlank();
        assertThat(answer.text()).doesNotContain("Exception", "\tat ", "org.docksweep.", "tools.jackson");
    }

    @ParameterizedTest
    @CsvSource({
        "/api/cabinets/MCH-999999999, tag",
        "/api/cabinets/%3Cscript%3E, tag",
        "/api/cabinets/mch-000001, tag",
        "/api/check-ins/7, id",
        "/api/bench-jobs/J1-1, code",
        "/api/cabinets?limit=0, limit",
        "/api/cabinets?limit=1001, limit",
        "/api/cabinets?limit=many, limit",
        "/api/cabinets?status=LOST, status",
        "/api/return-lists?after=x, after",
        "/api/recordings/zz, sha256"
    })
    void namesTheBadPartOfAnAddress(String path, String field) {
        Api.Answer answer = api.get(path);
        assertProblem(answer, 400, ProblemTypes.BAD_FIELD);
        assertThat(answer.problem().field()).isEqualTo(field);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/nowhere",
                "/nowhere",
                "/api/cabinets/MCH-0099999",
                "/api/bench-jobs/J99-99999",
                "/api/check-ins/0f8fad5b-d9cb-469f-a165-70867728950e",
                "/api/return-lists/0f8fad5b-d9cb-469f-a165-70867728950e",
                "/api/return-lists/0f8fad5b-d9cb-469f-a165-70867728950e/report",
                "/api/dispatches/0f8fad5b-d9cb-469f-a165-70867728950e",
                "/api/commissionings/0f8fad5b-d9cb-469f-a165-70867728950e",
                "/api/references/TERN/LF"
            })
    void saysWhatDoesNotExist(String path) {
        assertProblem(api.get(path), 404, ProblemTypes.NOT_FOUND);
    }

    @Test
    void refusesMethodsAndMediaTypesItDoesNotOffer() {
        assertProblem(api.delete(ApiPaths.LIMITS), 405, ProblemTypes.UNSUPPORTED);
        assertProblem(
                api.send(api.request(ApiPaths.LIMITS).method("TRACE", BodyPublishers.noBody())),
                405,
                ProblemTypes.UNSUPPORTED);
        assertProblem(api.putText(ApiPaths.MODEL_BOOK, "<a/>", "application/xml"), 415, ProblemTypes.UNSUPPORTED);
        assertProblem(api.get(ApiPaths.LIMITS, "Accept", "image/png"), 406, ProblemTypes.UNSUPPORTED);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "[1,2", "\"text\" trailing", "{\"cabinetModels\":}", "\u0000"})
    void saysWhereABrokenBodyBreaks(String body) {
        assertProblem(api.putText(ApiPaths.MODEL_BOOK, body, JSON), 400, ProblemTypes.UNREADABLE);
    }

    @Test
    void refusesJsonNestedWithoutEnd() {
        String deep = "{\"cabinetModels\":" + "[".repeat(100_000);
        Api.Answer answer = api.putText(ApiPaths.MODEL_BOOK, deep, JSON);
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.problem().type()).isIn(ProblemTypes.UNREADABLE, ProblemTypes.BAD_FIELD);
    }

    @Test
    void namesAFieldItDoesNotKnow() {
        String model = House.newModel(api);
        CheckInBody body = House.pass(House.newCabinet(api, model, CabinetStatus.OUT), model);
        ObjectNode tree = Api.MAPPER.valueToTree(body);
        ((ObjectNode) tree.get("measurements").get(1)).put("ambientKelvin", 290);

        Api.Answer answer = api.put(ApiPaths.CHECK_INS + "/" + body.id(), tree);

        assertProblem(answer, 400, ProblemTypes.BAD_FIELD);
        assertThat(answer.problem().field()).isEqualTo("measurements[1].ambientKelvin");
        assertThat(answer.problem().hint()).contains("ambientCelsius");
        assertThat(api.get(ApiPaths.CHECK_INS + "/" + body.id()).status()).isEqualTo(404);
    }

    @Test
    void passesOnWhatTheVocabularySaysOfAWrongValue() {
        ObjectNode book = Api.MAPPER.valueToTree(House.book("TERN-X"));
        ((ObjectNode) book.get("driverModels").get(0)).put("dcResistanceOhm", -1);

        Api.Answer answer = api.put(ApiPaths.MODEL_BOOK, book);

        assertProblem(answer, 400, ProblemTypes.BAD_FIELD);
        assertThat(answer.problem().field()).startsWith("driverModels[0]");
        assertThat(answer.problem().detail()).contains("dcResistanceOhm must be a finite number greater than 0");
    }

    @Test
    void refusesFiftyMegabytesByTheirAnnouncedLengthWithoutReadingThem() throws IOException {
        URI root = api.root;
        try (Socket socket = new Socket(root.getHost(), root.getPort())) {
            OutputStream out = socket.getOutputStream();
            out.write(("PUT /api/check-ins/" + UUID.randomUUID() + " HTTP/1.1\r\nHost: localhost\r\n"
                            + "Authorization: Bearer " + RunningService.MANAGER_TOKEN + "\r\n"
                            + "Content-Type: application/json\r\nContent-Length: " + FIFTY_MEGABYTES + "\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            out.flush();
            // Not one byte of the body was sent, and the answer is there.
            byte[] start = socket.getInputStream().readNBytes(12);
            assertThat(new String(start, StandardCharsets.US_ASCII)).isEqualTo("HTTP/1.1 413");
        }
    }

    @Test
    void refusesABodyOfUnknownLengthOnceItIsTooLarge() {
        byte[] piece = " ".repeat(1_000_000).getBytes(StandardCharsets.US_ASCII);
        List<byte[]> seventeen = java.util.Collections.nCopies(17, piece);
        Api.Answer answer = api.send(
                api.request(ApiPaths.MODEL_BOOK, "Content-Type", JSON).PUT(BodyPublishers.ofByteArrays(seventeen)));
        assertProblem(answer, 413, ProblemTypes.TOO_LARGE);
    }

    @Test
    void answersTrickyAddressesWithProblemsToo() throws IOException {
        for (String path :
                List.of("/api/cabinets/..%2f%00", "/api//cabinets", "/api/cabinets/%2e%2e/x", "/api/;a=b/x")) {
            String answer = raw("GET " + path + " HTTP/1.1");
            assertThat(answer).as(path).matches("(?s)HTTP/1\\.1 40[0-9].*application/problem\\+json.*");
        }
        assertThat(raw("GET /api/cabinets/<x> HTTP/1.1"))
                .startsWith("HTTP/1.1 400")
                .doesNotContain("<html");
    }

    private String raw(String requestLine) throws IOException {
        try (Socket socket = new Socket(api.root.getHost(), api.root.getPort())) {
            socket.getOutputStream()
                    .write((requestLine + "\r\nHost: localhost\r\nAuthorization: Bearer " + RunningService.MANAGER_TOKEN
                                    + "\r\nConnection: close\r\n\r\n")
                            .getBytes(StandardCharsets.US_ASCII));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
