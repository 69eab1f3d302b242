package org.docksweep.sweep;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Room for the large arrays of one analysis. They are handed from one analysis to the next: made anew each time, megabytes of
 * them outlive the collections of new objects, fill the heap and stop every thread of a kiosk while it is collected as a whole.
 * An array is all zero when it is handed out, as a new one is. Used by one thread.
 */
final class Workspace implements AutoCloseable {
    /** Shorter arrays are made anew: they are gone before they are in anybody's way. */
    private static final int LEAST_KEPT = 1 << 13;

    /** Lengths of whole records are rounded up to this: a second and a third at 48 kHz. */
    private static final int COARSE = 1 << 16;

    /** What is kept between analyses at most, in bytes: a verdict of the longest sweep of a dock works on some 40 MB. */
    private static final long MOST_KEPT_BYTES = 40L << 20;

    private static final Spare SPARE = new Spare();

    private final Set<double[]> taken = Collections.newSetFromMap(new IdentityHashMap<>());

    private Workspace() {}

    /**
     * Begins an analysis.
     *
     * @return its room; close it when nothing of it is needed any more
     */
    static Workspace open() {
        SPARE.begin();
        return new Workspace();
    }

    /**
     * An array for this analysis.
     *
     * @param length its length
     * @return zeros
     */
    double[] zeros(int length) {
        if (length < LEAST_KEPT) {
            return new double[length];
        }
        double[] array = SPARE.take(length);
        taken.add(array);
        return array;
    }

    /**
     * An array for this analysis, of any length from the one wanted on: records of about the same duration follow each other.
     *
     * @param length length needed
     * @return zeros, at least as many
     */
    double[] atLeast(int length) {
        return zeros((length + COARSE - 1) / COARSE * COARSE);
    }

    /**
     * Gives an array back before the end. Nobody may use it afterwards.
     *
     * @param array an array of {@link #zeros}; others are left alone
     */
    void giveBack(double[] array) {
        if (taken.remove(array)) {
            SPARE.keep(array);
        }
    }

    /** Gives everything back. */
    @Override
    public void close() {
        taken.forEach(SPARE::keep);
        taken.clear();
        SPARE.end();
    }

    /**
     * An array that outlives an analysis: a table. A large one is rounded up, so that those of sweeps of about the same duration
     * can follow each other; a power of two stays one.
     *
     * @param length length needed
     * @return zeros, at least as many
     */
    static double[] table(int length) {
        return length < LEAST_KEPT
                ? new double[length]
                : SPARE.take((length + LEAST_KEPT - 1) / LEAST_KEPT * LEAST_KEPT);
    }

    /**
     * Gives a table back that nobody has seen but who made it.
     *
     * @param table array of {@link #table}
     */
    static void giveBackTable(double[] table) {
        if (table.length >= LEAST_KEPT) {
            SPARE.keep(table);
        }
    }

    /**
     * Gives up tables. An analysis that runs may still read them, so they are handed out again only when none does.
     *
     * @param tables arrays of {@link #table}; null is left out
     */
    static void giveUp(double[]... tables) {
        for (double[] table : tables) {
            if (table != null && table.length >= LEAST_KEPT) {
                SPARE.giveUp(table);
            }
        }
    }

    /** Arrays nobody uses, by length; those of the length least recently asked for go first when it becomes too much. */
    private static final class Spare {
        private final Map<Integer, Deque<double[]>> byLength = new HashMap<>();
        /** Lengths, the one asked for last at the end. */
        private final List<Integer> asked = new ArrayList<>();

        private final List<double[]> givenUp = new ArrayList<>();
        private long bytes;
        private int analyses;

        synchronized void begin() {
            analyses++;
        }

        synchronized void end() {
            analyses--;
            if (analyses == 0) {
                givenUp.forEach(this::keep);
                givenUp.clear();
            }
        }

        synchronized void giveUp(double[] table) {
            if (analyses == 0) {
                keep(table);
            } else if (Double.BYTES * (long) table.length + waiting() <= MOST_KEPT_BYTES) {
                givenUp.add(table);
            }
        }

        private long waiting() {
            return givenUp.stream()
                    .mapToLong(t -> Double.BYTES * (long) t.length)
                    .sum();
        }

        double[] take(int length) {
            double[] known;
            synchronized (this) {
                asked.remove((Integer) length);
                asked.add(length);
                Deque<double[]> spare = byLength.get(length);
                known = spare == null ? null : spare.poll();
                bytes -= known == null ? 0 : Double.BYTES * (long) length;
            }
            if (known == null) {
                return new double[length];
            }
            Arrays.fill(known, 0);
            return known;
        }

        synchronized void keep(double[] array) {
            byLength.computeIfAbsent(array.length, l -> new ArrayDeque<>()).push(array);
            if (!asked.contains(array.length)) {
                asked.add(array.length);
            }
            bytes += Double.BYTES * (long) array.length;
            while (bytes > MOST_KEPT_BYTES) {
                int least = asked.get(0);
                Deque<double[]> spare = byLength.get(least);
                if (spare == null || spare.isEmpty()) {
                    byLength.remove(least);
                    asked.remove(0);
                } else {
                    spare.poll();
                    bytes -= Double.BYTES * (long) least;
                }
            }
        }
    }
}
