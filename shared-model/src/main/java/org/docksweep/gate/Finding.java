package org.docksweep.gate;

import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Way;

/**
 * Something seen that matters for the verdict.
 *
 * @param severity how it stands
 * @param testPointCode test point it was seen at
 * @param way way concerned, or null when not known
 * @param positionCode driver position concerned, or null when not known
 * @param fromHz lower end of the frequency range that decided, or null
 * @param toHz upper end of the range, or null
 * @param reason what was seen, in words
 */
public record Finding(
        ReadingState severity,
        String testPointCode,
        Way way,
        String positionCode,
        Double fromHz,
        Double toHz,
        Reason reason) {}
