package org.docksweep.kiosk.rig;

import org.docksweep.fleet.AssetTag;
import org.docksweep.sweep.PracticeRig;

/** The lead of a practice rig: goes where it is told. */
record PracticeLead(PracticeRig rig) implements Lead {
    @Override
    public boolean movesByItself() {
        return true;
    }

    @Override
    public void plug(AssetTag label, String testPointCode) {
        rig.plug(label, testPointCode);
    }

    @Override
    public void plugDriver(AssetTag label, String positionCode) {
        rig.plugDriver(label, positionCode);
    }
}
