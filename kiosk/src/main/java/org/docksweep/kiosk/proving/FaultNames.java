package org.docksweep.kiosk.proving;

import java.util.List;
import java.util.Set;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.judge.Prompt;
import org.docksweep.suspect.Suspect;

/** Which suspect names which fault, and which prompt answers which case. */
final class FaultNames {
    private FaultNames() {}

    /** Names of the suspects that say what a fault is; a name the gate does not have yet matches nothing. */
    private static Set<String> names(ProvingFaultKind kind) {
        return switch (kind) {
            case DRIVER_OPEN, ONE_OF_TWO_OPEN -> Set.of("DRIVER_OPEN");
            case TERMINALS_SHORTED -> Set.of("TERMINALS_SHORTED");
            case COIL_SHORTED -> Set.of("DRIVER_SHORTED");
            case WRONG_IMPEDANCE -> Set.of("WRONG_IMPEDANCE_PART");
            case SEIZED -> Set.of("COIL_SEIZED");
            case PART_OPEN -> Set.of("PART_OPEN");
            case PART_SHORTED -> Set.of("PART_SHORTED");
            case CONTACT_RESISTANCE -> Set.of("CONTACT_RESISTANCE");
            case SHORTED_TURNS -> Set.of("SHORTED_TURNS");
            case PART_OFF_VALUE -> Set.of("PART_DRIFTED");
            case LEAK -> Set.of("LEAK");
            case PORT_BLOCKED -> Set.of("PORT_BLOCKED");
            case WAY_WEAK -> Set.of("WAY_WEAK");
            case POLARITY -> Set.of("POLARITY_REVERSED", "WAY_REVERSED");
            case RUB -> Set.of("COIL_RUBS");
            case MAGNET_WEAK -> Set.of("MAGNET_WEAK", "WEAK_MAGNET");
            case NOTHING_CONNECTED, PAIRS_SWAPPED, WRONG_LABEL, UNTAUGHT_MODEL -> Set.of();
        };
    }

    /** Whether a suspect is exactly this fault: the same kind at the same driver, part or box. */
    static boolean says(Suspect suspect, ProvingFault fault) {
        if (!names(fault.kind()).contains(suspect.kind().name())) {
            return false;
        }
        return switch (fault.kind()) {
            case TERMINALS_SHORTED -> fault.target().equals(suspect.testPointCode());
            case PART_OPEN, PART_SHORTED, PART_OFF_VALUE -> fault.target().equals(suspect.elementId());
            case LEAK, PORT_BLOCKED ->
                fault.target().equals(suspect.elementId())
                        || suspect.positionCode() != null
                                && fault.positionCodes().contains(suspect.positionCode());
            default -> fault.target().equals(suspect.positionCode());
        };
    }

    /** The fault a suspect stands for among those a model can have, or null. */
    static ProvingFault meant(Suspect suspect, List<ProvingFault> faults) {
        return faults.stream().filter(f -> says(suspect, f)).findFirst().orElse(null);
    }

    static Prompt wantedPrompt(ProvingFaultKind kind) {
        return switch (kind) {
            case NOTHING_CONNECTED -> Prompt.PLUG_IN;
            case PAIRS_SWAPPED -> Prompt.CHECK_SOCKET;
            case WRONG_LABEL -> Prompt.CHECK_LABEL;
            case UNTAUGHT_MODEL -> Prompt.PERSON_DECIDES;
            default -> Prompt.NONE;
        };
    }
}
