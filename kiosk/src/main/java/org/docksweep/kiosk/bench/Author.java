package org.docksweep.kiosk.bench;

import java.time.Instant;

/**
 * Who does something now.
 *
 * @param at when
 * @param by person signed on
 * @param bench bench
 */
record Author(Instant at, String by, String bench) {}
