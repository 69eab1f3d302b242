package org.docksweep.demo.rig;

import java.time.Clock;
import java.util.Map;
import org.docksweep.fleet.Reason;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.RigProvider;

/** Opens virtual rigs under the name {@code virtual}; settings as {@link RigSettings} says. */
public final class VirtualRigProvider implements RigProvider {
    @Override
    public String name() {
        return "virtual";
    }

    @Override
    public Rig open(Map<String, String> settings) throws RigException {
        try {
            return new VirtualRig(RigSettings.of(settings), Clock.systemUTC());
        } catch (IllegalArgumentException e) {
            RigException refused =
                    new RigException(RigException.Cause.REFUSED, Reason.of("rig-settings-wrong", e.getMessage()));
            refused.initCause(e);
            throw refused;
        }
    }
}
