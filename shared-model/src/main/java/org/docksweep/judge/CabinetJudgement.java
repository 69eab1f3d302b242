package org.docksweep.judge;

import java.util.List;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Require;
import org.docksweep.fleet.Verdict;
import org.docksweep.suspect.Suspect;

/**
 * What the gate says of a cabinet.
 *
 * @param verdict PASS, FAIL or SWEEP_AGAIN
 * @param prompt what a person must do, or NONE
 * @param watch whether a passing cabinet gets a watch mark
 * @param reason the deciding sentence
 * @param points judgements of its test points, in the model's order
 * @param positions state of every driver position, in the model's order
 * @param suspects possible causes over all test points, most probable first
 * @param judgeVersion version of the judgement; same version and same captures give the same result
 * @param limitsVersion version of the limits used
 */
public record CabinetJudgement(
        Verdict verdict,
        Prompt prompt,
        boolean watch,
        Reason reason,
        List<PointJudgement> points,
        List<PositionState> positions,
        List<Suspect> suspects,
        String judgeVersion,
        int limitsVersion) {
    public CabinetJudgement {
        points = Require.copy("point judgements", points);
        positions = Require.copy("position states", positions);
        suspects = Require.copy("suspects", suspects);
    }
}
