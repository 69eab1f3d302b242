package org.docksweep.contract;

/**
 * What an import did. An import with errors stores nothing and is answered with
 * {@link ProblemTypes#IMPORT_ERRORS}.
 *
 * @param lines data lines read
 * @param stored entries that are new
 * @param unchanged entries that were there already with the same content
 */
public record ImportReceipt(int lines, int stored, int unchanged) {}
