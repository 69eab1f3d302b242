package org.docksweep.survival;

import java.util.List;
import org.docksweep.fleet.Require;

/**
 * Where one quantity of one unit is going, from return to return: an exponentially weighted mean with control limits that
 * begin at the unit's own first readings. With weights {@code w_i} of the readings since the start and {@code m} readings
 * that made the start, the mean leaves its limits when {@code |z - start| > L s sqrt(sum w_i^2 + (sum w_i)^2 / m)}: the
 * usual chart (Roberts 1959), but with the exact width after few readings and with the start not taken for the truth.
 *
 * <p>A signal also needs a change that matters: a chart over a large fleet sees small honest changes as well.
 *
 * @param state what the readings say
 * @param returns returns over which the change came: those since the last reading that was still like the start
 * @param change last reading minus the last one that was still like the start
 * @param start mean of the first readings
 * @param smoothed weighted mean after the last reading
 * @param limits limits of the weighted mean at the last reading
 * @param perReturn mean change per return over these returns, 0 when nothing changes
 */
public record Trend(
        State state, int returns, double change, double start, double smoothed, Interval limits, double perReturn) {
    /** Weight of the newest reading. */
    public static final double WEIGHT = 0.4;
    /**
     * Limits in standard deviations. 3 would call one healthy quantity in some hundred readings; a fleet reads some
     * hundred a night.
     */
    public static final double LIMIT_SIGMAS = 3.5;
    /** Fewer readings say nothing about a way. */
    public static final int FEWEST_READINGS = 4;

    private static final int MOST_STARTING = 5;

    /** What the readings say. */
    public enum State {
        /** Not enough readings. */
        TOO_FEW,
        /** As at the start. */
        STEADY,
        FALLING,
        RISING
    }

    /**
     * How a healthy quantity scatters, and when it matters.
     *
     * @param spread standard deviation of a healthy unit's reading from return to return, greater than 0
     * @param concern change that matters, greater than 0
     */
    public record Rule(double spread, double concern) {
        public Rule {
            Require.positive("spread of a trend", spread);
            Require.positive("change that matters of a trend", concern);
        }
    }

    /**
     * Reads a trend.
     *
     * @param readings readings, oldest first, all since the last repair
     * @param rule scatter and concern, in the unit of the readings
     * @return the trend
     */
    public static Trend of(List<Double> readings, Rule rule) {
        int count = readings.size();
        readings.forEach(r -> Require.inRange("reading of a trend", r, -Double.MAX_VALUE, Double.MAX_VALUE));
        int starting = Math.max(1, Math.min(MOST_STARTING, count / 3));
        double start = readings.stream()
                .limit(starting)
                .mapToDouble(Double::doubleValue)
                .average()
                .orElse(0);
        double smoothed = start;
        double sum = 0;
        double squares = 0;
        for (double reading : readings.subList(Math.min(starting, count), count)) {
            smoothed += WEIGHT * (reading - smoothed);
            sum = WEIGHT + (1 - WEIGHT) * sum;
            squares = WEIGHT * WEIGHT + (1 - WEIGHT) * (1 - WEIGHT) * squares;
        }
        double width = LIMIT_SIGMAS * rule.spread() * Math.sqrt(squares + sum * sum / starting);
        Interval limits = new Interval(start - width, start + width);
        if (count < FEWEST_READINGS) {
            return new Trend(State.TOO_FEW, 0, 0, start, smoothed, limits, 0);
        }
        double last = readings.get(count - 1);
        int onset = lastLikeTheStart(readings, starting, start, rule.spread());
        int returns = count - 1 - onset;
        double change = last - readings.get(onset);
        boolean matters = Math.abs(change) >= rule.concern() && Math.abs(last - start) >= rule.concern();
        if (limits.contains(smoothed) || !matters) {
            return new Trend(State.STEADY, 0, 0, start, smoothed, limits, 0);
        }
        State state = smoothed < start ? State.FALLING : State.RISING;
        return new Trend(state, returns, change, start, smoothed, limits, change / returns);
    }

    /** Index of the newest reading that was no farther from the start than a healthy one would be. */
    private static int lastLikeTheStart(List<Double> readings, int starting, double start, double spread) {
        for (int i = readings.size() - 2; i >= starting; i--) {
            if (Math.abs(readings.get(i) - start) <= spread) {
                return i;
            }
        }
        return starting - 1;
    }
}
