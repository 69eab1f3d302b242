package org.docksweep.sweep;

import org.docksweep.fleet.AssetTag;

/** A rig with virtual cabinets: somebody must say which of them is plugged in. */
public interface PracticeRig extends Rig {

    /**
     * Plugs the test lead of the rig into the cabinet that carries a label.
     *
     * @param label the label the cabinet carries (which may be the wrong one)
     * @param testPointCode test point the lead goes into
     * @throws IllegalArgumentException if no virtual cabinet carries the label or it has no such test point
     */
    void plug(AssetTag label, String testPointCode);

    /** Pulls the test lead out. */
    void unplug();
}
