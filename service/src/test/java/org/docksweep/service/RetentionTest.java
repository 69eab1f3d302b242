package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.RetentionReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Verdict;
import org.docksweep.service.backup.OfflineCommand;
import org.docksweep.service.store.StoredJson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What goes after its time and what stays; times are moved into the past by plain SQL. */
class RetentionTest {
    private static final String[] RULES = {"--docksweep.retention.curves=2y", "--docksweep.retention.recordings=90d"};
    private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

    @TempDir
    Path folder;

    private RunningService.Instance service(String... settings) {
        return RunningService.Instance.in(folder, settings);
    }

    private static void update(RunningService.Instance service, String sql) throws Exception {
        try (Connection connection = service.database().getConnection();
                Statement statement = connection.createStatement()) {
            assertThat(statement.executeUpdate(sql)).isPositive();
        }
    }

    private static long count(RunningService.Instance service, String sql) throws Exception {
        try (Connection connection = service.database().getConnection();
                ResultSet rows = connection.createStatement().executeQuery(sql)) {
            rows.next();
            return rows.getLong(1);
        }
    }

    /** As if everything of that check-in had come so long ago. */
    private static void age(RunningService.Instance service, CheckInBody body, LocalDate receivedOn) throws Exception {
        update(
                service,
                "update check_in set received_at = timestamp with time zone '" + receivedOn
                        + " 12:00:00+00' where id = '" + body.id() + "'");
        update(
                service,
                "update measurement_curve set stored_on = date '" + receivedOn
                        + "' where measurement_id in (select id from measurement where check_in_id = '" + body.id()
                        + "')");
    }

    private static CheckInBody send(RunningService.Instance service, CheckInBody body) {
        assertThat(House.put(service.api(), body).status()).isEqualTo(201);
        return body;
    }

    @Test
    void removesOldCurvesAndRecordingsAndNothingElse() throws Exception {
        try (RunningService.Instance service = service(RULES)) {
            Api api = service.api();
            String model = House.newModel(api);
            AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
            AssetTag broken = House.newCabinet(api, model, CabinetStatus.OUT);
            byte[] archive = "PK of the test".getBytes(StandardCharsets.UTF_8);
            String sha256 = StoredJson.sha256(archive);
            String recording = ApiPaths.RECORDINGS + "/" + sha256;
            assertThat(api.putBytes(recording, archive, "application/zip").status())
                    .isEqualTo(201);
            CheckInBody old = send(service, House.pass(tag, model));
            CheckInBody fresh = send(service, House.pass(tag, model));
            CheckInBody atTheBench = send(service, House.fail(broken, model, House.newCode()));
            update(
                    service,
                    "update measurement set recording_sha256 = '" + sha256 + "' where check_in_id = '" + old.id()
                            + "'");
            age(service, old, TODAY.minusYears(2).minusDays(1));
            age(service, fresh, TODAY.minusYears(2).plusDays(1));
            age(service, atTheBench, TODAY.minusYears(3));
            String history =
                    api.get(ApiPaths.CABINETS + "/" + tag + ApiPaths.HISTORY).text();

            RetentionReport looked = api.get(ApiPaths.RETENTION).as(RetentionReport.class);

            assertThat(looked)
                    .isEqualTo(new RetentionReport(
                            false, TODAY.minusYears(2), TODAY.minusDays(90), 2, 1, archive.length, 2));
            assertThat(count(service, "select count(*) from measurement_curve")).isEqualTo(6);
            assertThat(api.get(recording).status()).isEqualTo(200);

            RetentionReport removed = api.post(ApiPaths.RETENTION, null).as(RetentionReport.class);

            assertThat(removed)
                    .isEqualTo(new RetentionReport(
                            true, TODAY.minusYears(2), TODAY.minusDays(90), 2, 1, archive.length, 2));
            assertThat(count(service, "select count(*) from measurement_curve")).isEqualTo(4);
            assertThat(api.get(recording).status()).isEqualTo(404);
            assertThat(api.get(recording).problem().hint()).contains("retention");
            assertThat(api.get(ApiPaths.CHECK_INS + "/" + fresh.id()).as(CheckInBody.class))
                    .isEqualTo(fresh);
            assertThat(api.get(ApiPaths.CHECK_INS + "/" + atTheBench.id()).as(CheckInBody.class))
                    .isEqualTo(atTheBench);
            CheckInBody left = api.get(ApiPaths.CHECK_INS + "/" + old.id()).as(CheckInBody.class);
            assertThat(left.measurements()).hasSize(2).allSatisfy(m -> {
                assertThat(m.judgement().impedance()).isNull();
                assertThat(m.judgement().verdict()).isEqualTo(Verdict.PASS);
                assertThat(m.judgement().reason().key()).isEqualTo("retention-curve-removed");
            });
            assertThat(left.measurements().stream().map(MeasurementBody::id))
                    .isEqualTo(
                            old.measurements().stream().map(MeasurementBody::id).toList());
            // The kiosk may still send it again, and its history stands as it was.
            assertThat(House.put(api, old).status()).isEqualTo(200);
            assertThat(api.get(ApiPaths.CABINETS + "/" + tag + ApiPaths.HISTORY).text())
                    .isEqualTo(history);
            assertThat(count(
                            service,
                            "select count(*) from audit_entry where action = 'REMOVE' and done_by = 'bootstrap' and"
                                    + " target like 'retention: 2 curves%' and request_id is not null"))
                    .isEqualTo(1);
            assertThat(count(
                            service,
                            "select count(*) from audit_entry where action = 'REMOVE' and target like 'retention: 1"
                                    + " recordings, " + archive.length + " bytes%'"))
                    .isEqualTo(1);
            assertThat(api.get(ApiPaths.AUDIT + "?limit=1000").text()).contains("retention: 2 curves");

            RetentionReport again = api.post(ApiPaths.RETENTION, null).as(RetentionReport.class);
            assertThat(again.curves() + again.recordings()).isZero();
        }
    }

    @Test
    void keepsEverythingUnlessTheHouseSaysOtherwise() throws Exception {
        try (RunningService.Instance service = service()) {
            Api api = service.api();
            String model = House.newModel(api);
            CheckInBody old = send(service, House.pass(House.newCabinet(api, model, CabinetStatus.OUT), model));
            age(service, old, TODAY.minusYears(30));

            RetentionReport report = api.post(ApiPaths.RETENTION, null).as(RetentionReport.class);

            assertThat(report).isEqualTo(new RetentionReport(true, null, null, 0, 0, 0, 0));
            assertThat(api.get(ApiPaths.CHECK_INS + "/" + old.id()).as(CheckInBody.class))
                    .isEqualTo(old);
        }
    }

    @Test
    void runsAsACommandOnAServiceThatStands() throws Exception {
        CheckInBody old;
        try (RunningService.Instance service = service()) {
            Api api = service.api();
            String model = House.newModel(api);
            old = send(service, House.pass(House.newCabinet(api, model, CabinetStatus.OUT), model));
            age(service, old, TODAY.minusYears(4));
        }
        assertThat(command()).contains("would remove 2 curves", "0 recordings");
        assertThat(command("--remove")).contains("removed 2 curves", "received before " + TODAY.minusYears(2));
        assertThat(command("--remove")).contains("removed 0 curves");
        try (RunningService.Instance service = service()) {
            assertThat(count(service, "select count(*) from measurement_curve")).isZero();
            assertThat(count(service, "select count(*) from measurement")).isEqualTo(2);
            assertThat(
                            count(
                                    service,
                                    "select count(*) from audit_entry where action = 'REMOVE' and done_by = 'retention command'"))
                    .isEqualTo(1);
        }
    }

    private String command(String... more) {
        List<String> all = new ArrayList<>(List.of("retention"));
        all.addAll(List.of(more));
        all.addAll(List.of(RULES));
        all.add("--docksweep.data-dir=" + folder);
        all.add("--logging.level.root=OFF");
        all.addAll(Engine.ofThisRun().settings(folder));
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        PrintStream print = new PrintStream(said, true, StandardCharsets.UTF_8);
        assertThat(OfflineCommand.run(print, print, all.toArray(String[]::new)))
                .as("%s", said)
                .isZero();
        return said.toString(StandardCharsets.UTF_8);
    }

    @Test
    void refusesAnAgeThatIsASlipOfThePen() throws Exception {
        assertThat(Files.list(folder)).isEmpty();
        assertThatThrownBy(() -> service("--docksweep.retention.curves=3d").close())
                .rootCause()
                .hasMessageContaining("docksweep.retention.curves must be at least 30 days");
    }
}
