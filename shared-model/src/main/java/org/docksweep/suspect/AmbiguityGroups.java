package org.docksweep.suspect;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.docksweep.circuit.CircuitCompiler;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.CircuitPrior;
import org.docksweep.circuit.PointCircuit;
import org.docksweep.circuit.ScoreTest;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.PointReference;

/**
 * Which faults of a test point the current cannot tell apart, computed before anything is measured: two faults belong together
 * when their signatures, with all that healthy units may differ in taken out, correlate by more than {@link #TOLD_APART} at
 * severities that matter ({@link Severities}). Faults whose severity is fixed must besides differ by less than
 * 6 standard deviations, or 5 % of what they change. Every pair of a group does so (complete linkage).
 */
public final class AmbiguityGroups {
    /** Correlation above which two faults cannot be told apart. */
    public static final double TOLD_APART = 0.95;

    /** Standard deviations by which two faults of fixed severity may differ and still count as alike. */
    private static final double STANDS_OUT = 6;

    /** A broken circuit is known to this share of what the fault changes. */
    private static final double KNOWN_TO = 0.05;

    private static final int KEPT_AT_MOST = 256;
    private static final Map<Object, AmbiguityGroups> KEPT = new ConcurrentHashMap<>();

    private final List<Group> groups;

    private AmbiguityGroups(List<Group> groups) {
        this.groups = List.copyOf(groups);
    }

    /**
     * A fault of a test point.
     *
     * @param kind what is wrong
     * @param positionCode driver position concerned, of a part or box the one it serves, or null
     * @param elementId crossover part or box, or null
     * @param deviations standard deviations by which it stands out at its severity, after healthy parameters have answered; small
     *     numbers say that it will be missed
     */
    public record Member(FaultKind kind, String positionCode, String elementId, double deviations) {
        /**
         * Whether this is the fault of a suspect.
         *
         * @param suspectKind kind
         * @param position position, or null
         * @param element part or box, or null
         * @return true if it is
         */
        public boolean is(FaultKind suspectKind, String position, String element) {
            String place = elementId != null ? elementId : positionCode;
            String other = element != null ? element : position;
            return kind == suspectKind && java.util.Objects.equals(place, other);
        }

        @Override
        public String toString() {
            return kind + (elementId != null ? " " + elementId : positionCode != null ? " " + positionCode : "");
        }
    }

    /**
     * Faults that look alike.
     *
     * @param members at least one
     * @param split what tells them apart, or null for a group of one
     */
    public record Group(List<Member> members, Split split) {
        public Group {
            members = List.copyOf(members);
        }
    }

    /**
     * Groups of a test point.
     *
     * @param book models
     * @param model cabinet model
     * @param point test point with terminals
     * @param knowledge what is known of it
     * @param severities severities that matter at this grade of knowledge
     * @return groups, largest first; every hypothesis of the point is in exactly one
     */
    public static AmbiguityGroups of(
            ModelBook book, CabinetModel model, TestPoint point, Knowledge knowledge, Severities severities) {
        return new Sorter(book, model, point, knowledge, severities).sort();
    }

    /**
     * Groups of a taught test point, computed once per reference and kept.
     *
     * @param book models
     * @param model cabinet model
     * @param point test point with terminals
     * @param reference its reference
     * @return groups at the severities of a reference
     */
    public static AmbiguityGroups of(ModelBook book, CabinetModel model, TestPoint point, PointReference reference) {
        List<Object> key = List.of(model, point, reference);
        AmbiguityGroups kept = KEPT.get(key);
        if (kept == null) {
            kept = of(
                    book,
                    model,
                    point,
                    Knowledge.nominal(book, model, point).taughtBy(reference),
                    Severities.WITH_REFERENCE);
            if (KEPT.size() >= KEPT_AT_MOST) {
                KEPT.clear();
            }
            KEPT.put(key, kept);
        }
        return kept;
    }

    /**
     * All groups.
     *
     * @return groups, largest first
     */
    public List<Group> groups() {
        return groups;
    }

    /**
     * The group of a suspect.
     *
     * @param kind kind
     * @param positionCode position, or null
     * @param elementId part or box, or null
     * @return its group, empty for faults that do not live in the curve
     */
    public Optional<Group> groupOf(FaultKind kind, String positionCode, String elementId) {
        return groups.stream()
                .filter(g -> g.members().stream().anyMatch(m -> m.is(kind, positionCode, elementId)))
                .findFirst();
    }

    /**
     * Suspects with what looks like them, those of the most probable group first, within a group the most probable.
     *
     * @param suspects suspects of one test point
     * @return the same suspects, arranged
     */
    public List<Suspect> arrange(List<Suspect> suspects) {
        List<Ranked> ranked = new ArrayList<>();
        for (Suspect suspect : suspects) {
            Group group = groupOf(suspect.kind(), suspect.positionCode(), suspect.elementId())
                    .orElse(null);
            double together = group == null
                    ? suspect.probability()
                    : suspects.stream()
                            .filter(s -> group.members().stream()
                                    .anyMatch(m -> m.is(s.kind(), s.positionCode(), s.elementId())))
                            .mapToDouble(Suspect::probability)
                            .sum();
            ranked.add(new Ranked(
                    group == null || group.split() == null ? suspect : SuspectWords.withGroup(suspect, group),
                    group == null ? suspect : group,
                    together));
        }
        List<Object> order = ranked.stream().map(Ranked::group).distinct().toList();
        ranked.sort(Comparator.comparingDouble((Ranked r) -> -r.together())
                .thenComparingInt(r -> order.indexOf(r.group()))
                .thenComparingDouble(r -> -r.suspect().probability()));
        return ranked.stream().map(Ranked::suspect).toList();
    }

    private record Ranked(Suspect suspect, Object group, double together) {}

    /** Computes signatures and joins what looks alike. */
    private static final class Sorter {
        private final ModelBook book;
        private final CabinetModel model;
        private final TestPoint point;
        private final Knowledge knowledge;
        private final Severities severities;
        private final double[] x;
        private final ScoreTest test;

        private record Seen(Hypothesis hypothesis, Member member, ScoreTest.Signature signature) {
            /** Whether its severity is free. */
            boolean soft() {
                return hypothesis.widenedParameter() != null || hypothesis.grows();
            }
        }

        Sorter(ModelBook book, CabinetModel model, TestPoint point, Knowledge knowledge, Severities severities) {
            this.book = book;
            this.model = model;
            this.point = point;
            this.knowledge = knowledge;
            this.severities = severities;
            this.x = knowledge.prior().mean();
            this.test = new ScoreTest(
                    knowledge.circuit(), knowledge.dataOf(knowledge.expectedCurve()), knowledge.prior(), x);
        }

        AmbiguityGroups sort() {
            List<Hypothesis> hypotheses = HypothesisSet.of(model, point);
            List<List<Seen>> clusters = new ArrayList<>();
            for (Hypothesis hypothesis : hypotheses.subList(1, hypotheses.size())) {
                clusters.add(new ArrayList<>(List.of(seen(hypothesis))));
            }
            joinAlike(clusters);
            List<Group> groups = clusters.stream()
                    .map(c -> {
                        List<Member> members = c.stream().map(Seen::member).toList();
                        return new Group(members, members.size() > 1 ? Split.of(members, point) : null);
                    })
                    .sorted(Comparator.comparingInt((Group g) -> -g.members().size()))
                    .toList();
            return new AmbiguityGroups(groups);
        }

        private Seen seen(Hypothesis hypothesis) {
            ScoreTest.Signature signature = hypothesis.widenedParameter() != null
                    ? test.signatureOfChange(
                                    knowledge.circuit().indexOf(hypothesis.widenedParameter()),
                                    Contest.SLOPE_STEP * severities.change(hypothesis, book, model, point))
                            .times(1 / Contest.SLOPE_STEP)
                    : structural(hypothesis);
            Member member = new Member(
                    hypothesis.kind(),
                    SuspectWords.position(hypothesis, model, point),
                    hypothesis.positionCode() == null ? hypothesis.elementId() : null,
                    Math.sqrt(Math.max(0, signature.strength())));
            return new Seen(hypothesis, member, signature);
        }

        private ScoreTest.Signature structural(Hypothesis hypothesis) {
            PointCircuit circuit = hypothesis.structure().equals(CircuitFault.NONE)
                    ? knowledge.circuit()
                    : CircuitCompiler.compile(book, model, point, hypothesis.structure());
            CircuitPrior prior = knowledge.prior().extendedTo(circuit);
            double[] faulty = java.util.Arrays.copyOf(x, prior.mean().length);
            if (!hypothesis.grows()) {
                return test.signature(circuit, faulty);
            }
            double severity = severities.of(hypothesis, book, model);
            faulty[faulty.length - 1] = hypothesis.carried(Contest.SLOPE_STEP * severity);
            return test.signature(circuit, faulty).times(1 / Contest.SLOPE_STEP);
        }

        /** Complete linkage: the two clusters whose least alike members are most alike are joined first. */
        private void joinAlike(List<List<Seen>> clusters) {
            int n = clusters.size();
            double[][] alike = new double[n][n];
            for (int a = 0; a < n; a++) {
                for (int b = 0; b < a; b++) {
                    alike[a][b] = alike(clusters.get(a).get(0), clusters.get(b).get(0));
                    alike[b][a] = alike[a][b];
                }
            }
            boolean[] gone = new boolean[n];
            while (true) {
                int bestA = -1;
                int bestB = -1;
                double best = TOLD_APART;
                for (int a = 0; a < n; a++) {
                    for (int b = 0; b < a; b++) {
                        if (!gone[a] && !gone[b] && alike[a][b] > best) {
                            best = alike[a][b];
                            bestA = a;
                            bestB = b;
                        }
                    }
                }
                if (bestA < 0) {
                    break;
                }
                clusters.get(bestB).addAll(clusters.get(bestA));
                gone[bestA] = true;
                for (int k = 0; k < n; k++) {
                    alike[bestB][k] = Math.min(alike[bestB][k], alike[bestA][k]);
                    alike[k][bestB] = alike[bestB][k];
                }
            }
            for (int a = n - 1; a >= 0; a--) {
                if (gone[a]) {
                    clusters.remove(a);
                }
            }
        }

        /** Correlation, but 0 where even the small rest stands out by itself: a short and another short, both enormous. */
        private static double alike(Seen a, Seen b) {
            double correlation = a.signature().correlation(b.signature());
            boolean eitherWay =
                    a.member().kind() == FaultKind.PART_DRIFTED || b.member().kind() == FaultKind.PART_DRIFTED;
            boolean bothHard = !a.soft() && !b.soft();
            double rest = Math.sqrt(Math.max(
                    0,
                    a.signature().strength()
                            + b.signature().strength()
                            - 2
                                    * correlation
                                    * Math.sqrt(a.signature().strength()
                                            * b.signature().strength())));
            double smaller =
                    Math.sqrt(Math.min(a.signature().strength(), b.signature().strength()));
            if (bothHard && rest > Math.max(STANDS_OUT, KNOWN_TO * smaller)) {
                return 0;
            }
            return eitherWay ? Math.abs(correlation) : correlation;
        }
    }

    /**
     * The groups as text: sizes, members with the standard deviations they stand out by, and what splits them.
     *
     * @return lines
     */
    public String table() {
        StringBuilder text = new StringBuilder();
        int all = groups.stream().mapToInt(g -> g.members().size()).sum();
        int small = groups.stream()
                .mapToInt(g -> g.members().size())
                .filter(n -> n <= 2)
                .sum();
        text.append(String.format(
                Locale.ROOT,
                "%d faults in %d groups, largest %d, %.0f %% of the faults in groups of one or two%n",
                all,
                groups.size(),
                groups.get(0).members().size(),
                100.0 * small / all));
        for (Group group : groups) {
            text.append(group.members().size()).append("  ");
            for (Member member : group.members()) {
                text.append(String.format(Locale.ROOT, "%s (%.1f)  ", member, member.deviations()));
            }
            text.append(group.split() == null ? "" : "-> " + group.split()).append(System.lineSeparator());
        }
        return text.toString();
    }

    /**
     * Whether any group holds faults of two ways.
     *
     * @param model cabinet model
     * @return true if a member of some group sits in another way than its fellow
     */
    public boolean mixesWays(CabinetModel model) {
        return groups.stream()
                .anyMatch(g -> g.members().stream()
                                .map(Member::positionCode)
                                .filter(java.util.Objects::nonNull)
                                .map(p -> model.position(p).way())
                                .distinct()
                                .count()
                        > 1);
    }

    /** Parts of a point by id, for those who need their kind. */
    static Optional<NetworkElement> element(TestPoint point, String id) {
        return point.elements().stream().filter(e -> e.id().equals(id)).findFirst();
    }
}
