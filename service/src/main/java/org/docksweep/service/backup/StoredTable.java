package org.docksweep.service.backup;

import java.sql.Connection;
import java.sql.DatabaseMetaData;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;

/**
 * A table as the database itself describes it, so that a migration needs no change here.
 *
 * @param name name
 * @param columns columns in their order
 * @param keyColumns columns of the primary key, by which rows are ordered
 */
record StoredTable(String name, List<Column> columns, List<String> keyColumns) {
    /** Flyway's own, and what ends with the house it was made in. */
    private static final Set<String> LEFT_OUT = Set.of("flyway_schema_history", "sign_on");

    /**
     * A column.
     *
     * @param name name
     * @param kind what it holds
     * @param generated whether the database numbers it
     */
    record Column(String name, Kind kind, boolean generated) {}

    /** What a column holds. */
    enum Kind {
        TEXT,
        UUID,
        INSTANT,
        DATE,
        BOOLEAN,
        INTEGER,
        DOUBLE;

        static Kind of(String typeName) {
            String type = typeName.toLowerCase(Locale.ROOT);
            if (type.contains("char") || type.equals("text")) {
                return TEXT;
            }
            if (type.startsWith("timestamp")) {
                return INSTANT;
            }
            return switch (type) {
                case "uuid" -> UUID;
                case "date" -> DATE;
                case "boolean", "bool" -> BOOLEAN;
                case "integer", "int4", "bigint", "int8", "bigserial", "serial", "smallint", "int2" -> INTEGER;
                case "double precision", "float8" -> DOUBLE;
                default -> throw new IllegalStateException("no way to export a column of type " + typeName);
            };
        }
    }

    /**
     * All tables, each after those it refers to.
     *
     * @param connection connection to the database
     * @return the tables
     * @throws SQLException if the database cannot tell
     */
    static List<StoredTable> all(Connection connection) throws SQLException {
        DatabaseMetaData data = connection.getMetaData();
        Set<String> names = new LinkedHashSet<>();
        try (ResultSet tables = data.getTables(
                connection.getCatalog(), "public", "%", new String[] {"TABLE", "BASE TABLE", "PARTITIONED TABLE"})) {
            while (tables.next()) {
                String name = tables.getString("TABLE_NAME");
                if (!LEFT_OUT.contains(name)) {
                    names.add(name);
                }
            }
        }
        names.removeAll(partitions(connection));
        Set<String> ordered = new LinkedHashSet<>();
        for (String name : names.stream().sorted().toList()) {
            place(data, name, names, ordered, new LinkedHashSet<>());
        }
        List<StoredTable> found = new ArrayList<>();
        for (String name : ordered) {
            found.add(describe(data, name));
        }
        return found;
    }

    /** Their rows are those of the table they are part of. Only PostgreSQL has any. */
    private static Set<String> partitions(Connection connection) throws SQLException {
        Set<String> names = new LinkedHashSet<>();
        if ("PostgreSQL".equals(connection.getMetaData().getDatabaseProductName())) {
            try (Statement statement = connection.createStatement();
                    ResultSet rows = statement.executeQuery("select relname from pg_class where relispartition")) {
                while (rows.next()) {
                    names.add(rows.getString(1));
                }
            }
        }
        return names;
    }

    private static void place(
            DatabaseMetaData data, String name, Set<String> names, Set<String> ordered, Set<String> above)
            throws SQLException {
        if (ordered.contains(name) || !names.contains(name) || !above.add(name)) {
            return;
        }
        Set<String> needed = new LinkedHashSet<>();
        try (ResultSet keys = data.getImportedKeys(null, "public", name)) {
            while (keys.next()) {
                needed.add(keys.getString("PKTABLE_NAME"));
            }
        }
        for (String other : needed.stream().sorted().toList()) {
            place(data, other, names, ordered, above);
        }
        ordered.add(name);
    }

    private static StoredTable describe(DatabaseMetaData data, String name) throws SQLException {
        List<Column> columns = new ArrayList<>();
        try (ResultSet rows =
                data.getColumns(null, "public", name.replace("_", data.getSearchStringEscape() + "_"), "%")) {
            while (rows.next()) {
                columns.add(new Column(
                        rows.getString("COLUMN_NAME"),
                        Kind.of(rows.getString("TYPE_NAME")),
                        "YES".equals(rows.getString("IS_AUTOINCREMENT"))));
            }
        }
        TreeMap<Integer, String> key = new TreeMap<>();
        try (ResultSet rows = data.getPrimaryKeys(null, "public", name)) {
            while (rows.next()) {
                key.put((int) rows.getShort("KEY_SEQ"), rows.getString("COLUMN_NAME"));
            }
        }
        // By name, so that both engines and a schema that grew give the same text.
        columns.sort(java.util.Comparator.comparing(Column::name));
        return new StoredTable(name, List.copyOf(columns), List.copyOf(key.values()));
    }

    List<String> columnNames() {
        return columns.stream().map(Column::name).toList();
    }
}
