package org.docksweep.paper;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.DriftRow;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.FleetStatus.BookingRow;
import org.docksweep.contract.FleetStatus.FaultRow;
import org.docksweep.contract.FleetStatus.ModelRow;
import org.docksweep.paper.SheetTable.Cell;

/** The fleet status sheet: what can go out, what cannot, and what the bench should take next. A4. */
public final class FleetStatusSheet {
    private FleetStatusSheet() {}

    /** The tables of the sheet. */
    public enum Table {
        /** Where the cabinets of each model stand. */
        MODELS,
        /** What is booked, and whether it can be met. */
        BOOKINGS,
        /** Open bench jobs by need and age. */
        BENCH,
        /** Driver models by failures. */
        FAULTS,
        /** Drivers on their way to a fault. */
        DRIFTING
    }

    /**
     * Draws the sheet. Bookings that cannot be met stand first, by the day they leave; bench jobs by the day they are
     * needed, then by age; driver models by number of failures.
     *
     * @param status what the fleet can do
     * @param context language, time zone and who prints
     * @return the document, a PDF of one or more pages
     */
    public static byte[] render(FleetStatus status, PaperContext context) {
        return render(status, EnumSet.allOf(Table.class), context);
    }

    /**
     * Draws some of its tables only, under the same figures.
     *
     * @param status what the fleet can do
     * @param tables which
     * @param context language, time zone and who prints
     * @return the document, a PDF of one or more pages
     */
    public static byte[] render(FleetStatus status, Set<Table> tables, PaperContext context) {
        PaperText text = new PaperText(context);
        Sheet sheet = new Sheet(
                text,
                text.get("fleet.title"),
                text.get("fleet.subtitle", status.siteName(), text.moment(status.asOf())));
        sheet.figures(figures(text, status));
        if (tables.contains(Table.BOOKINGS)) {
            sheet.table(bookings(text, status.bookings()), text.get("fleet.none.bookings"));
        }
        if (tables.contains(Table.BENCH)) {
            sheet.table(bench(text, status.benchQueue(), status.asOf()), text.get("fleet.none.bench"));
        }
        if (tables.contains(Table.DRIFTING)) {
            sheet.table(drifting(text, status.drifting()), text.get("fleet.none.drifting"));
        }
        if (tables.contains(Table.MODELS)) {
            sheet.table(models(text, status.models()), text.get("fleet.none.models"));
        }
        if (tables.contains(Table.FAULTS)) {
            sheet.table(faults(text, status.faults()), text.get("fleet.none.faults"));
        }
        return sheet.close();
    }

    private static List<Sheet.Figure> figures(PaperText text, FleetStatus status) {
        List<ModelRow> models = status.models();
        int held =
                models.stream().mapToInt(m -> m.safetyHold() + m.manualHold()).sum();
        int missing = models.stream().mapToInt(ModelRow::missing).sum();
        long unmet = status.bookings().stream()
                .filter(b -> b.available() < b.booked())
                .count();
        return List.of(
                figure(text, models.stream().mapToInt(FleetStatusSheet::all).sum(), "fleet.cabinets", false),
                figure(text, models.stream().mapToInt(ModelRow::ready).sum(), "fleet.ready", false),
                figure(text, models.stream().mapToInt(ModelRow::out).sum(), "fleet.out", false),
                figure(text, models.stream().mapToInt(ModelRow::bench).sum(), "fleet.bench", false),
                figure(text, held, "fleet.held", false),
                figure(text, missing, "fleet.missing", missing > 0),
                figure(text, unmet, "fleet.unmet", unmet > 0));
    }

    private static Sheet.Figure figure(PaperText text, long count, String label, boolean alarming) {
        return new Sheet.Figure(text.count(count), text.get(label), alarming);
    }

    private static int all(ModelRow row) {
        return row.ready() + row.out() + row.bench() + row.safetyHold() + row.manualHold() + row.missing();
    }

    private static SheetTable bookings(PaperText text, List<BookingRow> rows) {
        SheetTable table = new SheetTable(text.get("fleet.table.bookings"))
                .words("column.out-on", 30)
                .words("column.order", 22)
                .words("column.customer", 34)
                .words("column.model", 23)
                .number("column.booked", 18)
                .number("column.available", 19)
                .words("column.short", 14)
                .words("column.covered", 20);
        rows.stream()
                .sorted(Comparator.comparing((BookingRow b) -> b.available() >= b.booked())
                        .thenComparing(BookingRow::outOn))
                .forEach(b -> {
                    int lacking = Math.max(0, b.booked() - b.available());
                    table.row(
                            Cell.of(text.day(b.outOn())),
                            Cell.of(b.orderNumber()),
                            Cell.of(b.customer()),
                            Cell.of(b.modelCode()),
                            Cell.of(text.count(b.booked())),
                            Cell.of(text.count(b.available())),
                            Cell.signed(lacking > 0 ? Sign.CROSS : Sign.TICK, text.count(lacking)),
                            Cell.bar(b.booked() == 0 ? 1 : (double) b.available() / b.booked()));
                });
        return table;
    }

    private static SheetTable bench(PaperText text, List<BenchJobBody> jobs, Instant asOf) {
        SheetTable table = new SheetTable(text.get("fleet.table.bench"))
                .words("column.job", 19)
                .words("column.need", 30)
                .number("column.age", 13)
                .words("column.tag", 22.5)
                .words("column.model", 22.5)
                .words("column.fault-at", 9)
                .words("column.reason", 41)
                .words("column.state", 24);
        jobs.stream()
                .sorted(Comparator.comparing(
                                BenchJobBody::needOn, Comparator.nullsLast(Comparator.<LocalDate>naturalOrder()))
                        .thenComparing(BenchJobBody::openedAt))
                .forEach(job -> table.row(
                        Cell.strong(job.code().value()),
                        Cell.of(job.needOn() == null ? text.get("reading.none") : text.day(job.needOn())),
                        Cell.of(text.count(
                                Duration.between(job.openedAt(), asOf).toDays())),
                        Cell.of(job.tag().value()),
                        Cell.of(job.modelCode()),
                        Cell.of(job.faultPositionCode()),
                        Cell.of(job.reason() == null ? "" : text.reason(job.reason())),
                        Cell.of(text.word("job-state", job.state()))));
        return table;
    }

    private static SheetTable drifting(PaperText text, List<DriftRow> rows) {
        SheetTable table = new SheetTable(text.get("fleet.table.drifting"))
                .words("column.tag", 24)
                .words("column.model", 24)
                .words("column.fault-at", 10)
                .words("column.drift", 110);
        rows.forEach(r -> table.row(
                Cell.strong(r.tag().value()),
                Cell.of(r.modelCode()),
                Cell.of(r.positionCode() == null ? r.testPointCode() : r.positionCode()),
                Cell.of(text.reason(r.words()))));
        return table;
    }

    private static SheetTable models(PaperText text, List<ModelRow> rows) {
        SheetTable table = new SheetTable(text.get("fleet.table.models"))
                .words("column.model", 24)
                .words("column.name", 44)
                .number("column.ready", 14)
                .number("column.out", 11)
                .number("column.bench", 13)
                .number("column.safety", 16)
                .number("column.manual", 16)
                .number("column.missing", 16)
                .number("column.all", 10)
                .words("column.share", 26);
        for (ModelRow m : rows) {
            int all = all(m);
            table.row(
                    Cell.strong(m.modelCode()),
                    Cell.of(m.modelName()),
                    Cell.strong(text.count(m.ready())),
                    Cell.of(text.count(m.out())),
                    Cell.of(text.count(m.bench())),
                    Cell.of(text.count(m.safetyHold())),
                    Cell.of(text.count(m.manualHold())),
                    Cell.of(text.count(m.missing())),
                    Cell.of(text.count(all)),
                    Cell.bar(all == 0 ? 0 : (double) m.ready() / all));
        }
        return table;
    }

    private static SheetTable faults(PaperText text, List<FaultRow> rows) {
        SheetTable table = new SheetTable(text.get("fleet.table.faults"))
                .words("column.driver", 40)
                .number("column.check-ins", 22)
                .number("column.failures", 18)
                .number("column.failure-share", 22)
                .words("", 60);
        rows.stream()
                .sorted(Comparator.comparingInt(FaultRow::failures).reversed())
                .forEach(f -> {
                    double share = f.checkIns() == 0 ? 0 : (double) f.failures() / f.checkIns();
                    table.row(
                            Cell.strong(f.driverModelCode()),
                            Cell.of(text.count(f.checkIns())),
                            Cell.strong(text.count(f.failures())),
                            Cell.of(f.checkIns() == 0 ? text.get("reading.none") : text.percent(share)),
                            Cell.bar(share));
                });
        return table;
    }
}
