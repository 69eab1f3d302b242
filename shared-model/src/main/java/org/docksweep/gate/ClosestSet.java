package org.docksweep.gate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Chooses, out of many things, a few that lie closest together: the set whose widest pair is narrowest. Branch and bound
 * from a greedy start; a search that grows too long is cut off and says so.
 */
public final class ClosestSet {
    private static final int MOST_STEPS = 2_000_000;

    private final double[][] distance;
    private final int count;
    private int[] best;
    private double widest;
    private int steps;

    /**
     * What was chosen.
     *
     * @param members indices, ascending
     * @param widest distance of the two members farthest apart
     * @param exact whether it is proved that no other set is closer together
     */
    public record Choice(List<Integer> members, double widest, boolean exact) {
        public Choice {
            members = List.copyOf(members);
        }
    }

    private ClosestSet(double[][] distance, int count) {
        this.distance = distance;
        this.count = count;
    }

    /**
     * Chooses.
     *
     * @param distance symmetric distances, infinite where two cannot be together
     * @param count how many to choose, at least 2 and at most as many as there are
     * @return the choice; its widest is infinite when no set is possible
     * @throws IllegalArgumentException if the count is out of range
     */
    public static Choice of(double[][] distance, int count) {
        if (count < 2 || count > distance.length) {
            throw new IllegalArgumentException(
                    "count must be from 2 to " + distance.length + " as many as there are, but is " + count);
        }
        return new ClosestSet(distance, count).choose();
    }

    private Choice choose() {
        greedy();
        search(new int[count], 0, IntStream.range(0, distance.length).boxed().toList());
        Arrays.sort(best);
        return new Choice(Arrays.stream(best).boxed().toList(), widest, steps < MOST_STEPS);
    }

    /** Every one with its nearest. */
    private void greedy() {
        widest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < distance.length; i++) {
            double[] from = distance[i];
            int centre = i;
            int[] set = IntStream.range(0, distance.length)
                    .boxed()
                    .sorted(Comparator.comparingDouble((Integer k) -> k == centre ? -1 : from[k]))
                    .limit(count)
                    .mapToInt(Integer::intValue)
                    .toArray();
            double width = width(set);
            if (best == null || width < widest) {
                best = set;
                widest = width;
            }
        }
    }

    private double width(int[] set) {
        double width = 0;
        for (int a : set) {
            for (int b : set) {
                width = a == b ? width : Math.max(width, distance[a][b]);
            }
        }
        return width;
    }

    /** Adds one of the candidates that lie closer to all chosen ones than the widest pair of the best set so far. */
    private void search(int[] chosen, int size, List<Integer> candidates) {
        if (size == count) {
            best = chosen.clone();
            widest = width(best);
            return;
        }
        for (int c = 0; c + count - size <= candidates.size(); c++) {
            if (++steps >= MOST_STEPS) {
                return;
            }
            int next = candidates.get(c);
            if (size > 0 && farthest(chosen, size, next) >= widest) {
                continue;
            }
            chosen[size] = next;
            List<Integer> left = new ArrayList<>();
            for (int k : candidates.subList(c + 1, candidates.size())) {
                if (distance[next][k] < widest) {
                    left.add(k);
                }
            }
            search(chosen, size + 1, left);
        }
    }

    /** A set found meanwhile may have made the bound narrower than when the candidates were listed. */
    private double farthest(int[] chosen, int size, int next) {
        double farthest = 0;
        for (int i = 0; i < size; i++) {
            farthest = Math.max(farthest, distance[chosen[i]][next]);
            for (int k = 0; k < i; k++) {
                farthest = Math.max(farthest, distance[chosen[i]][chosen[k]]);
            }
        }
        return farthest;
    }
}
