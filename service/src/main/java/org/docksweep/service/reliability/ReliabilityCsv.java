package org.docksweep.service.reliability;

import java.util.Locale;
import org.docksweep.contract.ReliabilityReport;
import org.docksweep.contract.ReliabilityReport.DriverRow;
import org.docksweep.contract.ReliabilityReport.Group;
import org.docksweep.contract.ReliabilityReport.Point;

/** The curves of a report as a table, one line per step; numbers never follow a locale. */
final class ReliabilityCsv {
    private static final String HEAD = "driverModel,source,weeks,atRisk,failures,survival,lower,upper\r\n";

    private ReliabilityCsv() {}

    static String of(ReliabilityReport report) {
        StringBuilder csv = new StringBuilder(HEAD);
        for (DriverRow driver : report.drivers()) {
            curve(csv, driver, "ALL", driver.all());
            for (Group group : driver.groups()) {
                curve(
                        csv,
                        driver,
                        group.source() == null ? "UNKNOWN" : group.source().name(),
                        group);
            }
        }
        return csv.toString();
    }

    private static void curve(StringBuilder csv, DriverRow driver, String source, Group group) {
        for (Point p : group.curve()) {
            csv.append(cell(driver.driverModelCode()))
                    .append(',')
                    .append(source)
                    .append(String.format(
                            Locale.ROOT,
                            ",%.2f,%d,%d,%.6f,%.6f,%.6f\r\n",
                            p.weeks(),
                            p.atRisk(),
                            p.failures(),
                            p.survival(),
                            p.lower(),
                            p.upper()));
        }
    }

    /** A code as a cell: quoted, and never read as a formula. */
    private static String cell(String code) {
        String safe = code.matches("[=+\\-@\\t\\r].*") ? "'" + code : code;
        return '"' + safe.replace("\"", "\"\"") + '"';
    }
}
