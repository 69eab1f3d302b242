package org.docksweep.paper;

import java.util.List;
import java.util.stream.Collectors;
import org.docksweep.contract.OrderList;
import org.docksweep.fleet.JobCode;
import org.docksweep.paper.SheetTable.Cell;

/** The list of parts to order. A4. */
public final class OrderSheet {
    private static final double CENTS = 100;

    private OrderSheet() {}

    /**
     * Draws the list. Parts that jobs wait for stand first.
     *
     * @param list what to order
     * @param context language, time zone and who prints
     * @return the document, a PDF of one or more pages
     */
    public static byte[] render(OrderList list, PaperContext context) {
        PaperText text = new PaperText(context);
        Sheet sheet = new Sheet(
                text, text.get("order.title"), text.get("order.subtitle", list.siteName(), text.moment(list.asOf())));
        long waiting =
                list.rows().stream().mapToLong(r -> r.waitingJobs().size()).sum();
        long empty = list.rows().stream().filter(r -> r.inStock() == 0).count();
        sheet.figures(List.of(
                new Sheet.Figure(text.count(list.rows().size()), text.get("order.parts"), false),
                new Sheet.Figure(text.count(empty), text.get("order.empty"), empty > 0),
                new Sheet.Figure(text.count(waiting), text.get("order.waiting"), waiting > 0)));
        SheetTable table = new SheetTable(text.get("order.table"))
                .words("column.part", 30)
                .words("column.name", 50)
                .words("column.source", 22)
                .number("column.in-stock", 14)
                .number("column.level", 14)
                .number("column.order-now", 16)
                .number("column.cost", 18)
                .words("column.waiting-jobs", 24);
        for (OrderList.Row row : list.rows()) {
            table.row(
                    Cell.strong(row.partNumber()),
                    Cell.of(row.name()),
                    Cell.of(text.word("source", row.source())),
                    Cell.of(text.count(row.inStock())),
                    Cell.of(text.count(row.reorderLevel())),
                    Cell.strong(text.count(row.quantity())),
                    Cell.of(
                            row.unitCostCents() == null
                                    ? text.get("reading.none")
                                    : text.number(row.unitCostCents() / CENTS * row.quantity(), 2)),
                    Cell.of(row.waitingJobs().stream().map(JobCode::value).collect(Collectors.joining(" "))));
        }
        sheet.table(table, text.get("order.none"));
        return sheet.close();
    }
}
