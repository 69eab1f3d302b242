package org.docksweep.service.backup;

import jakarta.annotation.security.RolesAllowed;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import javax.sql.DataSource;
import org.docksweep.contract.ApiPaths;
import org.docksweep.service.site.Site;
import org.springframework.http.HttpHeaders;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("MANAGER")
class ExportController {
    private static final String ZIP = "application/zip";

    private final DataSource database;
    private final Site site;
    private final Clock clock;

    ExportController(DataSource database, Site site, Clock clock) {
        this.database = database;
        this.site = site;
        this.clock = clock;
    }

    /** While the service runs. Breaks off without its manifest when something fails on the way. */
    @GetMapping(path = ApiPaths.EXPORT, produces = ZIP)
    void export(@RequestParam(defaultValue = "false") boolean recordings, HttpServletResponse response)
            throws IOException, SQLException {
        response.setContentType(ZIP);
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                "attachment; filename=\"docksweep-" + LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC) + ".zip\"");
        try (Connection connection = database.getConnection()) {
            Exporter.write(
                    connection,
                    recordings ? site.dataDir().toAbsolutePath().resolve("recordings") : null,
                    clock,
                    response.getOutputStream());
        }
    }
}
