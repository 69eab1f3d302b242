package org.docksweep.judge;

import org.docksweep.sweep.SweepAnalysis;

/**
 * A judged point with what the cabinet's verdict still needs to know of it.
 *
 * @param judgement the judgement so far
 * @param load what the terminals looked like
 * @param faultProbability probability that something is wrong at this point
 */
record PointEvidence(PointJudgement judgement, SweepAnalysis.Load load, double faultProbability) {}
