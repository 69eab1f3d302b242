package org.docksweep.kiosk.night;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.kiosk.rig.ForwardingRig;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/** The rig of the night, whose next sweep lasts until something has been done meanwhile. */
final class HeldRig extends ForwardingRig {
    /** A healthy cabinet gets a probe first, then its sweep. */
    private static final int SWEEP_IS_PLAY = 2;

    private final AtomicReference<Runnable> meanwhile = new AtomicReference<>();
    private final AtomicInteger plays = new AtomicInteger();

    HeldRig(PracticeRig rig) {
        super(rig);
    }

    void duringNextSweep(Runnable work) {
        plays.set(0);
        meanwhile.set(work);
    }

    @Override
    public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
        if (plays.incrementAndGet() == SWEEP_IS_PLAY) {
            Runnable work = meanwhile.getAndSet(null);
            if (work != null) {
                work.run();
            }
        }
        return super.play(plan, kind, listener);
    }
}
