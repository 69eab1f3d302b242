package org.docksweep.kiosk.rig;

import org.docksweep.sweep.PracticeRig;

/** Whoever puts standards into the far plug: a person, or the practice rig by itself. */
@FunctionalInterface
public interface StandardsHand {
    /** A person, who has done it when a step is measured. */
    StandardsHand PERSON = step -> {};

    /**
     * Plugs what a step asks for.
     *
     * @param step the step
     */
    void plug(WalkStep step);

    /**
     * The hand of a practice rig.
     *
     * @param rig the rig
     * @param standards its standards
     * @return a hand that plugs them
     */
    static StandardsHand of(PracticeRig rig, StandardSet standards) {
        String point = StandardSet.testPoint(standards.loadOhm()).code();
        return step -> rig.plug(
                switch (step) {
                    case COMMON_MODE, OPEN -> standards.open();
                    case SHORT, PLUG -> standards.shorted();
                    case LOAD -> standards.load();
                    case CHECK_RESISTOR, STUDY_FIRST ->
                        standards.checks().get(0).label();
                    case CHECK_NETWORK, STUDY_SECOND ->
                        standards.checks().get(1).label();
                    case SOUND -> StandardSet.PRACTICE_CABINET.tag();
                },
                point);
    }
}
