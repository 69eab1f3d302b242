package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.docksweep.fleet.AssetTag;
import org.docksweep.gate.Baseline;

/**
 * An outgoing or commissioning sweep: its curves become the cabinet's baseline, older ones are kept.
 *
 * @param id identity, made by the client
 * @param tag cabinet
 * @param takenAt when
 * @param operator person
 * @param baselines one per test point
 */
public record CommissioningBody(UUID id, AssetTag tag, Instant takenAt, String operator, List<Baseline> baselines) {}
