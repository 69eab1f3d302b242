package org.docksweep.service.sheets;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.docksweep.contract.OrderList;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.JobCode;

/** What is to be ordered and how an order came back, as CSV (RFC 4180) like the tables of the fleet status. */
final class ReportCsv {
    private ReportCsv() {}

    /** Fills a table. */
    private interface Filling {
        void into(CSVPrinter csv) throws IOException;
    }

    private static String table(Filling filling) {
        StringWriter text = new StringWriter();
        try (CSVPrinter csv = new CSVPrinter(text, CSVFormat.RFC4180)) {
            filling.into(csv);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    static String orders(OrderList list) {
        return table(csv -> {
            csv.printRecord(
                    "part",
                    "name",
                    "source",
                    "in_stock",
                    "reorder_level",
                    "quantity",
                    "unit_cost_cents",
                    "waiting_jobs");
            for (OrderList.Row r : list.rows()) {
                FleetStatusCsv.print(
                        csv,
                        r.partNumber(),
                        r.name(),
                        r.source(),
                        r.inStock(),
                        r.reorderLevel(),
                        r.quantity(),
                        r.unitCostCents(),
                        r.waitingJobs().stream().map(JobCode::value).collect(Collectors.joining(" ")));
            }
        });
    }

    static String returns(ReturnReport report) {
        return table(csv -> {
            csv.printRecord("tag", "model", "came", "checked_in_at", "verdict", "route", "watch", "job");
            came(csv, "BACK", report.back());
            for (ReturnList.Line line : report.missing()) {
                FleetStatusCsv.print(csv, line.tag(), line.modelCode(), "MISSING", null, null, null, null, null);
            }
            came(csv, "UNEXPECTED", report.unexpected());
        });
    }

    private static void came(CSVPrinter csv, String how, List<ReturnReport.Row> rows) throws IOException {
        for (ReturnReport.Row r : rows) {
            FleetStatusCsv.print(
                    csv, r.tag(), r.modelCode(), how, r.checkedInAt(), r.verdict(), r.route(), r.watch(), r.jobCode());
        }
    }
}
