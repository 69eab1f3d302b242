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

    /**
     * Mends the virtual cabinet that carries a label: from the next plugging on it has no fault, as after good bench work.
     *
     * @param label the label
     * @throws IllegalArgumentException if no virtual cabinet carries the label
     */
    void repair(AssetTag label);

    /** Pulls the test lead out. */
    void unplug();
}
