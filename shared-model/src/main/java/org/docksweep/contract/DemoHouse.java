package org.docksweep.contract;

import java.util.List;
import java.util.Set;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.VisualItem;

/**
 * An invented rental house to practise on: its fleet, its papers and one truckload. The truth about the cabinets is
 * for comparing afterwards, never for judging.
 *
 * @param siteName name of the house
 * @param timeZone IANA time zone
 * @param ambientCelsius air temperature at the dock that night
 * @param book models
 * @param cabinets cabinets with their drivers
 * @param pastEvents history up to that night, oldest first
 * @param returnList the list of that night
 * @param dispatches what is booked
 * @param referenceUnits known-good units per model from which references are taught; none of them is on the truck
 * @param dockHand name of the dock hand
 * @param arrivals cabinets in the order they come off the truck
 * @param bench what its bench knows and has
 */
public record DemoHouse(
        String siteName,
        String timeZone,
        double ambientCelsius,
        ModelBook book,
        List<CabinetBody> cabinets,
        List<HistoryEvent> pastEvents,
        ReturnList returnList,
        List<Dispatch> dispatches,
        List<AssetTag> referenceUnits,
        String dockHand,
        List<Arrival> arrivals,
        Bench bench) {

    /**
     * What the bench of the house knows and has.
     *
     * @param technician name of the technician
     * @param benchData numbers of its driver models
     * @param parts catalogue
     * @param stock what was on the shelf that night
     */
    public record Bench(
            String technician, List<DriverBenchData> benchData, List<Part> parts, List<StockMoveBody> stock) {}

    /**
     * One cabinet coming off the truck.
     *
     * @param label asset tag on its label (which may be the wrong one)
     * @param visualDamage what the dock hand sees
     * @param truth what is really there
     */
    public record Arrival(AssetTag label, Set<VisualItem> visualDamage, Truth truth) {}

    /**
     * What is really there.
     *
     * @param kind kind of truth
     * @param faultPositionCode driver position at fault, or null
     * @param words in words, for the table
     */
    public record Truth(Kind kind, String faultPositionCode, String words) {}

    /** Kinds of truth, by what the gate must do about them. */
    public enum Kind {
        /** Nothing wrong: must reach the shelf. */
        HEALTHY,
        /** A fault the gate must catch: must reach the bench, at that position. */
        HARD_FAULT,
        /** A fault that may or may not be caught yet. */
        SOFT_FAULT,
        /** Rigging or mains inlet damaged: must reach safety hold. */
        VISUAL_SAFETY,
        /** Carries the label of another model: must prompt to check the label, never pass, never bench. */
        WRONG_LABEL,
        /** Not connected properly at first: must prompt to plug, then be judged. */
        NOT_PLUGGED
    }
}
