package org.docksweep.service.backup;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.JsonNode;

/** A row of a table as one JSON object and back. Instants are UTC, numbers lose no digit, null stays null. */
final class Rows {
    private Rows() {}

    static void write(ResultSet row, List<StoredTable.Column> columns, JsonGenerator json) throws SQLException {
        json.writeStartObject();
        for (int i = 0; i < columns.size(); i++) {
            json.writeName(columns.get(i).name());
            int at = i + 1;
            switch (columns.get(i).kind()) {
                case TEXT -> text(json, row.getString(at));
                case UUID -> text(json, row.getObject(at, UUID.class));
                case INSTANT -> {
                    OffsetDateTime time = row.getObject(at, OffsetDateTime.class);
                    text(json, time == null ? null : time.toInstant());
                }
                case DATE -> text(json, row.getObject(at, LocalDate.class));
                case BOOLEAN -> {
                    boolean value = row.getBoolean(at);
                    if (row.wasNull()) {
                        json.writeNull();
                    } else {
                        json.writeBoolean(value);
                    }
                }
                case INTEGER -> {
                    long value = row.getLong(at);
                    if (row.wasNull()) {
                        json.writeNull();
                    } else {
                        json.writeNumber(value);
                    }
                }
                case DOUBLE -> {
                    double value = row.getDouble(at);
                    if (row.wasNull()) {
                        json.writeNull();
                    } else {
                        json.writeNumber(value);
                    }
                }
            }
        }
        json.writeEndObject();
    }

    private static void text(JsonGenerator json, Object value) {
        if (value == null) {
            json.writeNull();
        } else {
            json.writeString(value.toString());
        }
    }

    /** Sets the parameters of an insert. */
    static void read(JsonNode row, List<StoredTable.Column> columns, PreparedStatement insert) throws SQLException {
        for (int i = 0; i < columns.size(); i++) {
            JsonNode cell = row.get(columns.get(i).name());
            if (cell == null) {
                throw new IllegalArgumentException("has no \"" + columns.get(i).name() + "\"");
            }
            insert.setObject(
                    i + 1, cell.isNull() ? null : value(cell, columns.get(i).kind()));
        }
        if (row.size() != columns.size()) {
            throw new IllegalArgumentException(
                    "has " + row.size() + " members, the table has " + columns.size() + " columns");
        }
    }

    private static Object value(JsonNode cell, StoredTable.Kind kind) {
        return switch (kind) {
            case TEXT -> cell.stringValue();
            case UUID -> UUID.fromString(cell.stringValue());
            case INSTANT -> Instant.parse(cell.stringValue()).atOffset(ZoneOffset.UTC);
            case DATE -> LocalDate.parse(cell.stringValue());
            case BOOLEAN -> cell.booleanValue();
            case INTEGER -> cell.longValue();
            case DOUBLE -> cell.doubleValue();
        };
    }
}
