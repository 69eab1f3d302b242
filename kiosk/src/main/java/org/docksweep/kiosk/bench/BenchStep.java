package org.docksweep.kiosk.bench;

/** What a person can do next at the bench. */
public enum BenchStep {
    /** Open the marked job. */
    OPEN,
    /** Take the job at hand. */
    TAKE,
    /** Begin, or go on with, the repair. */
    BEGIN_REPAIR,
    /** Tick the next step of the card. */
    TICK,
    /** Take the last tick back. */
    UNTICK,
    /** Show the next card. */
    OTHER_CARD,
    /** Print the card. */
    PRINT_CARD,
    /** Write down what was found. */
    FIND,
    /** Keep the finding. */
    STORE_FINDING,
    /** Sweep the bare driver on the bench rig, not the cabinet. */
    DRIVER_ON_BENCH,
    /** Sweep the whole cabinet again. */
    WHOLE_CABINET,
    /** Another place than the one shown: driver position, or crossover part. */
    OTHER_PLACE,
    /** The part taken out is kept for repair, or scrapped: the other of both. */
    OTHER_FATE,
    /** Put the part in. */
    PUT_IN,
    /** The part is missing: wait for it. */
    WAIT_FOR_PART,
    /** Begin the bench proof. */
    BEGIN_PROOF,
    /** Sweep what is chosen, or go on with the next test point of the cabinet. */
    SWEEP,
    /** Sweep slowly for the ear, at most at half the voltage the test point may have. */
    SLOW_SWEEP,
    /** The octave around where the slow sweep was stopped, once more. */
    SLOW_AROUND,
    /** Listen to what was heard besides the sweep; again: louder. */
    LISTEN,
    /** Keep that sound as a file. */
    KEEP_SOUND,
    /** It sounded clean. */
    SOUND_CLEAN,
    /** It did not. */
    SOUND_NOT_CLEAN,
    /** Polarity was checked and is right. */
    POLARITY_RIGHT,
    /** Polarity was checked and is reversed. */
    POLARITY_REVERSED,
    /** Polarity was not checked. */
    POLARITY_NOT_CHECKED,
    /** Close the job: proved. */
    SIGN_OFF,
    /** Show the other ways to end work on the job. */
    OTHERWISE,
    /** Put the job back into the queue. */
    HAND_BACK,
    /** Close the job: the cabinet leaves the fleet. */
    SCRAP,
    /** Close the job: the cabinet is held as it is. */
    RETURN_UNREPAIRED,
    /** Back to the job, or from the job to the queue. */
    BACK
}
