package org.docksweep.judge;

import java.util.List;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Finding;
import org.docksweep.gate.Reading;
import org.docksweep.suspect.Suspect;
import org.docksweep.sweep.SweepAnalysis;

/**
 * A judged point with what the cabinet's verdict still needs to know of it.
 *
 * @param judgement the judgement so far
 * @param load what the terminals looked like
 * @param faultProbability probability that something is wrong at this point
 */
record PointEvidence(PointJudgement judgement, SweepAnalysis.Load load, double faultProbability) {
    /** The same curves, judged otherwise. */
    PointEvidence with(
            Verdict verdict,
            Prompt prompt,
            Reason reason,
            List<Reading> readings,
            List<Finding> findings,
            List<Suspect> suspects,
            double newFaultProbability) {
        return new PointEvidence(
                new PointJudgement(
                        judgement.testPointCode(),
                        verdict,
                        prompt,
                        reason,
                        judgement.impedance(),
                        judgement.acoustic(),
                        readings,
                        findings,
                        suspects),
                load,
                newFaultProbability);
    }
}
