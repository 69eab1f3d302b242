package org.docksweep.kiosk.fleet;

import java.util.List;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.SharedScatter;

/** Remembers what was last learned from a house's references together. */
final class SharedReferences {
    private List<PointReference> from;
    private List<PointReference> shared;

    /** The same references, learned from each other; at once where they are those of the last time. */
    synchronized List<PointReference> of(List<PointReference> references) {
        if (references != from) {
            shared = SharedScatter.over(references);
            from = references;
        }
        return shared;
    }
}
