package org.docksweep.service.store;

import java.sql.DatabaseMetaData;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.springframework.boot.sql.init.dependency.DependsOnDatabaseInitialization;
import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.PreparedStatementCallback;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.ResourceHolderSupport;
import org.springframework.transaction.support.ResourceHolderSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Rows that are only ever added, by plain statements on the connection of the running transaction: nobody looks at them
 * again before it ends, so that keeping an object per row, and comparing it at every flush, would be for nothing. A row
 * they refer to must be in the database already, not only in the session.
 *
 * <p>PostgreSQL is another process: each way there and back costs both sides more than a small statement itself. What can
 * go together ({@link #later}, {@link #ask}) goes there as one text of several statements. H2 has no way to save.
 */
@Component
@DependsOnDatabaseInitialization
public class AddedRows {
    /** PostgreSQL takes 65,535 in a text. */
    private static final int VALUES_AT_ONCE = 30_000;

    private static final int ROWS_PER_STATEMENT = 500;

    private final JdbcTemplate jdbc;
    private volatile Boolean severalAtOnce;

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
                set(prepared, 1, row);
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

    /** Returns the place behind the last value. */
    private static int set(PreparedStatement statement, int first, Object[] values) throws SQLException {
        int place = first;
        for (Object value : values) {
            set(statement, place++, value);
        }
        return place;
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
     * Adds rows right before the running transaction is committed, together with all others that wait for it, in the order
     * they came. Within the transaction nobody finds them.
     *
     * @param insert an insert that ends with {@code values} and one row of marks
     * @param rows values as in {@link #batch}; what the database refuses is told by the commit
     * @throws IllegalStateException if no transaction runs
     */
    public void later(String insert, List<Object[]> rows) {
        if (rows.isEmpty()) {
            return;
        }
        Waiting waiting = (Waiting) TransactionSynchronizationManager.getResource(this);
        if (waiting == null) {
            waiting = new Waiting();
            TransactionSynchronizationManager.registerSynchronization(new BeforeCommit(waiting));
            TransactionSynchronizationManager.bindResource(this, waiting);
        }
        for (int from = 0; from < rows.size(); from += ROWS_PER_STATEMENT) {
            waiting.inserts.add(
                    new Insert(insert, rows.subList(from, Math.min(rows.size(), from + ROWS_PER_STATEMENT))));
        }
    }

    private record Insert(String text, List<Object[]> rows) {
        String withAllRows() {
            String oneRow = text.substring(text.lastIndexOf("values ") + "values ".length());
            return text + (", " + oneRow).repeat(rows.size() - 1);
        }

        int values() {
            return rows.size() * rows.get(0).length;
        }
    }

    private static final class Waiting extends ResourceHolderSupport {
        private final List<Insert> inserts = new ArrayList<>();
    }

    private final class BeforeCommit extends ResourceHolderSynchronization<Waiting, AddedRows> {
        private final Waiting waiting;

        BeforeCommit(Waiting waiting) {
            super(waiting, AddedRows.this);
            this.waiting = waiting;
        }

        @Override
        public void beforeCommit(boolean readOnly) {
            send(waiting.inserts);
            waiting.inserts.clear();
        }
    }

    private void send(List<Insert> inserts) {
        if (!severalAtOnce()) {
            inserts.forEach(insert -> batch(insert.text(), insert.rows()));
            return;
        }
        int from = 0;
        int values = 0;
        for (int i = 0; i < inserts.size(); i++) {
            values += inserts.get(i).values();
            if (values > VALUES_AT_ONCE && i > from) {
                sendTogether(inserts.subList(from, i));
                from = i;
                values = inserts.get(i).values();
            }
        }
        sendTogether(inserts.subList(from, inserts.size()));
    }

    private void sendTogether(List<Insert> inserts) {
        String all = inserts.stream().map(Insert::withAllRows).collect(Collectors.joining("; "));
        jdbc.execute(all, (PreparedStatementCallback<Void>) prepared -> {
            int place = 1;
            for (Insert insert : inserts) {
                for (Object[] row : insert.rows()) {
                    place = set(prepared, place, row);
                }
            }
            prepared.execute();
            return null;
        });
    }

    /**
     * Asks questions, all in one go where that saves anything.
     *
     * @param questions questions; each has its answers afterwards
     */
    public void ask(Question<?>... questions) {
        List<Question<?>> open =
                Arrays.stream(questions).filter(Question::isOpen).toList();
        if (severalAtOnce()) {
            askTogether(open);
        } else {
            open.forEach(question -> askTogether(List.of(question)));
        }
    }

    private void askTogether(List<Question<?>> open) {
        String all = open.stream().map(Question::select).collect(Collectors.joining("; "));
        jdbc.execute(all, (PreparedStatementCallback<Void>) prepared -> {
            int place = 1;
            for (Question<?> question : open) {
                place = set(prepared, place, question.values());
            }
            prepared.execute();
            for (Question<?> question : open) {
                try (ResultSet found = prepared.getResultSet()) {
                    question.take(found);
                }
                prepared.getMoreResults();
            }
            return null;
        });
    }

    /** Whether one text may hold several statements with values. */
    private boolean severalAtOnce() {
        if (severalAtOnce == null) {
            severalAtOnce = jdbc.execute((ConnectionCallback<Boolean>) connection -> {
                DatabaseMetaData database = connection.getMetaData();
                return "PostgreSQL".equals(database.getDatabaseProductName());
            });
        }
        return severalAtOnce;
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
