package org.docksweep.kiosk.rig;

import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/** A practice rig whose current gain jumps with every plug-in, once it is told to wobble. */
record WobblyRig(PracticeRig rig, double share, int[] plugs, boolean[] wobbles) implements PracticeRig {

    WobblyRig(PracticeRig rig, double share) {
        this(rig, share, new int[1], new boolean[1]);
    }

    void wobble() {
        wobbles[0] = true;
    }

    @Override
    public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
        Capture capture = rig.play(plan, kind, listener);
        double gain = wobbles[0] ? 1 + share * (plugs[0] / 2 % 2 == 0 ? 1 : -1) : 1;
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
        plugs[0]++;
        rig.plug(label, testPointCode);
    }

    @Override
    public void plugDriver(AssetTag label, String positionCode) {
        plugs[0]++;
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
