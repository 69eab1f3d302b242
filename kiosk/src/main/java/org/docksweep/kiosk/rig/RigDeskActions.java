package org.docksweep.kiosk.rig;

import org.docksweep.fleet.AssetTag;

/** What a person can do at the rig page. All return at once; what comes of it is shown by the next state. */
public interface RigDeskActions {
    /** Begins a calibration. */
    void calibrate();

    /** Begins the daily check. */
    void check();

    /** Begins a repeatability study. */
    void study();

    /** Begins the daily check of the microphone. */
    void sound();

    /** Lets the next sweep of the known cabinet be accepted as what later ones are held against, or no longer. */
    void acceptAnew();

    /**
     * Takes a cabinet as the part of the study at hand, or as the known cabinet.
     *
     * @param tag its label
     */
    void scanned(AssetTag tag);

    /** Measures the step at hand: what it asks for has been plugged. */
    void measure();

    /** Leaves a step out, where that is allowed. */
    void skip();

    /** Goes one step back, to measure it again. */
    void back();

    /** Ends the walk or the set-up and shows the overview. */
    void leave();

    /**
     * Says which load is plugged.
     *
     * @param ohm value read on its plug, in ohm
     */
    void loadOhm(double ohm);

    /** Chooses the other pair of contacts for the check of the plug. */
    void otherContacts();

    /** Opens the set-up, with the devices as they are now. */
    void openSetUp();

    /**
     * Saves a set-up and puts it to work.
     *
     * @param setUp the set-up
     */
    void save(RigSetUp setUp);

    /**
     * Listens to the inputs, until stopped.
     *
     * @param setUp set-up to listen with, which need not be saved
     * @param tone whether a quiet tone plays meanwhile
     */
    void listen(RigSetUp setUp, boolean tone);

    /** Silence at once, whatever plays. */
    void stop();
}
