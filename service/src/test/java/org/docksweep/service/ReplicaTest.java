package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.FleetStatus;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A replica that says something else than the main database shows who reads where. */
class ReplicaTest {
    @TempDir
    Path main;

    @TempDir
    Path copy;

    private static String url(Path folder) {
        List<String> settings = Engine.ofThisRun().settings(folder);
        return settings.stream()
                .filter(s -> s.startsWith("--docksweep.database.url="))
                .map(s -> s.substring(s.indexOf('=') + 1))
                .findFirst()
                .orElse("jdbc:h2:file:" + folder.resolve("docksweep")
                        + ";MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH");
    }

    @Test
    void readsSheetsFromTheReplicaAndEverythingElseFromTheMainDatabase() {
        String copied;
        try (RunningService.Instance service = RunningService.Instance.in(copy)) {
            copied = House.newModel(service.api());
            House.newCabinet(service.api(), copied, CabinetStatus.READY);
        }
        try (RunningService.Instance service =
                RunningService.Instance.in(main, "--docksweep.database.replica-url=" + url(copy))) {
            Api api = service.api();
            String model = House.newModel(api);
            AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);

            assertThat(House.put(api, House.pass(tag, model)).status()).isEqualTo(201);
            assertThat(api.get(ApiPaths.CABINETS + "/" + tag).status()).isEqualTo(200);
            assertThat(api.get(ApiPaths.FLEET_STATUS).as(FleetStatus.class).toString())
                    .contains(copied)
                    .doesNotContain(model);
            assertThat(api.get(ApiPaths.MODEL_BOOK).text()).contains(model).doesNotContain("\"" + copied + "\"");
            // A refusal at a sheet's address still reaches the log of the main database.
            assertThat(api.as(null).get(ApiPaths.FLEET_STATUS).status()).isEqualTo(401);
        }
    }

    @Test
    void readsSheetsFromTheMainDatabaseWhileTheReplicaDoesNotAnswer() throws IOException {
        int nobody;
        try (ServerSocket socket = new ServerSocket(0)) {
            nobody = socket.getLocalPort();
        }
        String url = Engine.ofThisRun() == Engine.H2
                ? "jdbc:h2:tcp://127.0.0.1:" + nobody + "/nobody"
                : "jdbc:postgresql://127.0.0.1:" + nobody + "/nobody";
        try (RunningService.Instance service =
                RunningService.Instance.in(main, "--docksweep.database.replica-url=" + url)) {
            Api api = service.api();
            String model = House.newModel(api);
            for (int i = 0; i < 2; i++) {
                assertThat(api.get(ApiPaths.FLEET_STATUS).as(FleetStatus.class).models())
                        .extracting(FleetStatus.ModelRow::modelCode)
                        .contains(model);
            }
        }
    }
}
