package org.docksweep.kiosk.rig;

import org.docksweep.fleet.AssetTag;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.Rig;

/** The test lead, seen from the dock: whether a person must move it, or the practice rig moves it by itself. */
public interface Lead {

    /** A lead in a person's hand. */
    Lead BY_HAND = new Lead() {
        @Override
        public boolean movesByItself() {
            return false;
        }

        @Override
        public void plug(AssetTag label, String testPointCode) {
            // The person has done it.
        }

        @Override
        public void plugDriver(AssetTag label, String positionCode) {
            // The person has done it.
        }
    };

    /**
     * The lead of a rig.
     *
     * @param rig the rig
     * @return a lead that moves by itself on a practice rig, otherwise {@link #BY_HAND}
     */
    static Lead of(Rig rig) {
        return rig instanceof PracticeRig practice ? new PracticeLead(practice) : BY_HAND;
    }

    /**
     * Whether the lead goes into the next test point without a person.
     *
     * @return true on a practice rig
     */
    boolean movesByItself();

    /**
     * Puts the lead into a test point, or does nothing when a person has done it.
     *
     * @param label label of the cabinet
     * @param testPointCode test point
     */
    void plug(AssetTag label, String testPointCode);

    /**
     * Puts the lead on a driver that lies on the bench, or does nothing when a person has done it.
     *
     * @param label label of the cabinet the driver was taken out of
     * @param positionCode its position there
     */
    void plugDriver(AssetTag label, String positionCode);
}
