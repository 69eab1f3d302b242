package org.docksweep.kiosk.rig;

import java.util.concurrent.atomic.AtomicReference;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/** A rig that another one can take the place of while the kiosk runs, because its set-up was changed. */
public final class ChangeableRig implements Rig {
    private final AtomicReference<Rig> rig;

    /**
     * Begins with a rig.
     *
     * @param first the rig
     */
    public ChangeableRig(Rig first) {
        rig = new AtomicReference<>(first);
    }

    /**
     * Puts another rig in its place and closes the one before; what that one plays is stopped.
     *
     * @param next the other one
     */
    public void change(Rig next) {
        rig.getAndSet(next).close();
    }

    @Override
    public String id() {
        return rig.get().id();
    }

    @Override
    public int sampleRateHz() {
        return rig.get().sampleRateHz();
    }

    @Override
    public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
        return rig.get().play(plan, kind, listener);
    }

    @Override
    public void stop() {
        rig.get().stop();
    }

    @Override
    public void close() {
        rig.get().close();
    }
}
