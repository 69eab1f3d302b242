package org.docksweep.contract;

import java.time.Instant;

/**
 * A reference in force, with who taught it.
 *
 * @param modelCode cabinet model
 * @param testPointCode test point
 * @param revision which it is, from 1
 * @param unitCount known-good units it was taught from
 * @param taughtAt when it was stored
 * @param taughtBy person or kiosk that stored it, or null when that was not written down
 */
public record TaughtPoint(
        String modelCode, String testPointCode, int revision, int unitCount, Instant taughtAt, String taughtBy) {}
