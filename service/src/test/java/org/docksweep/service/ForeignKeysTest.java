package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/** Indexes that H2 makes for foreign keys: only where no other serves, and the keys hold all the same. */
class ForeignKeysTest {
    private static final String OWN = "CONSTRAINT_INDEX_";

    private final Map<String, Map<String, List<String>>> columnsByIndexByTable = new TreeMap<>();

    private void read(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(
                        "select table_name, index_name, column_name from information_schema.index_columns"
                                + " order by table_name, index_name, ordinal_position")) {
            while (rows.next()) {
                columnsByIndexByTable
                        .computeIfAbsent(rows.getString(1), t -> new HashMap<>())
                        .computeIfAbsent(rows.getString(2), i -> new ArrayList<>())
                        .add(rows.getString(3));
            }
        }
    }

    private static boolean begins(List<String> index, List<String> with) {
        return index.size() >= with.size() && index.subList(0, with.size()).equals(with);
    }

    private static void refused(Statement statement, String sql) {
        assertThatThrownBy(() -> statement.execute(sql))
                .isInstanceOfSatisfying(
                        SQLException.class, e -> assertThat(e.getSQLState()).startsWith("23"));
    }

    @Test
    void writesNoIndexTwiceAndTheKeysHold() throws Exception {
        Assumptions.assumeTrue(Engine.ofThisRun() == Engine.H2, "PostgreSQL makes no index for a foreign key");
        try (RunningService.Instance service = RunningService.Instance.inNewFolder()) {
            String model = House.newModel(service.api());
            AssetTag tag = House.newCabinet(service.api(), model, CabinetStatus.READY);
            try (Connection connection = service.database().getConnection();
                    Statement statement = connection.createStatement()) {
                read(connection);
                refused(statement, "delete from cabinet_model where code = '" + model + "'");
                refused(statement, "delete from cabinet where tag = '" + tag + "'");
                refused(statement, "update history_event set tag = 'NO-SUCH' where tag = '" + tag + "'");
            }
        }
        assertThat(columnsByIndexByTable.get("check_in").values()).contains(List.of("tag", "finished_at"));
        List<String> repeated = new ArrayList<>();
        columnsByIndexByTable.forEach((table, indexes) -> indexes.forEach((name, columns) -> {
            boolean again = indexes.entrySet().stream()
                    .anyMatch(other -> !other.getKey().equals(name) && begins(other.getValue(), columns));
            if (name.startsWith(OWN) && again) {
                repeated.add(table + columns);
            }
        }));
        assertThat(repeated).isEmpty();
    }
}
