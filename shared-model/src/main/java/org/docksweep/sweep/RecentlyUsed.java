package org.docksweep.sweep;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * What was made for the last few sweeps: a dock uses a handful of plans.
 *
 * @param <K> what it was made for
 * @param <V> what was made; immutable
 */
final class RecentlyUsed<K, V> {
    private final Map<K, V> entries;

    /**
     * Makes an empty one.
     *
     * @param kept entries kept
     */
    RecentlyUsed(int kept) {
        this(kept, value -> {});
    }

    /**
     * Makes an empty one.
     *
     * @param kept entries kept
     * @param dropped is given what is not kept any more
     */
    RecentlyUsed(int kept, Consumer<V> dropped) {
        entries = new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                if (size() <= kept) {
                    return false;
                }
                dropped.accept(eldest.getValue());
                return true;
            }
        };
    }

    /**
     * What was made for a key.
     *
     * @param key the key
     * @param maker makes it when it is not known; may run twice when two threads ask at once
     * @return what was made, perhaps before
     */
    V get(K key, Function<K, V> maker) {
        synchronized (entries) {
            V known = entries.get(key);
            if (known != null) {
                return known;
            }
        }
        V made = maker.apply(key);
        synchronized (entries) {
            entries.put(key, made);
        }
        return made;
    }
}
