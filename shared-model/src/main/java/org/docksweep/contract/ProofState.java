package org.docksweep.contract;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.docksweep.fleet.Reason;

/**
 * Whether a job may be signed off.
 *
 * @param proved whether nothing is missing
 * @param cleanCabinetSweeps clean sweeps of the cabinet in a row, counted from the newest back to the last change
 * @param cleanDriverSweeps the same of bare drivers, by position; positions whose driver was not swept are left out
 * @param missing what is missing, in words
 */
public record ProofState(
        boolean proved, int cleanCabinetSweeps, Map<String, Integer> cleanDriverSweeps, List<Reason> missing) {
    public ProofState {
        cleanDriverSweeps =
                cleanDriverSweeps == null ? Map.of() : Collections.unmodifiableMap(new TreeMap<>(cleanDriverSweeps));
        missing = List.copyOf(missing);
    }
}
