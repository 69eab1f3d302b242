package org.docksweep.fleet;

/** How a cabinet is driven, and therefore what can be measured from outside. */
public enum Feed {
    /** Crossover inside, one pair of terminals. */
    PASSIVE,
    /** Each way on its own pair of terminals. */
    BIAMPED,
    /** Amplifier inside: impedance is out of reach from outside, only line input to microphone can be tested. */
    POWERED
}
