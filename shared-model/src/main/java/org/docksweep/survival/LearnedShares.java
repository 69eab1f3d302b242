package org.docksweep.survival;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.fleet.Require;

/**
 * Shares of causes, learned from what was seen: a Dirichlet distribution. It begins with the usual shares, which count as
 * much as {@code strength} observations, and adds what was seen; an observation counts half after each half-life, so that
 * a fleet that changes is not judged by its past for ever.
 *
 * @param amounts parameters of the distribution, one per cause, each greater than 0
 * @param <K> kind of cause
 */
public record LearnedShares<K>(Map<K, Double> amounts) {

    /**
     * Something seen.
     *
     * @param causes the causes it may have been, with shares that add up to 1
     * @param at when
     * @param <K> kind of cause
     */
    public record Seen<K>(Map<K, Double> causes, Instant at) {}

    public LearnedShares {
        amounts.forEach((cause, amount) -> Require.positive("amount of cause " + cause, amount));
        amounts = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(amounts));
    }

    /**
     * Learns.
     *
     * @param usual usual shares, each greater than 0; made to add up to 1
     * @param strength how many observations the usual shares are worth, greater than 0
     * @param seen what was seen; causes that are not among the usual ones are left out
     * @param now when; observations after it do not count
     * @param halfLife time after which an observation counts half
     * @param <K> kind of cause
     * @return the shares
     */
    public static <K> LearnedShares<K> of(
            Map<K, Double> usual, double strength, List<Seen<K>> seen, Instant now, Duration halfLife) {
        Require.positive("strength of the usual shares", strength);
        double sum = usual.values().stream().mapToDouble(Double::doubleValue).sum();
        Map<K, Double> amounts = new LinkedHashMap<>();
        usual.forEach((cause, share) -> amounts.put(cause, strength * share / sum));
        for (Seen<K> one : seen) {
            double weight = weight(one.at(), now, halfLife);
            one.causes()
                    .forEach((cause, share) -> amounts.computeIfPresent(cause, (c, before) -> before + share * weight));
        }
        return new LearnedShares<>(amounts);
    }

    /**
     * How much an observation still counts.
     *
     * @param at when it was made
     * @param now when it is used
     * @param halfLife time after which it counts half, greater than 0
     * @return {@code 2^(-age / halfLife)}, 0 for observations after {@code now}
     */
    public static double weight(Instant at, Instant now, Duration halfLife) {
        double half = Require.positive("half-life in seconds", halfLife.toSeconds());
        if (at.isAfter(now)) {
            return 0;
        }
        return Math.pow(0.5, Duration.between(at, now).toSeconds() / half);
    }

    private double total() {
        return amounts.values().stream().mapToDouble(Double::doubleValue).sum();
    }

    /**
     * Expected share of a cause.
     *
     * @param cause cause
     * @return share, 0 for a cause that is not among the usual ones
     */
    public double share(K cause) {
        return amounts.getOrDefault(cause, 0.0) / total();
    }

    /**
     * Variance of the share of a cause: {@code a (A - a) / (A^2 (A + 1))}.
     *
     * @param cause cause
     * @return variance
     */
    public double variance(K cause) {
        double total = total();
        double amount = amounts.getOrDefault(cause, 0.0);
        return amount * (total - amount) / (total * total * (total + 1));
    }
}
