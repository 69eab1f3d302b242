package org.docksweep.kiosk.night;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/** The service's database of a night after the service has ended, read by plain SQL. */
final class NightRows {
    private final Path nightFolder;

    NightRows(Path nightFolder) {
        this.nightFolder = nightFolder;
    }

    List<UUID> checkIns() throws SQLException {
        try (Connection connection = database();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("select id from check_in")) {
            List<UUID> ids = new ArrayList<>();
            while (rows.next()) {
                ids.add(rows.getObject(1, UUID.class));
            }
            return ids;
        }
    }

    int cabinetsCheckedInTwice() throws SQLException {
        return count("select count(*) from (select tag from check_in group by tag having count(*) > 1)");
    }

    int benchCheckIns() throws SQLException {
        return count("select count(*) from check_in where route = 'BENCH'");
    }

    int benchJobs() throws SQLException {
        return count("select count(*) from bench_job");
    }

    private int count(String sql) throws SQLException {
        try (Connection connection = database();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            rows.next();
            return rows.getInt(1);
        }
    }

    private Connection database() throws SQLException {
        String file = nightFolder
                .resolve("service")
                .resolve("docksweep")
                .toAbsolutePath()
                .toString();
        return DriverManager.getConnection(
                "jdbc:h2:file:" + file
                        + ";MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH;IFEXISTS=TRUE",
                "sa",
                "");
    }
}
