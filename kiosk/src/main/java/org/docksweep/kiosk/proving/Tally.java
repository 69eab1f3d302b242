package org.docksweep.kiosk.proving;

import java.util.List;
import java.util.function.Predicate;

/**
 * Counts of a set of returns.
 *
 * @param returns how many
 * @param failed verdict FAIL
 * @param passed verdict PASS
 * @param again SWEEP AGAIN or another prompt in the end
 * @param watched passed with a watch mark
 * @param position failed and sent to the right driver
 * @param firstExact first suspect is the fault
 * @param firstTwoExact one of the first two is
 * @param firstInGroup first suspect is in the fault's group
 * @param firstTwoInGroup one of the first two is
 * @param plainReturns how many the plain gates can be used on
 * @param meter how many of them the meter fails
 * @param mask how many of them the mask fails
 */
public record Tally(
        int returns,
        int failed,
        int passed,
        int again,
        int watched,
        int position,
        int firstExact,
        int firstTwoExact,
        int firstInGroup,
        int firstTwoInGroup,
        int plainReturns,
        int meter,
        int mask) {

    static Tally of(List<Outcome> outcomes) {
        int failed = count(outcomes, Outcome::failed);
        int again = count(outcomes, Outcome::again);
        return new Tally(
                outcomes.size(),
                failed,
                outcomes.size() - failed - again,
                again,
                count(outcomes, o -> o.watch() && !o.failed() && !o.again()),
                count(outcomes, o -> o.failed() && o.position()),
                count(outcomes, o -> o.failed() && o.naming().firstExact()),
                count(outcomes, o -> o.failed() && o.naming().firstTwoExact()),
                count(outcomes, o -> o.failed() && o.naming().firstInGroup()),
                count(outcomes, o -> o.failed() && o.naming().firstTwoInGroup()),
                count(outcomes, o -> o.plain().applies()),
                count(outcomes, o -> o.plain().meter()),
                count(outcomes, o -> o.plain().mask()));
    }

    private static int count(List<Outcome> outcomes, Predicate<Outcome> what) {
        return (int) outcomes.stream().filter(what).count();
    }

    /**
     * Faulty cabinets that did not fail; one that is still SWEEP AGAIN counts.
     *
     * @return how many
     */
    public int missed() {
        return returns - failed;
    }
}
