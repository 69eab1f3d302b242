package org.docksweep.kiosk.rig.audio;

import java.time.Clock;
import java.util.Map;
import org.docksweep.fleet.Reason;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.RigProvider;

/** Opens rigs on real audio interfaces under the name {@code audio}; settings as {@link AudioSettings} says. */
public final class AudioRigProvider implements RigProvider {
    @Override
    public String name() {
        return "audio";
    }

    /**
     * Opens the rig. The devices are looked for at every measurement, because an interface may be plugged in later.
     *
     * @param settings settings as {@link AudioSettings} says
     * @return the rig
     * @throws RigException if a setting is wrong; names it
     */
    @Override
    public Rig open(Map<String, String> settings) throws RigException {
        try {
            return new AudioRig(AudioSettings.of(settings), new AudioLines(), Clock.systemUTC());
        } catch (IllegalArgumentException e) {
            RigException refused =
                    new RigException(RigException.Cause.REFUSED, Reason.of("rig-settings-wrong", e.getMessage()));
            refused.initCause(e);
            throw refused;
        }
    }
}
