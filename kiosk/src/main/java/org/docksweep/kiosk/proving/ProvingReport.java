package org.docksweep.kiosk.proving;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.fleet.Verdict;
import org.docksweep.judge.Prompt;

/** What a proving run counted. */
public final class ProvingReport {
    private final ProvingOptions options;
    private final List<Outcome> outcomes;
    private final AmbiguityGroups groups;
    private final double wallS;

    ProvingReport(ProvingOptions options, List<Outcome> outcomes, AmbiguityGroups groups, double wallS) {
        this.options = options;
        this.outcomes = List.copyOf(outcomes);
        this.groups = groups;
        this.wallS = wallS;
    }

    /**
     * Counts per kind of fault and knowledge, then of their sums.
     *
     * @return rows by name, in the order of the table
     */
    public Map<String, Tally> faults() {
        Map<String, Tally> rows = new LinkedHashMap<>();
        for (ProvingFaultKind kind : ProvingFaultKind.values()) {
            if (kind.group() == ProvingFaultKind.Group.HARD) {
                put(rows, "hard " + kind, o -> is(o, kind));
            }
        }
        put(rows, "hard ALL", o -> is(o, ProvingFaultKind.Group.HARD));
        for (Knowing knowing : Knowing.values()) {
            for (ProvingFaultKind kind : ProvingFaultKind.values()) {
                if (kind.group() == ProvingFaultKind.Group.SOFT) {
                    put(
                            rows,
                            "soft " + knowing + " " + kind,
                            o -> is(o, kind) && o.dealt().knowing() == knowing);
                }
            }
            put(
                    rows,
                    "soft " + knowing + " ALL",
                    o -> is(o, ProvingFaultKind.Group.SOFT) && o.dealt().knowing() == knowing);
        }
        put(rows, "faults ALL", o -> is(o, ProvingFaultKind.Group.HARD) || is(o, ProvingFaultKind.Group.SOFT));
        return rows;
    }

    /**
     * Counts of healthy cabinets.
     *
     * @return rows by name
     */
    public Map<String, Tally> healthy() {
        Map<String, Tally> rows = new LinkedHashMap<>();
        for (Knowing knowing : Knowing.values()) {
            put(
                    rows,
                    "healthy " + knowing,
                    o -> o.dealt().healthy() && o.dealt().knowing() == knowing);
        }
        put(rows, "healthy ALL", o -> o.dealt().healthy());
        return rows;
    }

    /**
     * Healthy cabinets that fail in the hall's noise and pass in a quiet hall.
     *
     * @return how many
     */
    public int failedByNoiseAlone() {
        return (int) outcomes.stream()
                .filter(o -> o.dealt().healthy() && o.failed() && !o.inQuietToo())
                .count();
    }

    /**
     * Cases that are no fault of the cabinet: how often what was said, by kind.
     *
     * @return by kind: returns, right prompts, passes, fails
     */
    public Map<ProvingFaultKind, int[]> prompts() {
        Map<ProvingFaultKind, int[]> rows = new LinkedHashMap<>();
        for (Outcome o : outcomes) {
            if (is(o, ProvingFaultKind.Group.NOT_A_FAULT)) {
                ProvingFaultKind kind = o.dealt().fault().kind();
                int[] row = rows.computeIfAbsent(kind, k -> new int[4]);
                row[0]++;
                Prompt wanted = FaultNames.wantedPrompt(kind);
                boolean asked = o.firstPrompt() == wanted || o.prompt() == wanted;
                // who is asked rightly plugs the lead or takes the label off before anything is decided
                row[1] += asked ? 1 : 0;
                row[2] += !asked && o.verdict() == Verdict.PASS ? 1 : 0;
                row[3] += !asked && o.failed() ? 1 : 0;
            }
        }
        return rows;
    }

    /**
     * Counts by cabinet model: hard faults, soft faults, healthy.
     *
     * @return rows by name
     */
    public Map<String, Tally> models() {
        Map<String, Tally> rows = new LinkedHashMap<>();
        TreeSet<String> codes = new TreeSet<>();
        outcomes.forEach(o -> codes.add(o.dealt().labelModel()));
        for (String code : codes) {
            Predicate<Outcome> own = o -> o.dealt().labelModel().equals(code);
            put(rows, code + " hard", own.and(o -> is(o, ProvingFaultKind.Group.HARD)));
            for (Knowing knowing : Knowing.values()) {
                put(
                        rows,
                        code + " soft " + knowing,
                        own.and(o ->
                                is(o, ProvingFaultKind.Group.SOFT) && o.dealt().knowing() == knowing));
            }
            put(rows, code + " healthy", own.and(o -> o.dealt().healthy()));
        }
        return rows;
    }

    /** All outcomes, in the order dealt. */
    List<Outcome> outcomes() {
        return outcomes;
    }

    ProvingOptions options() {
        return options;
    }

    AmbiguityGroups groups() {
        return groups;
    }

    double wallS() {
        return wallS;
    }

    /** Processor time of all returns, in seconds. */
    double processorS() {
        return outcomes.stream().mapToDouble(Outcome::seconds).sum();
    }

    private void put(Map<String, Tally> rows, String name, Predicate<Outcome> what) {
        List<Outcome> chosen = new ArrayList<>(outcomes);
        chosen.removeIf(what.negate());
        if (!chosen.isEmpty()) {
            rows.put(name, Tally.of(chosen));
        }
    }

    private static boolean is(Outcome o, ProvingFaultKind kind) {
        return o.dealt().fault() != null && o.dealt().fault().kind() == kind;
    }

    private static boolean is(Outcome o, ProvingFaultKind.Group group) {
        return o.dealt().fault() != null && o.dealt().fault().kind().group() == group;
    }
}
