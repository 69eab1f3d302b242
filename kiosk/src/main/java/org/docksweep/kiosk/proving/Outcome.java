package org.docksweep.kiosk.proving;

import org.docksweep.fleet.Verdict;
import org.docksweep.judge.Prompt;

/**
 * What became of one return.
 *
 * @param dealt the return
 * @param verdict verdict in the end
 * @param prompt prompt in the end
 * @param firstPrompt what the dock hand was asked first, at the probe or by the verdict
 * @param watch whether a passing cabinet got a watch mark
 * @param sweeps how often a point was swept in all
 * @param spoiled whether a sweep was spoiled on the way
 * @param inQuietToo whether a failed healthy cabinet fails in a quiet hall too; false for all others
 * @param position whether the first suspect sends a person to the right driver
 * @param naming how well the suspects name the fault
 * @param firstSuspect first suspect in words, or empty
 * @param plain what the plain gates say
 * @param recordingAgrees whether the encoded recording gave the same samples and the same judgement; null when none was
 *     made
 * @param seconds processor time it took, in seconds
 */
record Outcome(
        ReturnCase dealt,
        Verdict verdict,
        Prompt prompt,
        Prompt firstPrompt,
        boolean watch,
        int sweeps,
        boolean spoiled,
        boolean inQuietToo,
        boolean position,
        Naming naming,
        String firstSuspect,
        Plain plain,
        Boolean recordingAgrees,
        double seconds) {

    /**
     * How well the suspects name the fault.
     *
     * @param firstExact the first suspect is the fault
     * @param firstTwoExact one of the first two is
     * @param firstInGroup the first suspect is in the fault's ambiguity group
     * @param firstTwoInGroup one of the first two is
     */
    record Naming(boolean firstExact, boolean firstTwoExact, boolean firstInGroup, boolean firstTwoInGroup) {
        static final Naming NONE = new Naming(false, false, false, false);
    }

    /**
     * What the plain gates say of a cabinet with terminals.
     *
     * @param applies whether they can be used at all
     * @param meter whether the meter fails it
     * @param mask whether the mask fails it
     */
    record Plain(boolean applies, boolean meter, boolean mask) {}

    boolean failed() {
        return verdict == Verdict.FAIL;
    }

    boolean again() {
        return verdict == Verdict.SWEEP_AGAIN;
    }
}
