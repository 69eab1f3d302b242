package org.docksweep.demo.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * What was made for the last few keys. Tables of a transform or spectra of a hall take megabytes each, and a rig that kept those of every
 * length would grow through the night.
 *
 * @param <K> what it was made for
 * @param <V> what was made; shared, not to be changed
 */
final class LastUsed<K, V> {
    private final Map<K, V> entries;

    LastUsed(int kept) {
        entries = new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                return size() > kept;
            }
        };
    }

    synchronized V get(K key, Function<K, V> maker) {
        V known = entries.get(key);
        if (known == null) {
            known = maker.apply(key);
            entries.put(key, known);
        }
        return known;
    }
}
