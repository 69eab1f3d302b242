package org.docksweep.fleet;

import java.util.List;

/**
 * A procedure for one purpose, with the numbers of one driver model where they are known.
 *
 * @param purpose what it is for
 * @param driverModelCode driver model whose numbers it carries, or null for the generic card, which has none
 * @param effortMinutes usual effort in minutes
 * @param polarityProofNeeded whether the polarity must be proved afterwards
 * @param steps steps in order
 */
public record ProcedureCard(
        ProcedurePurpose purpose,
        String driverModelCode,
        int effortMinutes,
        boolean polarityProofNeeded,
        List<Step> steps) {

    /**
     * A step to tick.
     *
     * @param code code of the step, unique within the card and the same for every driver model
     * @param text what to do
     * @param numbers numbers of this driver model that the step needs; empty on the generic card
     * @param note remark of the house on this step for this driver model, or null
     * @param cautions cautions that apply at this step
     */
    public record Step(String code, Reason text, List<Reason> numbers, String note, List<Reason> cautions) {
        public Step {
            Require.text("step code", code);
            numbers = Require.copy("step numbers", numbers);
            cautions = Require.copy("step cautions", cautions);
        }
    }

    public ProcedureCard {
        if (purpose == null) {
            throw new IllegalArgumentException("procedure card: purpose is missing");
        }
        Require.inRange("procedure card effortMinutes", effortMinutes, 1, 6000);
        steps = Require.notEmpty("procedure card steps", steps);
    }
}
