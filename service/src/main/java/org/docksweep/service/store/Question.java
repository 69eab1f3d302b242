package org.docksweep.service.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.springframework.jdbc.core.RowMapper;

/**
 * A question to the database that can travel with others: {@link AddedRows#ask} asks several features' questions in one
 * go, and each feature reads its own answer.
 *
 * @param <T> type of an answer
 */
public final class Question<T> {
    private final String select;
    private final RowMapper<T> row;
    private final Object[] values;
    private List<T> answers;

    /**
     * A question that is still to be asked.
     *
     * @param select statement with marks for the values
     * @param row makes an answer of a row
     * @param values values of its marks: texts, numbers, UUIDs
     */
    public Question(String select, RowMapper<T> row, Object... values) {
        this.select = select;
        this.row = row;
        this.values = values.clone();
    }

    /**
     * A question that needs no asking.
     *
     * @param <T> type of an answer
     * @return one without answers
     */
    public static <T> Question<T> withoutAnswers() {
        Question<T> question = new Question<>("", (found, number) -> null);
        question.answers = List.of();
        return question;
    }

    /**
     * What the database said.
     *
     * @return a value per row
     * @throws IllegalStateException if it was not asked yet
     */
    public List<T> answers() {
        if (answers == null) {
            throw new IllegalStateException("not asked yet: " + select);
        }
        return answers;
    }

    boolean isOpen() {
        return answers == null;
    }

    String select() {
        return select;
    }

    Object[] values() {
        return values.clone();
    }

    void take(ResultSet found) throws SQLException {
        List<T> all = new ArrayList<>();
        while (found.next()) {
            all.add(row.mapRow(found, all.size()));
        }
        answers = List.copyOf(all);
    }
}
