package org.docksweep.gate;

import java.util.List;
import java.util.Optional;

/**
 * How much two healthy units of a model differ in their own good curves, in units of what healthy units of that model
 * usually differ by.
 *
 * <p>At every frequency the difference of ln |Z| (and of the level at the microphone) is divided by {@code sqrt(2) s},
 * {@code s} being the reference's spread between healthy units. The mismatch is the root of the mean square of that; where
 * there is sound, impedance and sound count half each. Two healthy units taken at random have a mean square of 1.
 */
public final class Likeness {
    /** Frequencies of one grid are equal up to rounding. */
    private static final double SAME_FREQUENCY = 1e-6;
    /** Only keeps a spread of 0 from dividing by it. */
    private static final double LEAST_SPREAD = 1e-6;

    private Likeness() {}

    /**
     * A difference.
     *
     * @param mismatch mismatch as above, 0 for equal curves
     * @param levelDb mean level of the first over that of the second, in dB, or null without a microphone
     * @param worstDb largest difference of level at one frequency, in dB, or null without a microphone
     * @param worstHz where it is, in hertz, or null without a microphone
     */
    public record Difference(double mismatch, Double levelDb, Double worstDb, Double worstHz) {}

    /** Running sums over frequencies. */
    private static final class Sums {
        private double squares;
        private double values;
        private int count;
        private double worst;
        private double worstHz;

        void add(double frequencyHz, double difference, double spread) {
            double relative = difference / (Math.sqrt(2) * Math.max(LEAST_SPREAD, spread));
            squares += relative * relative;
            values += difference;
            count++;
            if (Math.abs(difference) > Math.abs(worst)) {
                worst = difference;
                worstHz = frequencyHz;
            }
        }

        double meanSquare() {
            return squares / count;
        }
    }

    /**
     * Compares two units.
     *
     * @param one good curves of the first
     * @param other good curves of the second
     * @param references references of their model
     * @return the difference; empty when they share no test point with a reference and a curve of both
     */
    public static Optional<Difference> between(
            List<Baseline> one, List<Baseline> other, List<PointReference> references) {
        Sums impedance = new Sums();
        Sums sound = new Sums();
        for (PointReference reference : references) {
            Optional<Baseline> a = at(one, reference);
            Optional<Baseline> b = at(other, reference);
            if (a.isPresent() && b.isPresent()) {
                impedance(a.get(), b.get(), reference, impedance);
                sound(a.get(), b.get(), reference, sound);
            }
        }
        if (impedance.count + sound.count == 0) {
            return Optional.empty();
        }
        double square = impedance.count == 0
                ? sound.meanSquare()
                : sound.count == 0 ? impedance.meanSquare() : 0.5 * (impedance.meanSquare() + sound.meanSquare());
        return Optional.of(
                sound.count == 0
                        ? new Difference(Math.sqrt(square), null, null, null)
                        : new Difference(Math.sqrt(square), sound.values / sound.count, sound.worst, sound.worstHz));
    }

    private static Optional<Baseline> at(List<Baseline> baselines, PointReference reference) {
        return baselines.stream()
                .filter(b -> b.testPointCode().equals(reference.testPointCode()))
                .findFirst();
    }

    private static void impedance(Baseline a, Baseline b, PointReference reference, Sums sums) {
        if (a.impedance() == null || b.impedance() == null) {
            return;
        }
        double[] one = a.impedance().magnitudesOhm();
        double[] other = b.impedance().magnitudesOhm();
        double[] oneHz = a.impedance().frequencyHz();
        double[] otherHz = b.impedance().frequencyHz();
        double[] grid = reference.frequencyHz();
        for (int i = 0; i < grid.length; i++) {
            int k = index(oneHz, grid[i]);
            int m = index(otherHz, grid[i]);
            if (k >= 0 && m >= 0) {
                sums.add(grid[i], Math.log(one[k] / other[m]), reference.spreadLog()[i]);
            }
        }
    }

    private static void sound(Baseline a, Baseline b, PointReference reference, Sums sums) {
        if (a.acoustic() == null || b.acoustic() == null) {
            return;
        }
        double[] one = a.acoustic().levelDb();
        double[] other = b.acoustic().levelDb();
        double[] oneHz = a.acoustic().frequencyHz();
        double[] otherHz = b.acoustic().frequencyHz();
        double[] grid = reference.acousticFrequencyHz();
        for (int i = 0; i < grid.length; i++) {
            int k = index(oneHz, grid[i]);
            int m = index(otherHz, grid[i]);
            if (k >= 0 && m >= 0) {
                sums.add(grid[i], one[k] - other[m], reference.spreadLevelDb()[i]);
            }
        }
    }

    /** Place of a frequency in an ascending grid, or -1. */
    private static int index(double[] gridHz, double frequencyHz) {
        int low = 0;
        int high = gridHz.length - 1;
        while (low <= high) {
            int middle = (low + high) >>> 1;
            if (Math.abs(gridHz[middle] / frequencyHz - 1) < SAME_FREQUENCY) {
                return middle;
            }
            if (gridHz[middle] < frequencyHz) {
                low = middle + 1;
            } else {
                high = middle - 1;
            }
        }
        return -1;
    }
}
