package org.docksweep.kiosk.proving;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.docksweep.contract.ProvingFault;

/** The report as a table for people. */
public final class ProvingTable {
    private final ProvingReport report;
    private final List<String> lines = new ArrayList<>();

    private ProvingTable(ProvingReport report) {
        this.report = report;
    }

    /**
     * Lays out a report.
     *
     * @param report the report
     * @return lines
     */
    public static List<String> lines(ProvingReport report) {
        ProvingTable table = new ProvingTable(report);
        table.head();
        table.faults();
        table.healthy();
        table.prompts();
        table.models();
        table.groups();
        table.cost();
        return List.copyOf(table.lines);
    }

    private void add(String format, Object... values) {
        lines.add(String.format(Locale.ROOT, format, values).stripTrailing());
    }

    private void head() {
        ProvingOptions o = report.options();
        add(
                "Proving run: %d of %d returns, models %s, seed %d, references from %d good units, taught %d times, hall %.0f to %.0f dB,"
                        + " converter %.0f dB, %.0f to %.0f C",
                report.outcomes().size(),
                o.returns(),
                o.models(),
                o.seed(),
                o.goodUnits(),
                o.teachings(),
                o.hallNoiseDb().low(),
                o.hallNoiseDb().high(),
                o.converterNoiseDb(),
                o.celsius().low(),
                o.celsius().high());
        add("");
    }

    private void faults() {
        add("Faults. missed = not failed, SWEEP AGAIN included. limit = upper one-sided 95 %% Wilson limit of missed.");
        add(
                "Naming is of the failed: place = sent to the right driver; 1st, 2nd = first suspect, one of the first two,");
        add(
                "within the fault's ambiguity group; exact = the same without groups. meter, mask: found by the plain gates.");
        add(
                "%-36s %6s %6s %6s %6s %8s %8s | %6s %6s %6s %6s %6s | %6s %6s",
                "",
                "n",
                "failed",
                "again",
                "missed",
                "missed %",
                "limit %",
                "place",
                "1st",
                "2nd",
                "1st ex",
                "2nd ex",
                "meter",
                "mask");
        report.faults().forEach((name, t) -> {
            add(
                    "%-36s %6d %6d %6d %6d %8.2f %8.3f | %6s %6s %6s %6s %6s | %6s %6s",
                    name,
                    t.returns(),
                    t.failed(),
                    t.again(),
                    t.missed(),
                    100.0 * t.missed() / t.returns(),
                    100 * Wilson.upperOneSided(t.missed(), t.returns()),
                    share(t.position(), t.failed()),
                    share(t.firstInGroup(), t.failed()),
                    share(t.firstTwoInGroup(), t.failed()),
                    share(t.firstExact(), t.failed()),
                    share(t.firstTwoExact(), t.failed()),
                    share(t.meter(), t.plainReturns()),
                    share(t.mask(), t.plainReturns()));
            if (name.endsWith("ALL")) {
                add("");
            }
        });
    }

    private static String share(int hits, int of) {
        return of == 0 ? "-" : String.format(Locale.ROOT, "%.1f", 100.0 * hits / of);
    }

    private static String limits(int hits, int of) {
        Wilson w = Wilson.of(hits, of);
        return String.format(Locale.ROOT, "%.2f %% (%.2f to %.2f)", 100.0 * hits / of, 100 * w.low(), 100 * w.high());
    }

    private void healthy() {
        add("Healthy cabinets (two-sided 95 %% Wilson limits)");
        report.healthy()
                .forEach((name, t) -> add(
                        "%-20s n %5d  failed %3d = %s  again %3d = %s  watch %d  meter %s %%  mask %s %%",
                        name,
                        t.returns(),
                        t.failed(),
                        limits(t.failed(), t.returns()),
                        t.again(),
                        limits(t.again(), t.returns()),
                        t.watched(),
                        share(t.meter(), t.plainReturns()),
                        share(t.mask(), t.plainReturns())));
        add("failed in the noise but not in a quiet hall: %d", report.failedByNoiseAlone());
        add("");
    }

    private void prompts() {
        add("No fault of the cabinet");
        report.prompts()
                .forEach((kind, row) -> add(
                        "%-20s n %4d  right prompt %4d = %s  passed %d  failed %d",
                        kind, row[0], row[1], limits(row[1], row[0]), row[2], row[3]));
        add("");
    }

    private void models() {
        add("By model");
        report.models()
                .forEach((name, t) -> add(
                        "%-28s n %5d  failed %5d  again %4d  passed %5d  place %s  1st %s  2nd %s",
                        name,
                        t.returns(),
                        t.failed(),
                        t.again(),
                        t.passed(),
                        share(t.position(), t.failed()),
                        share(t.firstInGroup(), t.failed()),
                        share(t.firstTwoInGroup(), t.failed())));
        add("");
    }

    private void groups() {
        add(
                "Ambiguity groups, fixed before the run: effects at the terminals alike by more than %.2f in direction and"
                        + " size, severities free (complete linkage; correlation is above that)",
                AmbiguityGroups.LIMIT);
        Map<Integer, Integer> sizes = new TreeMap<>();
        int all = 0;
        int acrossWays = 0;
        for (List<AmbiguityGroups.Group> ofModel : report.groups().all().values()) {
            for (AmbiguityGroups.Group group : ofModel) {
                sizes.merge(group.members().size(), 1, Integer::sum);
                all += group.members().size();
                acrossWays += group.ways().size() > 1 ? 1 : 0;
            }
        }
        int small = sizes.getOrDefault(1, 0) + 2 * sizes.getOrDefault(2, 0);
        add("sizes (size: groups) %s; faults in groups of one or two: %s %%", sizes, share(small, all));
        add("groups above five: %d; groups across two ways: %d", above(sizes, 5), acrossWays);
        for (Map.Entry<String, List<AmbiguityGroups.Group>> model :
                new TreeMap<>(report.groups().all()).entrySet()) {
            for (AmbiguityGroups.Group group : model.getValue()) {
                if (group.members().size() > 2) {
                    add("  %s: %s", model.getKey(), words(group.members()));
                }
            }
        }
        add("");
    }

    private static int above(Map<Integer, Integer> sizes, int size) {
        return sizes.entrySet().stream()
                .filter(e -> e.getKey() > size)
                .mapToInt(Map.Entry::getValue)
                .sum();
    }

    private static String words(List<ProvingFault> members) {
        return String.join(
                ", ", members.stream().map(f -> f.kind() + " " + f.target()).toList());
    }

    private void cost() {
        long recorded = report.outcomes().stream()
                .filter(o -> o.recordingAgrees() != null)
                .count();
        long differing = report.outcomes().stream()
                .filter(o -> Boolean.FALSE.equals(o.recordingAgrees()))
                .count();
        add(
                "Judged from encoded 24-bit recordings as well: %d, of which other samples or judgement: %d",
                recorded, differing);
        add(
                "Time: %.0f s on %d threads, processor %.0f s, %.3f s per return",
                report.wallS(),
                report.options().threads(),
                report.processorS(),
                report.processorS() / report.outcomes().size());
    }
}
