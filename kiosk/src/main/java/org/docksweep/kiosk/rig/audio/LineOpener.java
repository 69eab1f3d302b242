package org.docksweep.kiosk.rig.audio;

import org.docksweep.sweep.RigException;

/** Opens the two lines of a measurement. */
interface LineOpener {
    /**
     * Opens the output.
     *
     * @param settings device and format
     * @return the open line, not started
     * @throws RigException if there is no such device or it does not offer the format
     */
    PlayLine openPlay(AudioSettings settings) throws RigException;

    /**
     * Opens the input.
     *
     * @param settings device and format
     * @return the open line, not started
     * @throws RigException if there is no such device or it does not offer the format
     */
    CaptureLine openCapture(AudioSettings settings) throws RigException;
}
