package org.docksweep.contract;

import java.time.LocalDate;

/**
 * The life of a part from before the bench wrote such things down.
 *
 * @param life the life; without a job
 * @param recordsFrom first day from which the house would have known of a failure, or null when it was watched from its
 *     fitting. A part already old on that day counts only from then on
 */
public record PastPartLife(PartLife life, LocalDate recordsFrom) {}
