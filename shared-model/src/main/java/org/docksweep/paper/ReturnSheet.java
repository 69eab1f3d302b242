package org.docksweep.paper;

import java.util.List;
import java.util.stream.Stream;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.Verdict;
import org.docksweep.paper.SheetTable.Cell;

/** The return sheet: how one return list came back. A4, as many pages as it takes. */
public final class ReturnSheet {
    private ReturnSheet() {}

    /**
     * Draws the sheet. Missing cabinets come first, because a person must act on them tonight; then what came
     * unexpected; then everything that came back, in the order of the report.
     *
     * @param report how the list came back
     * @param context language, time zone, site and who prints
     * @return the document, a PDF of one or more pages
     */
    public static byte[] render(ReturnReport report, PaperContext context) {
        PaperText text = new PaperText(context);
        ReturnList list = report.list();
        Sheet sheet = new Sheet(
                text,
                text.get("return.title", list.orderNumber()),
                text.get("return.subtitle", list.customer(), text.day(list.dueOn()), text.moment(report.asOf())) + " "
                        + text.get(list.closed() ? "return.closed" : "return.open"));
        long failed = Stream.concat(report.back().stream(), report.unexpected().stream())
                .filter(row -> row.verdict() == Verdict.FAIL)
                .count();
        sheet.figures(List.of(
                figure(text, list.lines().size(), "return.due", false),
                figure(text, report.back().size(), "return.back", false),
                figure(text, report.missing().size(), "return.missing", true),
                figure(text, report.unexpected().size(), "return.unexpected", true),
                figure(text, failed, "return.failed", true)));
        sheet.table(missing(text, report.missing()), text.get("return.none.missing"));
        sheet.table(
                arrived(text, text.get("return.table.unexpected"), report.unexpected()),
                text.get("return.none.unexpected"));
        sheet.table(arrived(text, text.get("return.table.back"), report.back()), text.get("return.none.back"));
        return sheet.close();
    }

    private static Sheet.Figure figure(PaperText text, long count, String label, boolean alarmsAboveZero) {
        return new Sheet.Figure(text.count(count), text.get(label), alarmsAboveZero && count > 0);
    }

    private static SheetTable missing(PaperText text, List<ReturnList.Line> lines) {
        SheetTable table = new SheetTable(text.get("return.table.missing"))
                .words("column.tag", 20)
                .words("column.model", 80);
        lines.forEach(line -> table.row(Cell.strong(line.tag().value()), Cell.of(line.modelCode())));
        return table;
    }

    private static SheetTable arrived(PaperText text, String heading, List<ReturnReport.Row> rows) {
        SheetTable table = new SheetTable(heading)
                .words("column.tag", 24)
                .words("column.model", 23)
                .number("column.time", 12)
                .words("column.verdict", 31)
                .words("column.route", 27)
                .words("column.reason", 44)
                .words("column.job", 19);
        for (ReturnReport.Row row : rows) {
            table.row(
                    Cell.strong(row.tag().value()),
                    Cell.of(row.modelCode()),
                    Cell.of(text.time(row.checkedInAt())),
                    Cell.signed(Sign.of(row.verdict(), row.route(), row.watch()), verdict(text, row)),
                    Cell.of(text.word("route", row.route())),
                    Cell.of(row.reason() == null ? "" : text.reason(row.reason())),
                    Cell.of(row.jobCode() == null ? "" : row.jobCode().value()));
        }
        return table;
    }

    private static String verdict(PaperText text, ReturnReport.Row row) {
        if (row.verdict() == null) {
            return text.get("verdict.none");
        }
        return row.verdict() == Verdict.PASS && row.watch()
                ? text.get("verdict.watch")
                : text.word("verdict", row.verdict());
    }
}
