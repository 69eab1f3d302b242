package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.RetentionReport;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** On PostgreSQL curves lie in partitions by month; on H2 there are none, and the same house works without. */
class CurvePartitionsTest {
    private static final LocalDate LONG_AGO = LocalDate.of(2019, 5, 17);

    @TempDir
    Path folder;

    @BeforeEach
    void needsPostgresql() {
        Assumptions.assumeTrue(Engine.ofThisRun() == Engine.POSTGRESQL, "partitions are PostgreSQL's");
    }

    private static List<String> text(RunningService.Instance service, String sql) throws Exception {
        List<String> found = new ArrayList<>();
        try (Connection connection = service.database().getConnection();
                ResultSet rows = connection.createStatement().executeQuery(sql)) {
            while (rows.next()) {
                found.add(rows.getString(1));
            }
        }
        return found;
    }

    private static String name(YearMonth month) {
        return "measurement_curve_" + month.toString().replace('-', '_');
    }

    private static List<String> whereCurvesLie(RunningService.Instance service) throws Exception {
        return text(
                service, "select distinct cast(cast(tableoid as regclass) as text) from measurement_curve order by 1");
    }

    @Test
    void putsCurvesOfAMonthIntoItsPartitionAndDropsAPastOneWhole() throws Exception {
        YearMonth now = YearMonth.now(ZoneOffset.UTC);
        CheckInBody old;
        try (RunningService.Instance service = RunningService.Instance.in(folder)) {
            Api api = service.api();
            String model = House.newModel(api);
            old = House.pass(House.newCabinet(api, model, CabinetStatus.OUT), model);
            assertThat(House.put(api, old).status()).isEqualTo(201);
            assertThat(whereCurvesLie(service)).containsExactly(name(now));
            assertThat(text(service, "select relname from pg_class where relispartition and relkind = 'r'"))
                    .contains(name(now.plusMonths(1)), name(now.plusMonths(2)));
            // As after a restore: no partition of that month yet.
            try (Connection connection = service.database().getConnection()) {
                connection
                        .createStatement()
                        .execute("update measurement_curve set stored_on = date '" + LONG_AGO + "'");
            }
            assertThat(whereCurvesLie(service)).containsExactly("measurement_curve_rest");
        }
        try (RunningService.Instance service = RunningService.Instance.in(folder, "--docksweep.retention.curves=5y")) {
            Api api = service.api();
            assertThat(whereCurvesLie(service)).containsExactly("measurement_curve_2019_05");
            assertThat(api.get(ApiPaths.CHECK_INS + "/" + old.id()).as(CheckInBody.class))
                    .isEqualTo(old);

            assertThat(api.post(ApiPaths.RETENTION, null)
                            .as(RetentionReport.class)
                            .curves())
                    .isEqualTo(2);

            assertThat(text(service, "select relname from pg_class where relname = 'measurement_curve_2019_05'"))
                    .isEmpty();
            assertThat(text(service, "select target from audit_entry where action = 'REMOVE'"))
                    .containsExactly("retention: 2 curves received in 2019-05");
        }
    }
}
