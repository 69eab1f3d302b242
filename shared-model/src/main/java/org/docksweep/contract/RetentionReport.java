package org.docksweep.contract;

import java.time.LocalDate;

/**
 * What is past its time by the rules of the house, or what was removed.
 *
 * @param removed whether it was removed, or only looked for
 * @param curvesBefore curves received before this day (UTC) go; null when curves are kept for ever
 * @param recordingsBefore recordings received before this day (UTC) go; null when recordings are kept for ever
 * @param curves number of curves
 * @param recordings number of recordings
 * @param recordingBytes size of these recordings in bytes
 * @param heldByOpenJobs curves and recordings as old that stay until the bench job of their check-in is closed
 */
public record RetentionReport(
        boolean removed,
        LocalDate curvesBefore,
        LocalDate recordingsBefore,
        long curves,
        int recordings,
        long recordingBytes,
        long heldByOpenJobs) {}
