package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * One sweep of the bench proof: all test points of the cabinet, or one bare driver on the bench rig.
 *
 * @param id identity, made by the client
 * @param at when it ended, not in the future
 * @param by person
 * @param bench bench
 * @param subject what was swept
 * @param positionCode position the bare driver belongs to; null for the cabinet
 * @param soundsClean whether the person heard no scrape, rattle or dropout
 * @param polarity what the polarity check said
 * @param judgeVersion version of the judgement
 * @param limitsVersion version of the limits used
 * @param measurements measurements; of a bare driver with the test point {@link org.docksweep.fleet.BareDriver#TEST_POINT}
 */
public record ProofSweepBody(
        UUID id,
        Instant at,
        String by,
        String bench,
        Subject subject,
        String positionCode,
        boolean soundsClean,
        Polarity polarity,
        String judgeVersion,
        int limitsVersion,
        List<MeasurementBody> measurements) {

    /** What was swept. */
    public enum Subject {
        CABINET,
        BARE_DRIVER
    }

    /** What the polarity check said of every driver within reach of the sweep. */
    public enum Polarity {
        PROVED,
        REVERSED,
        NOT_CHECKED
    }
}
