package org.docksweep.contract;

import java.time.Instant;

/**
 * Something a board shows was changed. Says where to look, not what is there now.
 *
 * @param number place in the order of all writes, rising; numbers may be left out
 * @param at when
 * @param topic what kind of thing: the first part of its path, like {@code bench-jobs}
 * @param target path that was written to
 */
public record BoardEvent(long number, Instant at, String topic, String target) {}
