package org.docksweep.survival;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.LongStream;

/**
 * Does the fit find the truth of simulated service years, within what it says of itself? Prints coverage and widths.
 * Arguments: number of seeds, then optionally a folder into which the lives of each seed are written for another tool.
 */
public final class RecoveryStudy {
    /** Wears out slowly: half fail within about three years. */
    static final Weibull TRUTH = new Weibull(1.6, 180);

    static final int POSITIONS = 60;
    static final double CONFIDENCE = 0.95;

    /**
     * Fit of one seed.
     *
     * @param seed seed
     * @param lives lives it was fitted to
     * @param fit fit with the intervals that the product gives, or null where there is none
     * @param plain the same with the threshold for many failures
     */
    record Run(long seed, List<Lifetime> lives, WeibullFit fit, WeibullFit plain) {}

    /** What an interval is given for. */
    enum Figure {
        SHAPE(WeibullFit::shape, Weibull::shape),
        SCALE(WeibullFit::scale, Weibull::scale),
        TEN_PERCENT_AGE(WeibullFit::tenPercentAge, w -> w.age(0.1));

        private final Function<WeibullFit, Interval> interval;
        private final Function<Weibull, Double> value;

        Figure(Function<WeibullFit, Interval> interval, Function<Weibull, Double> value) {
            this.interval = interval;
            this.value = value;
        }

        Interval of(WeibullFit fit) {
            return interval.apply(fit);
        }

        double of(Weibull weibull) {
            return value.apply(weibull);
        }

        int covered(List<Run> runs, Weibull truth) {
            return (int) runs.stream()
                    .filter(r -> r.fit() != null && of(r.fit()).contains(of(truth)))
                    .count();
        }

        double medianWidth(List<Run> runs, Function<Run, WeibullFit> which) {
            double[] widths = runs.stream()
                    .filter(r -> r.fit() != null)
                    .mapToDouble(r -> of(which.apply(r)).width())
                    .sorted()
                    .toArray();
            return widths[widths.length / 2];
        }
    }

    private RecoveryStudy() {}

    static List<Run> run(Weibull truth, int positions, int seeds) {
        return LongStream.rangeClosed(1, seeds)
                .mapToObj(seed -> run(truth, positions, seed))
                .toList();
    }

    static Run run(Weibull truth, int positions, long seed) {
        List<Lifetime> lives = ServiceLife.fiveYears(truth, positions, seed);
        return new Run(
                seed,
                lives,
                WeibullFit.of(lives, CONFIDENCE) instanceof WeibullFit fit ? fit : null,
                WeibullFit.of(lives, CONFIDENCE, WeibullFit.Threshold.MANY_FAILURES) instanceof WeibullFit fit
                        ? fit
                        : null);
    }

    public static void main(String... arguments) throws IOException {
        int seeds = Integer.parseInt(arguments[0]);
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        for (Weibull truth : List.of(TRUTH, new Weibull(0.8, 300), new Weibull(3, 120))) {
            for (int positions : new int[] {60, 20, 8}) {
                print(out, truth, positions, run(truth, positions, seeds));
            }
        }
        if (arguments.length > 1) {
            for (Run run : run(TRUTH, POSITIONS, seeds)) {
                write(Path.of(arguments[1]), run);
            }
        }
    }

    private static void print(PrintStream out, Weibull truth, int positions, List<Run> runs) {
        int[] failures = runs.stream()
                .mapToInt(r -> (int) r.lives().stream().filter(Lifetime::failed).count())
                .sorted()
                .toArray();
        long unsettled = runs.stream().filter(r -> r.fit() == null).count();
        out.printf(
                Locale.ROOT,
                "shape %.1f scale %.0f weeks, %d positions, %d seeds: failures %d (%d to %d), no fit %d%n",
                truth.shape(),
                truth.scale(),
                positions,
                runs.size(),
                failures[failures.length / 2],
                failures[0],
                failures[failures.length - 1],
                unsettled);
        for (Figure figure : Figure.values()) {
            List<Run> fitted = runs.stream().filter(r -> r.fit() != null).toList();
            int covered = figure.covered(fitted, truth);
            int plain = (int) fitted.stream()
                    .filter(r -> figure.of(r.plain()).contains(figure.of(truth)))
                    .count();
            double[] width = {figure.medianWidth(fitted, Run::fit), figure.medianWidth(fitted, Run::plain)};
            out.printf(
                    Locale.ROOT,
                    "  %-16s holds the truth %d of %d (%.1f %%), chi-squared threshold %.1f %%; median width %.3f, %.3f, ratio %.3f%n",
                    figure,
                    covered,
                    fitted.size(),
                    100.0 * covered / fitted.size(),
                    100.0 * plain / fitted.size(),
                    width[0],
                    width[1],
                    width[0] / width[1]);
        }
    }

    private static void write(Path folder, Run run) throws IOException {
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("seed-" + run.seed() + ".csv"), text(run.lives()));
    }

    /** The lives as text, ages in whole days, for another tool; its checksum ties that tool's results to these lives. */
    static String text(List<Lifetime> lives) {
        StringBuilder text = new StringBuilder("entry_days,alive_days,failed_days\n");
        for (Lifetime life : lives) {
            text.append(days(life.entryAge()))
                    .append(',')
                    .append(days(life.aliveAge()))
                    .append(',');
            text.append(life.failed() ? days(life.failedAge()) : "").append('\n');
        }
        return text.toString();
    }

    private static String days(double weeks) {
        return Long.toString(Math.round(weeks * 7));
    }
}
