package org.docksweep.suspect;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Require;
import org.docksweep.fleet.TestPoint;
import org.docksweep.survival.LearnedShares;

/**
 * Learns prior weights from confirmed causes. Two things are learned of every driver model, and of every crossover part
 * and box of a cabinet model: how its faults divide among kinds (a Dirichlet distribution that begins with the usual
 * shares), and how often it fails at all (a gamma distribution around the usual rate, per return; it only ever raises). Both forget by a
 * half-life, and no weight ever moves farther from the usual one than a fixed factor: a gate that had stopped to believe
 * in a fault would never again find it.
 *
 * <p>A pure function of its arguments: taken back findings are simply not passed.
 */
public final class PriorTeacher {
    /** How learning goes; values are common practice, no source. */
    public static final Policy POLICY = new Policy(20, 10, Duration.ofDays(730), 5);

    private static final int FEWEST_TO_LOOK_FIRST = 3;
    private static final double CLEAR_SHARE = 0.5;

    /**
     * How learning goes.
     *
     * @param shareStrength how many findings the usual shares of the kinds are worth
     * @param rateStrength how many failures the usual rate is worth
     * @param halfLife time after which a finding or a return counts half
     * @param mostFactor farthest a weight moves from the usual one, up or down, greater than 1
     */
    public record Policy(double shareStrength, double rateStrength, Duration halfLife, double mostFactor) {
        public Policy {
            Require.positive("strength of the usual shares", shareStrength);
            Require.positive("strength of the usual rate", rateStrength);
            Require.positive("half-life in seconds", halfLife.toSeconds());
            Require.inRange("largest prior factor", mostFactor, 1, 1_000);
        }
    }

    /**
     * A confirmed cause.
     *
     * @param cabinetModelCode cabinet model
     * @param driverModelCode driver model at fault, or null
     * @param elementId crossover part or box at fault, or null
     * @param cause what was found
     * @param kinds faults it showed as, see {@link CauseKinds#shares}
     * @param at when
     */
    public record Confirmed(
            String cabinetModelCode,
            String driverModelCode,
            String elementId,
            ConfirmedCause cause,
            Map<FaultKind, Double> kinds,
            Instant at) {}

    /**
     * Returns that could have failed.
     *
     * @param ownerCode driver model (counted per position) or cabinet model
     * @param at middle of the time counted
     * @param count how many, at least 0
     */
    public record Returns(String ownerCode, Instant at, int count) {}

    /**
     * What was learned of one fault of one kind of place.
     *
     * @param ownerCode driver model; cabinet model where a crossover part or a box is concerned
     * @param elementId crossover part or box, or null for a driver
     * @param kind fault
     * @param usualWeight usual prior probability per return
     * @param learnedWeight the same as learned
     * @param factor learned over usual, after the bound
     * @param findings findings of this fault, shared findings as fractions
     * @param findingsNow the same after forgetting
     */
    public record Row(
            String ownerCode,
            String elementId,
            FaultKind kind,
            double usualWeight,
            double learnedWeight,
            double factor,
            double findings,
            double findingsNow) {}

    /**
     * All that was learned.
     *
     * @param rows one row per fault of each kind of place that was ever found faulty
     * @param priors what a judgement takes
     */
    public record Lesson(List<Row> rows, Priors priors) {}

    private record Owner(String code, String elementId) implements Comparable<Owner> {
        @Override
        public int compareTo(Owner other) {
            return Comparator.comparing(Owner::code)
                    .thenComparing(Owner::elementId, Comparator.nullsFirst(Comparator.naturalOrder()))
                    .compare(this, other);
        }
    }

    private PriorTeacher() {}

    /**
     * Learns.
     *
     * @param book models of the fleet
     * @param confirmed confirmed causes
     * @param returns returns of drivers and cabinets
     * @param now when
     * @param policy how learning goes
     * @return what was learned
     */
    public static Lesson teach(
            ModelBook book, List<Confirmed> confirmed, List<Returns> returns, Instant now, Policy policy) {
        List<Row> rows = new ArrayList<>();
        usual(book)
                .forEach((owner, kinds) -> rows.addAll(rowsOf(
                        owner,
                        kinds,
                        confirmed.stream().filter(c -> concerns(c, owner)).toList(),
                        returns.stream()
                                .filter(r -> r.ownerCode().equals(owner.code()))
                                .toList(),
                        now,
                        policy)));
        List<Priors.Factor> factors = rows.stream()
                .filter(r -> r.factor() != 1)
                .map(r -> new Priors.Factor(r.ownerCode(), r.elementId(), r.kind(), r.factor()))
                .toList();
        return new Lesson(rows, new Priors(confirmed.size(), factors, lookFirst(confirmed)));
    }

    private static boolean concerns(Confirmed confirmed, Owner owner) {
        return owner.elementId() == null
                ? owner.code().equals(confirmed.driverModelCode())
                : owner.code().equals(confirmed.cabinetModelCode())
                        && owner.elementId().equals(confirmed.elementId());
    }

    /** Usual weights per kind of place and fault, averaged over the places where a driver model sits. */
    private static Map<Owner, Map<FaultKind, Double>> usual(ModelBook book) {
        Map<Owner, Map<FaultKind, Double>> sums = new TreeMap<>();
        Map<Owner, Integer> places = new HashMap<>();
        for (CabinetModel model : book.cabinetModels()) {
            for (TestPoint point : model.testPoints()) {
                Map<Owner, Map<String, Boolean>> here = new HashMap<>();
                for (Hypothesis hypothesis : HypothesisSet.of(model, point)) {
                    if (hypothesis.kind() == null) {
                        continue;
                    }
                    Owner owner = new Owner(Priors.owner(model, hypothesis), hypothesis.elementId());
                    sums.computeIfAbsent(owner, o -> new EnumMap<>(FaultKind.class))
                            .merge(hypothesis.kind(), hypothesis.weight(), Double::sum);
                    here.computeIfAbsent(owner, o -> new HashMap<>())
                            .put(Objects.toString(hypothesis.positionCode(), ""), true);
                }
                here.forEach((owner, positions) -> places.merge(owner, positions.size(), Integer::sum));
            }
        }
        sums.forEach((owner, kinds) -> kinds.replaceAll((kind, sum) -> sum / places.get(owner)));
        return sums;
    }

    private static List<Row> rowsOf(
            Owner owner,
            Map<FaultKind, Double> usual,
            List<Confirmed> confirmed,
            List<Returns> returns,
            Instant now,
            Policy policy) {
        if (confirmed.isEmpty()) {
            return List.of();
        }
        List<LearnedShares.Seen<FaultKind>> seen = confirmed.stream()
                .map(c -> new LearnedShares.Seen<>(c.kinds(), c.at()))
                .toList();
        LearnedShares<FaultKind> shares = LearnedShares.of(usual, policy.shareStrength(), seen, now, policy.halfLife());
        double usualRate =
                usual.values().stream().mapToDouble(Double::doubleValue).sum();
        double rate = rateFactor(usualRate, seen, returns, now, policy);
        List<Row> rows = new ArrayList<>();
        usual.forEach((kind, weight) -> {
            double free = rate * shares.share(kind) * usualRate / weight;
            double factor = Math.max(1 / policy.mostFactor(), Math.min(policy.mostFactor(), free));
            rows.add(new Row(
                    owner.code(),
                    owner.elementId(),
                    kind,
                    weight,
                    weight * factor,
                    factor,
                    count(seen, kind, null, policy),
                    count(seen, kind, now, policy)));
        });
        return rows;
    }

    /**
     * Failures seen over failures expected from the returns, the usual rate counted in. Never below 1: a house that writes
     * down few findings must not teach its gate that nothing fails.
     */
    private static double rateFactor(
            double usualRate,
            List<LearnedShares.Seen<FaultKind>> seen,
            List<Returns> returns,
            Instant now,
            Policy policy) {
        if (returns.isEmpty()) {
            return 1;
        }
        double expected = usualRate
                * returns.stream()
                        .mapToDouble(r -> r.count() * LearnedShares.weight(r.at(), now, policy.halfLife()))
                        .sum();
        double failed = seen.stream()
                .mapToDouble(s -> LearnedShares.weight(s.at(), now, policy.halfLife()))
                .sum();
        return Math.max(1, (policy.rateStrength() + failed) / (policy.rateStrength() + expected));
    }

    private static double count(List<LearnedShares.Seen<FaultKind>> seen, FaultKind kind, Instant now, Policy policy) {
        return seen.stream()
                .mapToDouble(s -> s.causes().getOrDefault(kind, 0.0)
                        * (now == null ? 1 : LearnedShares.weight(s.at(), now, policy.halfLife())))
                .sum();
    }

    private record Fault(String driverModelCode, FaultKind kind) {}

    private static List<Priors.LookFirst> lookFirst(List<Confirmed> confirmed) {
        Map<Fault, Map<ConfirmedCause, Integer>> counts = new LinkedHashMap<>();
        for (Confirmed one : confirmed) {
            if (one.driverModelCode() == null) {
                continue;
            }
            one.kinds().entrySet().stream()
                    .max(Map.Entry.comparingByValue())
                    .ifPresent(kind -> counts.computeIfAbsent(
                                    new Fault(one.driverModelCode(), kind.getKey()),
                                    f -> new EnumMap<>(ConfirmedCause.class))
                            .merge(one.cause(), 1, Integer::sum));
        }
        List<Priors.LookFirst> clear = new ArrayList<>();
        counts.forEach((fault, causes) -> {
            int all = causes.values().stream().mapToInt(Integer::intValue).sum();
            causes.entrySet().stream()
                    .max(Map.Entry.comparingByValue())
                    .filter(most -> most.getValue() >= FEWEST_TO_LOOK_FIRST && most.getValue() > CLEAR_SHARE * all)
                    .ifPresent(most -> clear.add(new Priors.LookFirst(
                            fault.driverModelCode(), fault.kind(), most.getKey(), most.getValue(), all)));
        });
        return clear;
    }
}
