package org.docksweep.kiosk.rig;

import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import org.docksweep.fleet.Reason;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.RigProvider;

/** Opens rigs by name. */
public final class Rigs {
    private Rigs() {}

    /**
     * Opens a rig.
     *
     * @param name name of its provider, for example {@code virtual}
     * @param settings settings of that provider
     * @return the open rig
     * @throws RigException if there is no such provider or it refuses
     */
    public static Rig open(String name, Map<String, String> settings) throws RigException {
        List<RigProvider> providers = ServiceLoader.load(RigProvider.class).stream()
                .map(ServiceLoader.Provider::get)
                .toList();
        for (RigProvider provider : providers) {
            if (provider.name().equals(name)) {
                return provider.open(settings);
            }
        }
        String known =
                String.join(", ", providers.stream().map(RigProvider::name).toList());
        throw new RigException(RigException.Cause.REFUSED, Reason.of("dock-rig-unknown", name, known));
    }
}
