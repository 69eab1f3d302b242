package org.docksweep.judge;

import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;

/**
 * How a driver position came out, for the drawing of the cabinet.
 *
 * @param positionCode position
 * @param state how it stands
 * @param word one or two words, for example "open"
 * @param headline the one number to show, already formatted with its unit, or null
 */
public record PositionState(String positionCode, ReadingState state, Reason word, String headline) {}
