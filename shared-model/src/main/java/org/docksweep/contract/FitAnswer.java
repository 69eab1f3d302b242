package org.docksweep.contract;

import org.docksweep.fleet.Reason;

/**
 * Whether a part fits a place.
 *
 * @param fits whether it does
 * @param reason why not, or that it does
 */
public record FitAnswer(boolean fits, Reason reason) {}
