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
        ALL,
        /** Nobody's choice: drawn from the seed of the run, other models with every seed. */
        DRAWN
    }

    /**
     * The models of a fleet.
     *
     * @param models which
     * @param seed seed of the run; means something to {@link Models#DRAWN} only
     * @return a book
     */
    ModelBook book(Models models, long seed);

    /**
     * Every fault a model can have that shows from outside, one per kind and target.
     *
     * @param modelCode a model of a book given before
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
