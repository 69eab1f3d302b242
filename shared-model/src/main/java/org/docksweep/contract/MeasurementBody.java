package org.docksweep.contract;

import java.time.Instant;
import java.util.UUID;
import org.docksweep.judge.PointJudgement;

/**
 * A measurement of one test point within a check-in.
 *
 * @param id identity, made by the client
 * @param takenAt when the capture began
 * @param attempt 1 for the first sweep of this point, 2 and 3 for repeats after a spoiled one
 * @param recordingSha256 content hash of the recording, 64 hex digits, or null when none is kept
 * @param ambientCelsius air temperature, or null
 * @param judgement what the gate said of the point, with its curves
 */
public record MeasurementBody(
        UUID id,
        Instant takenAt,
        int attempt,
        String recordingSha256,
        Double ambientCelsius,
        PointJudgement judgement) {}
