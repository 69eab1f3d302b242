package org.docksweep.paper;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.contract.ReliabilityReport;
import org.docksweep.contract.ReliabilityReport.CauseRow;
import org.docksweep.contract.ReliabilityReport.DriverRow;
import org.docksweep.contract.ReliabilityReport.Group;
import org.docksweep.paper.SheetTable.Cell;

/** The reliability sheet: how long parts last, per driver model and source, words first. A4. */
public final class ReliabilitySheet {
    private static final double PLOT_MM = 62;
    private static final int GROUPS_DRAWN = 2;
    private static final int EARLY_ALARM = 2;
    private static final double WEEKS_PER_YEAR = 365.25 / 7;

    private ReliabilitySheet() {}

    /**
     * Draws the sheet: per driver model what the figures say in words, the survival curve with its limits, the figures by
     * source, and the failures by cause.
     *
     * @param report how long parts last
     * @param context language, time zone and who prints
     * @return the document, a PDF of one or more pages
     */
    public static byte[] render(ReliabilityReport report, PaperContext context) {
        PaperText text = new PaperText(context);
        Sheet sheet = new Sheet(
                text,
                text.get("reliability.title"),
                text.get(
                        "reliability.subtitle",
                        report.siteName(),
                        text.moment(report.asOf()),
                        text.percent(report.confidence())));
        sheet.figures(figures(text, report));
        if (report.drivers().isEmpty()) {
            sheet.words(text.get("reliability.none"), List.of());
        }
        for (int i = 0; i < report.drivers().size(); i++) {
            if (i > 0) {
                sheet.newPage();
            }
            driver(sheet, text, report.drivers().get(i));
        }
        return sheet.close();
    }

    private static List<Sheet.Figure> figures(PaperText text, ReliabilityReport report) {
        List<Group> groups = report.drivers().stream().map(DriverRow::all).toList();
        long early = groups.stream().mapToLong(Group::earlyFailures).sum();
        return List.of(
                figure(text, groups.size(), "reliability.models", false),
                figure(text, groups.stream().mapToLong(Group::parts).sum(), "reliability.parts", false),
                figure(text, groups.stream().mapToLong(Group::inService).sum(), "reliability.in-service", false),
                figure(text, groups.stream().mapToLong(Group::failures).sum(), "reliability.failures", false),
                figure(text, early, "reliability.early", early >= EARLY_ALARM),
                figure(
                        text,
                        Math.round(groups.stream().mapToDouble(Group::partWeeks).sum() / WEEKS_PER_YEAR),
                        "reliability.part-years",
                        false));
    }

    private static Sheet.Figure figure(PaperText text, long count, String label, boolean alarming) {
        return new Sheet.Figure(text.count(count), text.get(label), alarming);
    }

    private static void driver(Sheet sheet, PaperText text, DriverRow row) {
        sheet.words(
                text.get("reliability.driver", row.driverModelCode(), row.driverModelName()),
                row.words().stream().map(text::reason).toList());
        List<SurvivalPlot.Series> series = series(text, row);
        if (!series.isEmpty()) {
            sheet.drawing(PLOT_MM, (ink, box) -> new SurvivalPlot(ink, text, series).draw(box));
        }
        sheet.table(groups(text, row), text.get("reliability.none"));
        sheet.table(causes(text, row), text.get("reliability.no-failures"));
    }

    /** Groups of a known source that have a curve; without two of them all parts together. */
    private static List<SurvivalPlot.Series> series(PaperText text, DriverRow row) {
        List<SurvivalPlot.Series> known = row.groups().stream()
                .filter(g -> g.source() != null && !g.curve().isEmpty())
                .limit(GROUPS_DRAWN)
                .map(g -> new SurvivalPlot.Series(source(text, g), g))
                .toList();
        if (known.size() > 1) {
            return known;
        }
        return row.all().curve().isEmpty()
                ? List.of()
                : List.of(new SurvivalPlot.Series(text.get("reliability.all"), row.all()));
    }

    private static String source(PaperText text, Group group) {
        return group.source() == null
                ? text.get("reliability.source.unknown")
                : text.word("reliability.source", group.source());
    }

    private static SheetTable groups(PaperText text, DriverRow row) {
        SheetTable table = new SheetTable(text.get("reliability.table.groups"))
                .words("reliability.column.source", 23)
                .number("reliability.column.parts", 13)
                .number("reliability.column.in-service", 15)
                .number("reliability.column.failures", 17)
                .number("reliability.column.early", 13)
                .number("reliability.column.returns", 16)
                .number("reliability.column.rate", 29)
                .number("reliability.column.tenth", 30)
                .number("reliability.column.half", 15)
                .number("reliability.column.cost", 22);
        List<Group> groups = new ArrayList<>(row.groups());
        groups.add(row.all());
        for (int i = 0; i < groups.size(); i++) {
            Group g = groups.get(i);
            boolean all = i == groups.size() - 1;
            table.row(
                    Cell.strong(all ? text.get("reliability.all") : source(text, g)),
                    Cell.of(text.count(g.parts())),
                    Cell.of(text.count(g.inService())),
                    Cell.of(text.count(g.failures())),
                    Cell.of(text.count(g.earlyFailures())),
                    Cell.of(text.count(g.returns())),
                    Cell.of(limited(text, g.failuresPerThousandWeeks(), g.rateLower(), g.rateUpper(), 1)),
                    Cell.of(tenth(text, g)),
                    Cell.of(g.medianWeeks() == null ? none(text) : text.number(g.medianWeeks(), 0)),
                    Cell.of(
                            g.costPerThousandReturnsCents() == null
                                    ? none(text)
                                    : text.number(g.costPerThousandReturnsCents() / 100, 0)));
        }
        return table;
    }

    private static String tenth(PaperText text, Group group) {
        if (group.weibull() == null) {
            return group.noWeibull() == null ? none(text) : text.word("reliability.no-weibull", group.noWeibull());
        }
        return limited(
                text,
                group.weibull().tenPercentWeeks(),
                group.weibull().tenPercentLower(),
                group.weibull().tenPercentUpper(),
                0);
    }

    private static String limited(PaperText text, Double value, Double lower, Double upper, int decimals) {
        if (value == null) {
            return none(text);
        }
        String from = lower == null ? none(text) : text.number(lower, decimals);
        String to = upper == null ? none(text) : text.number(upper, decimals);
        return text.get("reliability.limited", text.number(value, decimals), from, to);
    }

    private static String none(PaperText text) {
        return text.get("reading.none");
    }

    private static SheetTable causes(PaperText text, DriverRow row) {
        SheetTable table = new SheetTable(text.get("reliability.table.causes"))
                .words("reliability.column.cause", 60)
                .number("reliability.column.failures", 18)
                .number("reliability.column.original", 18)
                .number("reliability.column.aftermarket", 22)
                .words("reliability.column.share", 50);
        int all = row.causes().stream().mapToInt(CauseRow::failures).sum();
        for (CauseRow cause : row.causes()) {
            table.row(
                    Cell.strong(
                            cause.cause() == null
                                    ? text.get("reliability.cause.none")
                                    : text.word("reliability.cause", cause.cause())),
                    Cell.of(text.count(cause.failures())),
                    Cell.of(text.count(cause.original())),
                    Cell.of(text.count(cause.aftermarket())),
                    Cell.bar((double) cause.failures() / all));
        }
        return table;
    }
}
