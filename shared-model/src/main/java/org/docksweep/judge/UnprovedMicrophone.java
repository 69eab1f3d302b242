package org.docksweep.judge;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Finding;
import org.docksweep.gate.ReadingState;

/**
 * A microphone that is not proved proves nothing: the current judges alone and says so, and its sound is not kept, lest it
 * become a baseline. Where the sound is all there is, nothing is judged.
 */
final class UnprovedMicrophone {
    private UnprovedMicrophone() {}

    static PointEvidence judged(PointEvidence current, TestPoint point, Reason doubt, boolean wouldCount) {
        PointJudgement old = current.judgement();
        boolean passed = old.verdict() == Verdict.PASS;
        boolean line = point.kind() == TestPointKind.LINE_INPUT;
        List<Finding> findings = new ArrayList<>(old.findings());
        if (wouldCount) {
            findings.add(new Finding(ReadingState.NOT_JUDGED, point.code(), null, null, null, null, doubt));
        }
        return new PointEvidence(
                new PointJudgement(
                        old.testPointCode(),
                        line ? Verdict.SWEEP_AGAIN : old.verdict(),
                        line ? Prompt.PERSON_DECIDES : old.prompt(),
                        line
                                ? doubt
                                : passed && wouldCount && old.reason().key().equals("verdict-pass")
                                        ? Reason.of("verdict-pass-current")
                                        : old.reason(),
                        old.impedance(),
                        null,
                        old.readings(),
                        line ? List.of() : findings,
                        line ? List.of() : old.suspects()),
                current.load(),
                line ? 0 : current.faultProbability());
    }
}
