package org.docksweep.service.web;

import java.util.List;
import java.util.function.Function;
import org.docksweep.contract.Page;

/** Paging by key: a page ends with the key after which the next one begins, so that nothing shifts under a reader. */
public final class Paging {
    /** Entries per page when nothing is asked for. */
    public static final String DEFAULT_LIMIT = "100";
    /** Most entries per page. */
    public static final int MOST = 1000;

    private Paging() {}

    /**
     * Checks a page size.
     *
     * @param limit entries asked for
     * @return the same
     * @throws Refusal unless it is from 1 to {@link #MOST}
     */
    public static int checked(int limit) {
        if (limit < 1 || limit > MOST) {
            throw Refusal.badField(
                    "limit",
                    "limit must be from 1 to " + MOST + " (both allowed), but is " + limit,
                    "Ask for a smaller page and follow \"next\".");
        }
        return limit;
    }

    /**
     * Makes a page of rows read with one more than the limit.
     *
     * @param rows at most limit + 1 rows
     * @param limit entries per page
     * @param body turns a row into an entry
     * @param key key of a row
     * @param <R> row type
     * @param <T> entry type
     * @return the page
     */
    public static <R, T> Page<T> page(List<R> rows, int limit, Function<R, T> body, Function<R, String> key) {
        List<R> shown = rows.size() > limit ? rows.subList(0, limit) : rows;
        String next = rows.size() > limit ? key.apply(shown.get(shown.size() - 1)) : null;
        return new Page<>(shown.stream().map(body).toList(), next);
    }
}
