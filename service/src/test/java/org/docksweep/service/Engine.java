package org.docksweep.service;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import org.docksweep.service.store.StoredJson;

/**
 * The database the tests run on: H2 in the data folder, or with {@code -Ddocksweep.test.database=postgresql} a
 * PostgreSQL database of its own for every data folder.
 */
enum Engine {
    H2,
    POSTGRESQL;

    static Engine ofThisRun() {
        return valueOf(System.getProperty("docksweep.test.database", "h2").toUpperCase(java.util.Locale.ROOT));
    }

    /** Settings of a service with its data in that folder. */
    List<String> settings(Path folder) {
        return this == H2 ? List.of() : PostgresServer.required().settings(database(folder));
    }

    private static String database(Path folder) {
        return "d"
                + StoredJson.sha256(
                                folder.toAbsolutePath().toString().getBytes(java.nio.charset.StandardCharsets.UTF_8))
                        .substring(0, 30);
    }

    /** Plain SQL beside the service; on H2 only while no service runs on the folder. */
    Connection connect(Path folder) throws SQLException {
        return this == H2
                ? DriverManager.getConnection(
                        "jdbc:h2:file:" + folder.resolve("docksweep") + ";DATABASE_TO_LOWER=TRUE", "sa", "")
                : PostgresServer.required().connect(database(folder));
    }
}
