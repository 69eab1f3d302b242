package org.docksweep.kiosk.proving;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Feed;

/** What {@link IdealDetector} could find of the soft faults of all models of a run. */
public final class IdealBounds {
    private final Map<String, List<IdealDetector.Bound>> byModel = new LinkedHashMap<>();

    private IdealBounds() {}

    /**
     * Computes the bounds of all models with terminals.
     *
     * @param options models, seed, severities, temperatures and number of good units
     * @return bounds
     * @throws IllegalStateException if no simulator is on the class path
     */
    public static IdealBounds of(ProvingOptions options) {
        return of(options, IdealDetector.HEALTHY_UNITS, model -> true);
    }

    static IdealBounds of(ProvingOptions options, int healthyUnits, Predicate<CabinetModel> which) {
        ProvingGround ground = ServiceLoader.load(ProvingGround.class)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException(
                        "no simulator is on the class path; start the command from the kiosk module"));
        IdealBounds bounds = new IdealBounds();
        for (CabinetModel model : ground.book(options.models(), options.seed()).cabinetModels()) {
            if (model.feed() != Feed.POWERED && which.test(model)) {
                bounds.byModel.put(model.code(), new IdealDetector(ground, options, model, healthyUnits).bounds());
            }
        }
        return bounds;
    }

    private Optional<IdealDetector.Bound> of(ReturnCase dealt) {
        return byModel.getOrDefault(dealt.labelModel(), List.of()).stream()
                .filter(b -> b.fault().equals(dealt.fault()))
                .filter(b -> b.knowing() == dealt.knowing()
                        && b.severity() == dealt.unit().severity())
                .findAny();
    }

    /**
     * The bounds by kind, then every fault of which even the best detector misses more than is wanted.
     *
     * @return lines
     */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(String.format(
                Locale.ROOT,
                "At best: least share missed by a detector that knows the simulator's production and looks for one fault at one severity,"
                        + " at %.1f %% false fails; shared: where all faults of a model share these",
                100 * IdealDetector.FALSE_FAILS));
        lines.add(String.format(
                Locale.ROOT,
                "%-20s %-9s %6s %8s %8s %10s %10s %14s",
                "",
                "",
                "faults",
                "d least",
                "d median",
                "mean %",
                "shared %",
                "beyond wanted"));

        for (ProvingFaultKind kind : ProvingFaultKind.values()) {
            for (Knowing knowing : Knowing.values()) {
                List<IdealDetector.Bound> row = byModel.values().stream()
                        .flatMap(List::stream)
                        .filter(b -> b.fault().kind() == kind && b.knowing() == knowing)
                        .toList();
                if (!row.isEmpty()) {
                    lines.add(line(kind, knowing, row));
                }
            }
        }
        lines.add("Beyond: even at best more is missed than wanted (own baseline 1 %, reference 2 %)");
        byModel.forEach((model, bounds) -> bounds.stream()
                .filter(IdealDetector.Bound::beyond)
                .forEach(b -> lines.add(String.format(
                        Locale.ROOT,
                        "  %-12s %-20s %-8s %-9s severity %6.2f  d %5.2f  at best %5.1f %%  shared %5.1f %%",
                        model,
                        b.fault().kind(),
                        b.fault().target(),
                        b.knowing(),
                        b.severity(),
                        b.deviations(),
                        100 * b.missed(),
                        100 * b.missedShared()))));
        return lines;
    }

    private static String line(ProvingFaultKind kind, Knowing knowing, List<IdealDetector.Bound> row) {
        double[] d = row.stream()
                .mapToDouble(IdealDetector.Bound::deviations)
                .sorted()
                .toArray();
        return String.format(
                Locale.ROOT,
                "%-20s %-9s %6d %8.2f %8.2f %10.2f %10.2f %14d",
                kind,
                knowing,
                row.size(),
                d[0],
                d[d.length / 2],
                100 * mean(row, IdealDetector.Bound::missed),
                100 * mean(row, IdealDetector.Bound::missedShared),
                row.stream().filter(IdealDetector.Bound::beyond).count());
    }

    private static double mean(List<IdealDetector.Bound> row, ToDoubleFunction<IdealDetector.Bound> share) {
        return row.stream().mapToDouble(share).average().orElseThrow();
    }

    /**
     * The bounds beside what a run missed. Nothing is taken out of the run's own rows.
     *
     * @param report report of the run with the same options
     * @return lines
     */
    public List<String> beside(ProvingReport report) {
        List<String> lines = new ArrayList<>();
        lines.add(
                "Beside the rows: returns of which even at best more is missed than wanted (beyond), and how many of them"
                        + " were missed; misses expected at best of all");
        lines.add(String.format(
                Locale.ROOT,
                "%-36s %6s %7s %7s %14s %16s %10s",
                "",
                "n",
                "missed",
                "beyond",
                "beyond, missed",
                "missed at best",
                "shared"));
        for (Knowing knowing : Knowing.values()) {
            for (ProvingFaultKind kind : ProvingFaultKind.values()) {
                List<Outcome> row = report.outcomes().stream()
                        .filter(o -> o.dealt().fault() != null
                                && o.dealt().fault().kind() == kind
                                && o.dealt().knowing() == knowing
                                && of(o.dealt()).isPresent())
                        .toList();
                if (!row.isEmpty()) {
                    lines.add(beside("soft " + knowing + " " + kind, row));
                }
            }
        }
        return lines;
    }

    private String beside(String name, List<Outcome> row) {
        List<Outcome> beyond =
                row.stream().filter(o -> of(o.dealt()).orElseThrow().beyond()).toList();
        return String.format(
                Locale.ROOT,
                "%-36s %6d %7d %7d %14d %16.1f %10.1f",
                name,
                row.size(),
                row.stream().filter(o -> !o.failed()).count(),
                beyond.size(),
                beyond.stream().filter(o -> !o.failed()).count(),
                row.stream()
                        .mapToDouble(o -> of(o.dealt()).orElseThrow().missed())
                        .sum(),
                row.stream()
                        .mapToDouble(o -> of(o.dealt()).orElseThrow().missedShared())
                        .sum());
    }
}
