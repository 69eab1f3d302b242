package org.docksweep.contract;

import java.time.Instant;
import java.util.Set;
import java.util.UUID;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.Sighting;

/**
 * What the bench found. A later finding about the same place takes the place of an earlier one; both are kept.
 *
 * @param id identity, made by the client
 * @param at when, not in the future
 * @param by person
 * @param bench bench
 * @param positionCode driver position it is about, or null for the cabinet
 * @param elementId crossover part it is about, or null
 * @param coilResistanceOhm resistance measured at the driver itself in ohm, or null when not measured
 * @param coilCelsius temperature of the coil then, or null when not known
 * @param coilOpen whether the coil was measured as open; then without a resistance
 * @param seen what was seen
 * @param cause confirmed cause
 * @param causeText words on it; needed with {@link ConfirmedCause#OTHER}
 * @param charge who bears it
 */
public record FindingBody(
        UUID id,
        Instant at,
        String by,
        String bench,
        String positionCode,
        String elementId,
        Double coilResistanceOhm,
        Double coilCelsius,
        boolean coilOpen,
        Set<Sighting> seen,
        ConfirmedCause cause,
        String causeText,
        ChargeClass charge) {}
