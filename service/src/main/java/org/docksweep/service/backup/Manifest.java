package org.docksweep.service.backup;

import java.time.Instant;
import java.util.List;

/**
 * Last entry of an export: what is in it. Without it an export is not whole.
 *
 * @param format version of the format, 1
 * @param schemaVersion newest migration of the database it came from
 * @param madeAt when
 * @param tables tables, each after those it refers to
 * @param recordings number of recordings, or null when they were left out
 */
record Manifest(int format, String schemaVersion, Instant madeAt, List<Table> tables, Integer recordings) {
    static final int FORMAT = 1;
    static final String ENTRY = "manifest.json";

    /**
     * A table.
     *
     * @param name name; its rows are in {@code tables/NAME.jsonl}, one JSON object a line, ordered by key
     * @param rows number of rows
     * @param sha256 hash of these lines
     */
    record Table(String name, long rows, String sha256) {}
}
