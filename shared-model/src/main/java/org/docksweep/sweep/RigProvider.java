package org.docksweep.sweep;

import java.util.Map;

/** Makes rigs; found by {@link java.util.ServiceLoader}. */
public interface RigProvider {

    /**
     * Name by which settings choose this provider, for example {@code virtual} or {@code audio}.
     *
     * @return the name
     */
    String name();

    /**
     * Opens the rig.
     *
     * @param settings provider-specific settings, documented by the provider
     * @return an open rig
     * @throws RigException if it cannot be opened; says what to do
     */
    Rig open(Map<String, String> settings) throws RigException;
}
