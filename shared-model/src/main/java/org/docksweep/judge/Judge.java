package org.docksweep.judge;

/**
 * The gate: captures, calibration, model, references and limits in; curves, findings, verdict and suspects out. A pure
 * function: nothing else enters the result.
 */
public final class Judge {
    /** Version of the judgement. Changes whenever the same captures could be judged differently. */
    public static final String VERSION = "1";

    private Judge() {}

    /**
     * Judges a cabinet from the captures made so far.
     *
     * @param request everything the judgement depends on
     * @return the judgement
     */
    public static CabinetJudgement judge(JudgeRequest request) {
        throw new IllegalStateException(
                "arrives with the gate: " + request.model().code());
    }
}
