package org.docksweep.service.trends;

import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.docksweep.contract.DriftRow;
import org.docksweep.gate.ReadingKind;
import org.docksweep.service.store.AddedRows;

/**
 * A reading as read, by plain statements: all those of a cabinet are read after each of its check-ins, and never changed.
 *
 * @param tag cabinet
 * @param quantity what was read
 * @param point when, and what
 */
record TakenReading(String tag, Quantity quantity, DriftRow.Point point) {

    /** Readings of cabinets, by cabinet, oldest first. */
    static List<TakenReading> of(AddedRows rows, List<String> tags) {
        if (tags.isEmpty()) {
            return List.of();
        }
        Object[] values = padded(tags);
        return rows.read(
                "select tag, model_code, test_point_code, owner, kind, taken_at, reading_value from trend_reading"
                        + " where tag in (" + marks(values.length) + ")"
                        + " order by tag, taken_at, measurement_id, line_number",
                (row, number) -> new TakenReading(
                        row.getString(1),
                        new Quantity(
                                row.getString(2),
                                row.getString(3),
                                row.getString(4),
                                ReadingKind.valueOf(row.getString(5))),
                        new DriftRow.Point(
                                row.getObject(6, OffsetDateTime.class).toInstant(), row.getDouble(7))),
                values);
    }

    /** The last one repeated up to a power of two: few different statements, each of which is known already. */
    static Object[] padded(List<?> values) {
        int size = Integer.highestOneBit(2 * values.size() - 1);
        Object[] padded = Arrays.copyOf(values.toArray(), size);
        Arrays.fill(padded, values.size(), size, values.get(values.size() - 1));
        return padded;
    }

    static String marks(int count) {
        return String.join(", ", Collections.nCopies(count, "?"));
    }
}
