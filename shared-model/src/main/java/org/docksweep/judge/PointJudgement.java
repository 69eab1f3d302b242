package org.docksweep.judge;

import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Require;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Finding;
import org.docksweep.gate.Reading;
import org.docksweep.suspect.PredictedCurve;
import org.docksweep.suspect.Suspect;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * What the gate says of one test point.
 *
 * @param testPointCode test point
 * @param verdict PASS, FAIL or SWEEP_AGAIN
 * @param prompt what a person must do, or NONE
 * @param reason the deciding sentence
 * @param impedance calibrated impedance, or null
 * @param acoustic acoustic response, or null
 * @param readings numbers read
 * @param findings what was seen
 * @param suspects possible causes, most probable first; empty unless FAIL
 */
public record PointJudgement(
        String testPointCode,
        Verdict verdict,
        Prompt prompt,
        Reason reason,
        ImpedanceCurve impedance,
        AcousticCurve acoustic,
        List<Reading> readings,
        List<Finding> findings,
        List<Suspect> suspects) {
    public PointJudgement {
        Require.text("judgement testPointCode", testPointCode);
        readings = Require.copy("readings", readings);
        findings = Require.copy("findings", findings);
        suspects = Require.copy("suspects", suspects);
    }

    /**
     * What the first suspect predicts of the impedance.
     *
     * @return its curve; empty when the first suspect was found otherwise, or there is none
     */
    public Optional<PredictedCurve> predicted() {
        return suspects.stream().findFirst().map(Suspect::predicted);
    }
}
