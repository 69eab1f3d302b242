package org.docksweep.service.store;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Keeps the newest parsed value of each key beside the text it came from: what is read with every request and changes
 * once a month is parsed once. A changed text, by whichever instance, is parsed anew.
 *
 * @param <T> immutable value
 */
public final class ParsedJson<T> {
    private final Class<T> type;
    private final Map<String, Parsed<T>> newest = new ConcurrentHashMap<>();

    private record Parsed<T>(String json, T value) {}

    /**
     * Keeps values of a type.
     *
     * @param type immutable type
     */
    public ParsedJson(Class<T> type) {
        this.type = type;
    }

    /**
     * The value of a text.
     *
     * @param key what the text belongs to
     * @param json text made by {@link StoredJson#write}
     * @return its value
     */
    public T of(String key, String json) {
        Parsed<T> known = newest.get(key);
        if (known == null || !known.json().equals(json)) {
            known = new Parsed<>(json, StoredJson.read(json, type));
            newest.put(key, known);
        }
        return known.value();
    }
}
