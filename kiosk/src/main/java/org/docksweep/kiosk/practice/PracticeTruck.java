package org.docksweep.kiosk.practice;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.docksweep.contract.DemoHouse;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.VisualItem;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.SlotState;

/** What comes off the invented truck, so that there is something to scan. */
public final class PracticeTruck {
    private final List<DemoHouse.Arrival> arrivals;

    /**
     * A cabinet that stands in front of the person.
     *
     * @param label what its label says
     * @param damage what can be seen on it
     */
    public record Cabinet(AssetTag label, Set<VisualItem> damage) {}

    PracticeTruck(List<DemoHouse.Arrival> arrivals) {
        this.arrivals = List.copyOf(arrivals);
    }

    /**
     * The cabinet at hand, or the next one that was not taken in yet.
     *
     * @param state how the dock stands
     * @return the cabinet; empty when the truck is
     */
    public Optional<Cabinet> next(DockState state) {
        return arrivals.stream()
                .filter(a -> stands(state, a.label()))
                .findFirst()
                .map(a -> new Cabinet(a.label(), a.visualDamage()));
    }

    private static boolean stands(DockState state, AssetTag label) {
        Optional<DockState.Returns> returns = state.returns();
        if (returns.isEmpty()) {
            return false;
        }
        List<DockState.Slot> slots = new java.util.ArrayList<>(returns.get().unexpected());
        returns.get().models().forEach(m -> slots.addAll(m.slots()));
        return slots.stream()
                .filter(s -> s.tag().equals(label))
                .allMatch(s -> s.state() == SlotState.NOT_YET || s.state() == SlotState.AT_HAND);
    }
}
