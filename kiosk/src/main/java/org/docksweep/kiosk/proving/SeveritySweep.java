package org.docksweep.kiosk.proving;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.docksweep.contract.ProvingFaultKind;

/**
 * Detection against severity.
 *
 * @param rows one per kind, knowledge and severity
 */
public record SeveritySweep(List<Row> rows) {

    /**
     * One cell.
     *
     * @param kind fault
     * @param knowing what the gate knew
     * @param severity severity, without sign
     * @param returns how many
     * @param detected how many failed
     * @param again how many stayed SWEEP AGAIN
     */
    public record Row(ProvingFaultKind kind, Knowing knowing, double severity, int returns, int detected, int again) {}

    public SeveritySweep {
        rows = List.copyOf(rows);
    }

    static List<ProvingFaultKind> kinds() {
        return List.of(
                ProvingFaultKind.CONTACT_RESISTANCE,
                ProvingFaultKind.SHORTED_TURNS,
                ProvingFaultKind.PART_OFF_VALUE,
                ProvingFaultKind.LEAK,
                ProvingFaultKind.WAY_WEAK,
                ProvingFaultKind.RUB,
                ProvingFaultKind.MAGNET_WEAK);
    }

    static double[] severities(ProvingFaultKind kind) {
        return switch (kind) {
            case CONTACT_RESISTANCE -> new double[] {0.03, 0.05, 0.10, 0.15, 0.25, 0.40, 0.80};
            case SHORTED_TURNS -> new double[] {0.01, 0.02, 0.05, 0.10, 0.15, 0.25};
            case PART_OFF_VALUE -> new double[] {0.05, 0.10, 0.15, 0.25, 0.35, 0.50};
            case LEAK -> new double[] {0.8, 0.65, 0.5, 0.35, 0.2, 0.1};
            case WAY_WEAK -> new double[] {1, 2, 3, 4, 6, 9};
            case RUB -> new double[] {-60, -50, -45, -40, -35, -30, -20};
            case MAGNET_WEAK -> new double[] {0.03, 0.05, 0.10, 0.15, 0.20, 0.30};
            default -> throw new IllegalArgumentException(kind + " has no severity to sweep");
        };
    }

    static SeveritySweep of(List<Outcome> outcomes) {
        List<Row> rows = new ArrayList<>();
        for (ProvingFaultKind kind : kinds()) {
            for (Knowing knowing : Knowing.values()) {
                for (double severity : severities(kind)) {
                    List<Outcome> cell = outcomes.stream()
                            .filter(o -> o.dealt().fault().kind() == kind
                                    && o.dealt().knowing() == knowing
                                    && Math.abs(Math.abs(o.dealt().unit().severity()) - Math.abs(severity)) < 1e-9)
                            .toList();
                    if (!cell.isEmpty()) {
                        rows.add(new Row(
                                kind,
                                knowing,
                                severity,
                                cell.size(),
                                (int) cell.stream().filter(Outcome::failed).count(),
                                (int) cell.stream().filter(Outcome::again).count()));
                    }
                }
            }
        }
        rows.sort(Comparator.comparing(Row::kind).thenComparing(Row::knowing));
        return new SeveritySweep(rows);
    }

    /**
     * The table in words.
     *
     * @return lines
     */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("Detection against severity (detected of returns; severities as the fault's kind defines them)");
        for (ProvingFaultKind kind : kinds()) {
            for (Knowing knowing : Knowing.values()) {
                StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%-20s %-9s", kind, knowing));
                rows.stream()
                        .filter(r -> r.kind() == kind && r.knowing() == knowing)
                        .forEach(r -> line.append(String.format(
                                Locale.ROOT, "  %s: %d/%d", plain(r.severity()), r.detected(), r.returns())));
                if (rows.stream().anyMatch(r -> r.kind() == kind && r.knowing() == knowing)) {
                    lines.add(line.toString());
                }
            }
        }
        return lines;
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString(Math.round(value)) : String.format(Locale.ROOT, "%.2f", value);
    }
}
