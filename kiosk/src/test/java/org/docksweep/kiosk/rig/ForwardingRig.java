package org.docksweep.kiosk.rig;

import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/** A practice rig that hands everything on to another; tests change what they are about. */
public abstract class ForwardingRig implements PracticeRig {
    private final PracticeRig rig;

    /**
     * Makes the rig.
     *
     * @param rig the rig that does the work
     */
    protected ForwardingRig(PracticeRig rig) {
        this.rig = rig;
    }

    @Override
    public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
        return rig.play(plan, kind, listener);
    }

    @Override
    public void plug(AssetTag label, String testPointCode) {
        rig.plug(label, testPointCode);
    }

    @Override
    public void plugDriver(AssetTag label, String positionCode) {
        rig.plugDriver(label, positionCode);
    }

    @Override
    public void repair(AssetTag label) {
        rig.repair(label);
    }

    @Override
    public void unplug() {
        rig.unplug();
    }

    @Override
    public String id() {
        return rig.id();
    }

    @Override
    public int sampleRateHz() {
        return rig.sampleRateHz();
    }

    @Override
    public void stop() {
        rig.stop();
    }

    @Override
    public void close() {
        rig.close();
    }
}
