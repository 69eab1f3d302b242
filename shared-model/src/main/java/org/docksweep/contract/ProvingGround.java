package org.docksweep.contract;

import java.util.List;
import org.docksweep.fleet.ModelBook;

/**
 * Virtual cabinets whose truth is known, for counting what the gate finds. Implementations are found by
 * {@link java.util.ServiceLoader} and know nothing of the gate.
 */
public interface ProvingGround {

    /** Which cabinet models take part. */
    enum Models {
        /** Those the gate was tuned on. */
        TUNING,
        /** Those nobody who tunes the gate may look at. */
        HELD_BACK,
        /** Both, in one fleet. */
        ALL
    }

    /**
     * The models of a fleet.
     *
     * @param models which
     * @return a book
     */
    ModelBook book(Models models);

    /**
     * Every fault a model can have that shows from outside, one per kind and target.
     *
     * @param modelCode a model of {@link Models#ALL}
     * @return faults, without those that need another model (wrong label, untaught model)
     * @throws IllegalArgumentException if there is no such model
     */
    List<ProvingFault> faults(String modelCode);

    /**
     * Opens a rig. Rigs of equal seed are the same rig.
     *
     * @param seed its own errors
     * @param converterNoiseDb noise of its converter, rms, in dB re full scale, -140 to -40
     * @return the rig
     */
    ProvingRig rig(long seed, double converterNoiseDb);

    /**
     * The true impedance at the contacts, without lead and rig.
     *
     * @param unit the cabinet
     * @param testPointCode a test point with terminals
     * @param frequencyHz frequencies, greater than 0
     * @return resistance and reactance in ohm, one array each
     */
    double[][] impedanceOhm(ProvingUnit unit, String testPointCode, double[] frequencyHz);
}
