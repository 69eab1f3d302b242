package org.docksweep.kiosk.night;

import java.util.concurrent.atomic.AtomicLong;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.kiosk.rig.ForwardingRig;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/** The rig of the night, with the time its last playback ended and how long it played since the last look. */
final class TimedRig extends ForwardingRig {
    private final AtomicLong endedNs = new AtomicLong();
    private final AtomicLong playedNs = new AtomicLong();

    TimedRig(PracticeRig rig) {
        super(rig);
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
            return super.play(plan, kind, listener);
        } finally {
            endedNs.set(System.nanoTime());
            playedNs.addAndGet(System.nanoTime() - began);
        }
    }
}
