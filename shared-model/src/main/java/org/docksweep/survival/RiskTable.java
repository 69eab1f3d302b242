package org.docksweep.survival;

import java.util.Arrays;
import java.util.List;

/** Ages at which failures were found, and how many parts were at risk then. A part is at risk from after its entry. */
final class RiskTable {
    private final double[] ages;
    private final double[] entries;
    private final double[] ends;
    private final double[] failures;

    RiskTable(List<Lifetime> lifetimes) {
        entries = lifetimes.stream().mapToDouble(Lifetime::entryAge).sorted().toArray();
        ends = lifetimes.stream().mapToDouble(Lifetime::endAge).sorted().toArray();
        failures = lifetimes.stream()
                .filter(Lifetime::failed)
                .mapToDouble(Lifetime::endAge)
                .sorted()
                .toArray();
        ages = Arrays.stream(failures).distinct().toArray();
    }

    /** Distinct ages at failure, rising. */
    double[] ages() {
        return ages.clone();
    }

    /** Entered before an age and not ended before it; one that ends at the age itself is still at risk. */
    int atRisk(double age) {
        return countBelow(entries, age) - countBelow(ends, age);
    }

    int failures(double age) {
        return countBelow(failures, Math.nextUp(age)) - countBelow(failures, age);
    }

    private static int countBelow(double[] sorted, double limit) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] < limit) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
