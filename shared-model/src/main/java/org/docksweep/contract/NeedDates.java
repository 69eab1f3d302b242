package org.docksweep.contract;

import java.time.LocalDate;
import java.util.List;

/**
 * When cabinets of a model would be missed if they went to the bench now.
 *
 * @param modelCode cabinet model
 * @param days by how many go to the bench: first entry for the next one, second for the one after; null where the fleet
 *     can do without it
 */
public record NeedDates(String modelCode, List<LocalDate> days) {
    public NeedDates {
        // Holds nulls, which List.copyOf refuses.
        days = days == null ? List.of() : java.util.Collections.unmodifiableList(new java.util.ArrayList<>(days));
    }

    /**
     * Day on which a cabinet is needed that goes to the bench now.
     *
     * @param before how many of its model went there before it since these dates were made
     * @return the day, or null when the fleet can do without it or nobody counted so far
     */
    public LocalDate needOn(int before) {
        return days.isEmpty() ? null : days.get(Math.min(before, days.size() - 1));
    }
}
