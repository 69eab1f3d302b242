package org.docksweep.kiosk.night;

import java.util.concurrent.atomic.AtomicLong;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/** The rig of the night, with the time its last playback ended and how long it played since the last look. */
final class TimedRig implements PracticeRig {
    private final PracticeRig rig;
    private final AtomicLong endedNs = new AtomicLong();
    private final AtomicLong playedNs = new AtomicLong();

    TimedRig(PracticeRig rig) {
        this.rig = rig;
    }

    long endedNs() {
        return endedNs.get();
    }

    /** Time in playbacks since the last call. */
    long takePlayedNs() {
        return playedNs.getAndSet(0);
    }

    @Override
    public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
        long began = System.nanoTime();
        try {
            return rig.play(plan, kind, listener);
        } finally {
            endedNs.set(System.nanoTime());
            playedNs.addAndGet(System.nanoTime() - began);
        }
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
