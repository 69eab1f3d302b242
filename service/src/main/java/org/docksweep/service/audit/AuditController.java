package org.docksweep.service.audit;

import jakarta.annotation.security.RolesAllowed;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.AuditEntry;
import org.docksweep.contract.Page;
import org.docksweep.service.web.Paging;
import org.springframework.http.HttpHeaders;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("MANAGER")
class AuditController {
    private static final String CSV = "text/csv;charset=UTF-8";

    private final Audit audit;

    AuditController(Audit audit) {
        this.audit = audit;
    }

    @GetMapping(ApiPaths.AUDIT)
    Page<AuditEntry> page(
            @RequestParam(defaultValue = "0") long after,
            @RequestParam(defaultValue = Paging.DEFAULT_LIMIT) int limit) {
        return Paging.page(
                audit.after(after, Paging.checked(limit) + 1),
                limit,
                AuditRow::entry,
                row -> Long.toString(row.number()));
    }

    /** Page by page, so that a log of years needs no memory. */
    @GetMapping(path = ApiPaths.AUDIT_EXPORT, produces = CSV)
    void export(HttpServletResponse response) throws IOException {
        response.setContentType(CSV);
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"audit.csv\"");
        try (CSVPrinter csv = new CSVPrinter(
                new OutputStreamWriter(response.getOutputStream(), StandardCharsets.UTF_8), CSVFormat.RFC4180)) {
            csv.printRecord(
                    "number", "at", "done_by", "kiosk", "person_id", "action", "target", "outcome", "request_id");
            long last = 0;
            for (List<AuditRow> rows = audit.after(last, Paging.MOST);
                    !rows.isEmpty();
                    rows = audit.after(last, Paging.MOST)) {
                for (AuditRow row : rows) {
                    print(csv, row.entry());
                    last = row.number();
                }
            }
        }
    }

    private static void print(CSVPrinter csv, AuditEntry entry) throws IOException {
        csv.printRecord(
                entry.number(),
                entry.at(),
                harmless(entry.doneBy()),
                harmless(entry.kiosk()),
                entry.personId(),
                entry.action(),
                harmless(entry.target()),
                entry.outcome(),
                harmless(entry.requestId()));
    }

    /** A cell that a spreadsheet would run as a formula gets an apostrophe in front. */
    private static String harmless(String cell) {
        return cell != null && !cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0 ? "'" + cell : cell;
    }
}
