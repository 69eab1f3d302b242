package org.docksweep.service;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A house that outgrows its one box: a backup of one engine is restored into the other. */
class OtherEngineIT {
    @TempDir
    Path house;

    @TempDir
    Path elsewhere;

    @TempDir
    Path files;

    private BackupTest backup() {
        PostgresServer.required();
        BackupTest backup = new BackupTest();
        backup.house = house;
        backup.elsewhere = elsewhere;
        backup.files = files;
        return backup;
    }

    @Test
    void movesFromH2ToPostgresql() throws IOException {
        backup().roundTrip(Engine.H2, Engine.POSTGRESQL);
    }

    @Test
    void movesFromPostgresqlToH2() throws IOException {
        backup().roundTrip(Engine.POSTGRESQL, Engine.H2);
    }
}
