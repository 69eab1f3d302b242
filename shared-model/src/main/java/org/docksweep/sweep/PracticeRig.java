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
     * Puts one driver, taken out of its cabinet, on the bench and plugs the lead into its terminals: a cone in free air, a
     * compression driver on the bench's test horn. No microphone listens there.
     *
     * @param label label of the cabinet it was taken out of
     * @param positionCode its position in that cabinet
     * @throws IllegalArgumentException if no virtual cabinet carries the label or it has no such position
     */
    void plugDriver(AssetTag label, String positionCode);

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
