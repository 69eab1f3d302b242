package org.docksweep.service.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.flywaydb.core.api.MigrationVersion;
import org.flywaydb.core.api.migration.Context;
import org.flywaydb.core.api.migration.JavaMigration;
import org.springframework.stereotype.Component;

/**
 * Schema version 94: takes away indexes that H2 made by itself for foreign keys, where another index begins with the same
 * columns. H2 makes one for every foreign key that finds none, and these were declared before the indexes that serve
 * them: nine of the thirty-three on the tables a check-in writes to. A key that is declared anew takes the index that is
 * there. PostgreSQL makes no such indexes, so nothing is done there.
 *
 * <p>Not plain SQL, since H2 chose the names of the keys.
 */
@Component
public final class ForeignKeysOnIndexes implements JavaMigration {
    private static final String REPEATED = """
            select k.table_name, k.constraint_name, r.delete_rule, p.table_name,
                   (select string_agg('"' || c.column_name || '"', ', ' order by c.ordinal_position)
                      from information_schema.key_column_usage c
                     where c.constraint_name = k.constraint_name),
                   (select string_agg('"' || c.column_name || '"', ', ' order by c.ordinal_position)
                      from information_schema.key_column_usage c
                     where c.constraint_name = p.constraint_name)
              from information_schema.table_constraints k
              join information_schema.referential_constraints r on r.constraint_name = k.constraint_name
              join information_schema.table_constraints p on p.constraint_name = r.unique_constraint_name
             where k.constraint_type = 'FOREIGN KEY' and k.table_schema = current_schema
               and k.index_name like 'CONSTRAINT_INDEX_%'
               and exists (
                   select 1 from information_schema.indexes i
                    where i.table_name = k.table_name and i.table_schema = k.table_schema and i.index_name <> k.index_name
                      and not exists (
                          select 1 from information_schema.index_columns own
                           where own.index_name = k.index_name and own.table_name = k.table_name
                             and not exists (
                                 select 1 from information_schema.index_columns other
                                  where other.index_name = i.index_name and other.table_name = i.table_name
                                    and other.ordinal_position = own.ordinal_position
                                    and other.column_name = own.column_name)))
             order by k.table_name, k.constraint_name
            """;

    private record Key(String table, String name, String deleteRule, String parent, String columns, String parents) {
        void declareAnew(Statement statement) throws SQLException {
            statement.execute("alter table \"" + table + "\" drop constraint \"" + name + "\"");
            // It held until a moment ago, so that rows need no second look.
            statement.execute("alter table \"" + table + "\" add constraint \"" + name + "\" foreign key (" + columns
                    + ") references \"" + parent + "\" (" + parents + ") on delete " + deleteRule + " nocheck");
        }
    }

    @Override
    public MigrationVersion getVersion() {
        return MigrationVersion.fromVersion("94");
    }

    @Override
    public String getDescription() {
        return "foreign keys on indexes";
    }

    @Override
    public Integer getChecksum() {
        return null;
    }

    @Override
    public boolean canExecuteInTransaction() {
        return true;
    }

    @Override
    public void migrate(Context context) throws SQLException {
        Connection connection = context.getConnection();
        if (!"H2".equals(connection.getMetaData().getDatabaseProductName())) {
            return;
        }
        List<Key> keys = repeated(connection);
        try (Statement statement = connection.createStatement()) {
            for (Key key : keys) {
                key.declareAnew(statement);
            }
        }
    }

    private static List<Key> repeated(Connection connection) throws SQLException {
        List<Key> keys = new ArrayList<>();
        try (PreparedStatement query = connection.prepareStatement(REPEATED);
                ResultSet rows = query.executeQuery()) {
            while (rows.next()) {
                keys.add(new Key(
                        rows.getString(1),
                        rows.getString(2),
                        rows.getString(3),
                        rows.getString(4),
                        rows.getString(5),
                        rows.getString(6)));
            }
        }
        return keys;
    }
}
