package org.docksweep.service.learning;

import java.time.Instant;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.contract.DockConfusion;
import org.docksweep.contract.DockConfusion.Cell;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.suspect.CauseKinds;
import org.docksweep.suspect.Suspect;

/** Counts guesses against findings. */
final class Confusion {
    /** 97.5 % quantile of the standard normal distribution. */
    private static final double Z = 1.959963984540054;

    private Confusion() {}

    static DockConfusion of(Instant asOf, List<Repair> repairs) {
        int placeFirst = 0;
        int placeInTwo = 0;
        int causeFirst = 0;
        int nothingFound = 0;
        Map<Cell, Integer> counts = new LinkedHashMap<>();
        for (Repair repair : repairs) {
            Suspect first =
                    repair.suspects().isEmpty() ? null : repair.suspects().get(0);
            boolean same = first != null && repair.isAt(first);
            placeFirst += same ? 1 : 0;
            placeInTwo += repair.suspects().stream().limit(2).anyMatch(repair::isAt) ? 1 : 0;
            causeFirst += same && CauseKinds.of(repair.cause()).contains(first.kind()) ? 1 : 0;
            nothingFound += repair.cause() == ConfirmedCause.NO_FAULT_FOUND ? 1 : 0;
            counts.merge(new Cell(first == null ? null : first.kind(), repair.cause(), same, 0), 1, Integer::sum);
        }
        List<Cell> cells = counts.entrySet().stream()
                .map(e -> new Cell(
                        e.getKey().guess(), e.getKey().found(), e.getKey().samePlace(), e.getValue()))
                .sorted(Comparator.comparingInt(Cell::count).reversed())
                .toList();
        int jobs = repairs.size();
        return new DockConfusion(
                asOf,
                jobs,
                placeFirst,
                placeInTwo,
                causeFirst,
                nothingFound,
                wilson(placeFirst, jobs, -1),
                wilson(placeFirst, jobs, 1),
                cells);
    }

    /** Limit of a share by Wilson (1927); 0 or 1 where nothing was counted. */
    private static double wilson(int count, int all, int side) {
        if (all == 0) {
            return side < 0 ? 0 : 1;
        }
        double share = (double) count / all;
        double middle = share + Z * Z / (2 * all);
        double spread = Z * Math.sqrt(share * (1 - share) / all + Z * Z / (4.0 * all * all));
        return Math.max(0, Math.min(1, (middle + side * spread) / (1 + Z * Z / all)));
    }
}
