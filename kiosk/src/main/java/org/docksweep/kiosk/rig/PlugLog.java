package org.docksweep.kiosk.rig;

import java.io.IOException;

/** Keeps what curves of cabinets say of the dock's plug; the {@link RigBook} of the rig does. */
@FunctionalInterface
public interface PlugLog {
    /** Keeps nothing. */
    PlugLog NONE = plugIn -> {};

    /**
     * Keeps a plug-in for good.
     *
     * @param plugIn the plug-in
     * @throws IOException if it cannot be kept
     */
    void append(RigEntry.PlugIn plugIn) throws IOException;
}
