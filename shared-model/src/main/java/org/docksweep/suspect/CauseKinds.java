package org.docksweep.suspect;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.docksweep.fleet.ConfirmedCause;

/**
 * Which faults, as the dock sees them, a cause found at the bench may have shown as. A broken lead-in, for instance, is an
 * open driver or a bad contact. Common practice, no source.
 */
public final class CauseKinds {
    private CauseKinds() {}

    /**
     * Faults a cause may show as.
     *
     * @param cause cause found
     * @return faults, empty when the cause says nothing about one (no fault found, something else)
     */
    public static Set<FaultKind> of(ConfirmedCause cause) {
        Set<FaultKind> kinds = EnumSet.noneOf(FaultKind.class);
        kinds.addAll(byKnowledge(cause));
        // Where cause and fault have one name they are one thing.
        for (FaultKind kind : FaultKind.values()) {
            if (kind.name().equals(cause.name())) {
                kinds.add(kind);
            }
        }
        return kinds;
    }

    private static List<FaultKind> byKnowledge(ConfirmedCause cause) {
        return switch (cause) {
            case LEAD_IN_JOINT ->
                List.of(FaultKind.DRIVER_OPEN, FaultKind.CONTACT_RESISTANCE, FaultKind.INTERMITTENT_CONTACT);
            case COIL_OPEN -> List.of(FaultKind.DRIVER_OPEN);
            case COIL_BURNT -> List.of(FaultKind.SHORTED_TURNS, FaultKind.DRIVER_SHORTED, FaultKind.DRIVER_OPEN);
            case COIL_RUBBING, DEBRIS_IN_GAP, RUST_IN_GAP, FLUID_THICKENED -> List.of(FaultKind.COIL_SEIZED);
            case DIAPHRAGM_DAMAGED -> List.of(FaultKind.WAY_WEAK, FaultKind.COIL_SEIZED, FaultKind.DRIVER_OPEN);
            case WRONG_PART_FITTED -> List.of(FaultKind.WRONG_IMPEDANCE_PART);
            case CONTACT ->
                List.of(
                        FaultKind.CONTACT_RESISTANCE,
                        FaultKind.INTERMITTENT_CONTACT,
                        FaultKind.DRIVER_OPEN,
                        FaultKind.NOTHING_CONNECTED);
            case WIRING -> List.of(FaultKind.DRIVER_OPEN, FaultKind.TERMINALS_SHORTED, FaultKind.NOTHING_CONNECTED);
            case CROSSOVER_PART -> List.of(FaultKind.PART_OPEN, FaultKind.PART_SHORTED, FaultKind.PART_DRIFTED);
            case AIR_LEAK -> List.of(FaultKind.LEAK);
            case ELECTRONICS -> List.of(FaultKind.WAY_WEAK);
            case MAGNET_WEAK, POLARITY_REVERSED, PORT_BLOCKED, NO_FAULT_FOUND, OTHER -> List.of();
        };
    }

    /**
     * Shares of the faults a finding stands for. A coil measured as open settles it. Otherwise the faults the cause may
     * show as are believed as the dock's suspects at that place were; where the dock suspected none of them, alike.
     *
     * @param cause cause found
     * @param coilOpen whether the coil itself was measured as open
     * @param suspected suspects of the dock at the place of the finding
     * @return shares that add up to 1, or an empty map when the cause says nothing
     */
    public static Map<FaultKind, Double> shares(ConfirmedCause cause, boolean coilOpen, List<Suspect> suspected) {
        Set<FaultKind> kinds = of(cause);
        Map<FaultKind, Double> shares = new EnumMap<>(FaultKind.class);
        if (coilOpen && kinds.contains(FaultKind.DRIVER_OPEN)) {
            shares.put(FaultKind.DRIVER_OPEN, 1.0);
            return shares;
        }
        double sum = 0;
        for (Suspect suspect : suspected) {
            if (kinds.contains(suspect.kind()) && suspect.probability() > 0) {
                shares.merge(suspect.kind(), suspect.probability(), Double::sum);
                sum += suspect.probability();
            }
        }
        if (sum == 0) {
            kinds.forEach(k -> shares.put(k, 1.0 / kinds.size()));
            return shares;
        }
        double all = sum;
        shares.replaceAll((k, share) -> share / all);
        return shares;
    }
}
