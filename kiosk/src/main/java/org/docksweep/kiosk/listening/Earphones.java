package org.docksweep.kiosk.listening;

import java.util.Optional;
import org.docksweep.fleet.Reason;

/** What a person listens with. */
public interface Earphones {
    /**
     * Begins a sound in place of one that still plays. Returns at once.
     *
     * @param samples the sound, -1 to 1
     * @param sampleRateHz samples per second
     * @return why nothing plays; empty when it does
     */
    Optional<Reason> play(double[] samples, int sampleRateHz);

    /** Ends what plays; may be called from any thread. */
    void silence();
}
