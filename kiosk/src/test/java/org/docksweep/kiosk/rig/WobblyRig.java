package org.docksweep.kiosk.rig;

import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/** A practice rig whose current gain jumps with every plug-in, once it is told to wobble. */
final class WobblyRig extends ForwardingRig {
    private final double share;
    private int plugs;
    private boolean wobbles;

    WobblyRig(PracticeRig rig, double share) {
        super(rig);
        this.share = share;
    }

    void wobble() {
        wobbles = true;
    }

    @Override
    public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
        Capture capture = super.play(plan, kind, listener);
        double gain = wobbles ? 1 + share * (plugs / 2 % 2 == 0 ? 1 : -1) : 1;
        float[][] samples = new float[capture.header().channels().size()][];
        for (int c = 0; c < samples.length; c++) {
            ChannelRole role = capture.header().channels().get(c).role();
            samples[c] = capture.fullScale(role).clone();
            for (int i = 0; role == ChannelRole.CURRENT && i < samples[c].length; i++) {
                samples[c][i] *= (float) gain;
            }
        }
        return new Capture(capture.header(), samples);
    }

    @Override
    public void plug(AssetTag label, String testPointCode) {
        plugs++;
        super.plug(label, testPointCode);
    }

    @Override
    public void plugDriver(AssetTag label, String positionCode) {
        plugs++;
        super.plugDriver(label, positionCode);
    }
}
