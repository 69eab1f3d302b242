package org.docksweep.contract;

import java.util.List;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Gs1Key;

/**
 * All keys on labels of one cabinet beside its asset tag.
 *
 * @param keys keys, may be empty
 */
public record AssetKeys(List<Gs1Key> keys) {
    /**
     * What one label says.
     *
     * @param key key on the label
     * @param tag cabinet that carries it
     */
    public record Label(Gs1Key key, AssetTag tag) {}
}
