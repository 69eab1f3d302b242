package org.docksweep.service.store;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import javax.sql.DataSource;
import org.springframework.boot.sql.init.dependency.DependsOnDatabaseInitialization;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.PreparedStatementCallback;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.stereotype.Component;

/**
 * Rows that are only ever added, by plain statements on the connection of the running transaction: nobody looks at them
 * again before it ends, so that keeping an object per row, and comparing it at every flush, would be for nothing. A row
 * they refer to must be in the database already, not only in the session.
 */
@Component
@DependsOnDatabaseInitialization
public class AddedRows {
    private final JdbcTemplate jdbc;

    AddedRows(DataSource database) {
        this.jdbc = new JdbcTemplate(database);
    }

    /**
     * Runs a statement once per row, all in one batch.
     *
     * @param statement an insert, or a delete of such rows, with marks for the values
     * @param rows values in the order of the marks: texts, numbers, booleans, UUIDs, dates, instants, enum constants (by
     *     name), nulls
     * @throws org.springframework.dao.DataIntegrityViolationException if the database refuses one
     */
    public void batch(String statement, List<Object[]> rows) {
        if (rows.isEmpty()) {
            return;
        }
        jdbc.execute(statement, (PreparedStatementCallback<Void>) prepared -> {
            for (Object[] row : rows) {
                for (int i = 0; i < row.length; i++) {
                    set(prepared, i + 1, row[i]);
                }
                if (rows.size() > 1) {
                    prepared.addBatch();
                }
            }
            if (rows.size() > 1) {
                prepared.executeBatch();
            } else {
                prepared.executeUpdate();
            }
            return null;
        });
    }

    private static void set(PreparedStatement statement, int place, Object value) throws SQLException {
        if (value == null) {
            statement.setNull(place, Types.NULL);
        } else if (value instanceof Instant instant) {
            statement.setObject(place, StoredJson.cut(instant).atOffset(ZoneOffset.UTC));
        } else if (value instanceof Enum<?> constant) {
            statement.setString(place, constant.name());
        } else {
            statement.setObject(place, value);
        }
    }

    /**
     * Reads rows.
     *
     * @param select statement
     * @param row makes a value of a row
     * @param values values of its marks
     * @param <T> type of the values
     * @return the values
     */
    public <T> List<T> read(String select, RowMapper<T> row, Object... values) {
        return jdbc.query(select, row, values);
    }
}
