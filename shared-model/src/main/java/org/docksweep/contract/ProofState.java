package org.docksweep.contract;

import java.util.List;
import org.docksweep.fleet.Reason;

/**
 * Whether a job may be signed off.
 *
 * @param proved whether nothing is missing
 * @param cleanCabinetSweeps clean sweeps of the cabinet in a row, counted from the newest back to the last change
 * @param missing what is missing, in words
 */
public record ProofState(boolean proved, int cleanCabinetSweeps, List<Reason> missing) {
    public ProofState {
        missing = List.copyOf(missing);
    }
}
