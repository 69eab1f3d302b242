package org.docksweep.service.retention;

import jakarta.annotation.security.RolesAllowed;
import java.io.IOException;
import java.nio.file.Path;
import java.security.Principal;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import javax.sql.DataSource;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.RetentionReport;
import org.docksweep.service.site.Site;
import org.slf4j.MDC;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("MANAGER")
class RetentionController {
    private final DataSource database;
    private final Path recordings;
    private final RetentionSettings settings;
    private final Clock clock;

    RetentionController(DataSource database, Site site, RetentionSettings settings, Clock clock) {
        this.database = database;
        this.recordings = site.dataDir().toAbsolutePath().resolve("recordings");
        this.settings = settings;
        this.clock = clock;
    }

    /** What is past its time; changes nothing. */
    @GetMapping(ApiPaths.RETENTION)
    RetentionReport look() throws SQLException, IOException {
        return run(null);
    }

    @PostMapping(ApiPaths.RETENTION)
    RetentionReport remove(Principal principal) throws SQLException, IOException {
        return run(principal.getName());
    }

    private RetentionReport run(String by) throws SQLException, IOException {
        try (Connection connection = database.getConnection()) {
            return Retention.run(connection, recordings, settings, clock, by, MDC.get("requestId"));
        }
    }
}
