package org.docksweep.kiosk.proving;

import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingUnit;

/**
 * One return of a proving run.
 *
 * @param index its place in the run, from 0
 * @param labelModel model on its label
 * @param unit the cabinet as it comes back
 * @param before the same cabinet when its baseline was taken
 * @param fault what is wrong, or null for a healthy cabinet; a wrong label is a healthy cabinet too
 * @param knowing what the gate knows of it
 * @param teaching which teaching of its model it is judged by, from 0
 * @param recorded whether it is judged from an encoded recording
 */
record ReturnCase(
        int index,
        String labelModel,
        ProvingUnit unit,
        ProvingUnit before,
        ProvingFault fault,
        Knowing knowing,
        int teaching,
        boolean recorded) {

    boolean healthy() {
        return fault == null;
    }

    /** Whether the house has no reference of its model. */
    boolean untaught() {
        return fault != null && fault.kind() == ProvingFaultKind.UNTAUGHT_MODEL;
    }
}
