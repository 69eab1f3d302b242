package org.docksweep.contract;

import java.util.List;

/**
 * A page of a list, continued by key.
 *
 * @param items entries
 * @param next value of the {@code after} parameter for the next page, or null on the last page
 * @param <T> entry type
 */
public record Page<T>(List<T> items, String next) {
    public Page {
        items = List.copyOf(items);
    }
}
