package org.docksweep.service.dispatches;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import org.docksweep.contract.Dispatch;
import org.docksweep.contract.FleetStatus;

/**
 * Whether what is booked can be met. Bookings are served in the order of their out dates from the shelf and from what is
 * due back on an earlier day; what a booking takes comes back on its own due date. What cannot be served is a shortage
 * of that day.
 */
public final class Availability {
    private final List<FleetStatus.BookingRow> bookings = new ArrayList<>();
    private final Map<String, List<LocalDate>> shortages = new HashMap<>();

    /**
     * Units of a model that come back.
     *
     * @param modelCode model
     * @param dueOn day they are due; they serve bookings of later days
     * @param count how many
     */
    public record Back(String modelCode, LocalDate dueOn, int count) {}

    private Availability() {}

    /**
     * Serves bookings.
     *
     * @param ready units on the shelf, by model
     * @param due units that come back from orders gone out
     * @param dispatches bookings by out date
     * @return what can be met
     */
    static Availability of(Map<String, Integer> ready, List<Back> due, List<Dispatch> dispatches) {
        Availability availability = new Availability();
        Map<String, Integer> shelf = new HashMap<>(ready);
        PriorityQueue<Back> coming = new PriorityQueue<>(Comparator.comparing(Back::dueOn));
        coming.addAll(due);
        for (Dispatch dispatch : dispatches) {
            while (!coming.isEmpty() && coming.peek().dueOn().isBefore(dispatch.outOn())) {
                Back back = coming.remove();
                shelf.merge(back.modelCode(), back.count(), Integer::sum);
            }
            for (Dispatch.Line line : dispatch.lines()) {
                int served = Math.min(line.count(), shelf.getOrDefault(line.modelCode(), 0));
                if (served > 0) {
                    shelf.merge(line.modelCode(), -served, Integer::sum);
                    coming.add(new Back(line.modelCode(), dispatch.dueOn(), served));
                }
                availability.note(dispatch, line, served);
            }
        }
        return availability;
    }

    private void note(Dispatch dispatch, Dispatch.Line line, int served) {
        bookings.add(new FleetStatus.BookingRow(
                dispatch.outOn(), dispatch.orderNumber(), dispatch.customer(), line.modelCode(), line.count(), served));
        for (int missing = served; missing < line.count(); missing++) {
            shortages.computeIfAbsent(line.modelCode(), m -> new ArrayList<>()).add(dispatch.outOn());
        }
    }

    /**
     * Bookings against what is there.
     *
     * @return one row per dispatch and model, by out date
     */
    public List<FleetStatus.BookingRow> bookings() {
        return List.copyOf(bookings);
    }

    /**
     * Day on which a cabinet that is now at the bench is needed: the bench jobs of a model, oldest first, are given to
     * its shortages, earliest first.
     *
     * @param modelCode model
     * @param place place of the job among the open jobs of its model, oldest first, from 0
     * @return the day, or null when the fleet can do without it
     */
    public LocalDate needOn(String modelCode, int place) {
        List<LocalDate> days = shortages.getOrDefault(modelCode, List.of());
        return place < days.size() ? days.get(place) : null;
    }
}
