package org.docksweep.contract;

import org.docksweep.sweep.PracticeRig;

/** A practice rig that any virtual cabinet can be plugged into. Not for use by several threads at once. */
public interface ProvingRig extends PracticeRig {
    /**
     * Plugs the lead into a cabinet. A test point its model does not have stands for the socket a dock hand would take:
     * the first.
     *
     * @param occasion name of this plug-in; equal occasions give equal contacts, latencies and noise
     * @param unit the cabinet
     * @param testPointCode test point of the model on the label
     */
    void plug(String occasion, ProvingUnit unit, String testPointCode);
}
