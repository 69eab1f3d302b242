package org.docksweep.suspect;

import java.util.Optional;
import org.docksweep.circuit.CircuitFit;
import org.docksweep.circuit.CurveData;
import org.docksweep.gate.Knowledge;

/**
 * Half an octave in which a cabinet strays from its model while it fits everywhere else. A wall of the box, a grille or a cable tie rings where it
 * likes, another unit's elsewhere, and a handful of units does not tell where. A fault of a driver or of a part changes the curve over more than that,
 * or is explained by a hypothesis. So a curve that nothing explains, and that has no baseline to tell this cabinet's own ringing, is
 * judged without the band, and marked to be watched.
 *
 * @param elsewhere the data without the band
 */
record NarrowStray(CurveData elsewhere) {
    /** Half of the band's width, as a factor of frequency: a quarter of an octave. */
    private static final double HALF_WIDTH = StrictMath.pow(2, 0.25);
    /** What nothing explains and a person may want to look at: enough for a watch mark; common practice, no source. */
    private static final double WORTH_A_LOOK = 0.15;

    /**
     * Finds the band that fits worst.
     *
     * @param knowledge what is known of the model
     * @param data measured curve
     * @return the band, or none when little would be left without it
     */
    static Optional<NarrowStray> worstOf(Knowledge knowledge, CurveData data) {
        double[] x = CircuitFit.fit(knowledge.circuit(), data, knowledge.prior(), knowledge.start())
                .x();
        double[] strays = data.deviations(CircuitFit.predict(knowledge.circuit(), data.frequencyHz(), x));
        double[] hz = data.frequencyHz();
        double most = -1;
        double centreHz = 0;
        for (double middle : hz) {
            double sum = 0;
            for (int k = 0; k < hz.length; k++) {
                if (hz[k] >= middle / HALF_WIDTH && hz[k] <= middle * HALF_WIDTH) {
                    sum += strays[k] * strays[k];
                }
            }
            if (sum > most) {
                most = sum;
                centreHz = middle;
            }
        }
        CurveData elsewhere = data.without(centreHz / HALF_WIDTH, centreHz * HALF_WIDTH);
        return 2 * elsewhere.size() > data.size() ? Optional.of(new NarrowStray(elsewhere)) : Optional.empty();
    }

    /**
     * What is left to say.
     *
     * @param whole explanation of the whole curve
     * @param without explanation of the curve without the band
     * @return the whole one where the rest is not healthy either
     */
    Explanation watched(Explanation whole, Explanation without) {
        if (without.isUnknown()) {
            return whole;
        }
        return new Explanation(
                Math.max(WORTH_A_LOOK, without.faultProbability()),
                without.reducedChi2(),
                whole.healthyReducedChi2(),
                whole.logEvidence(),
                without.suspects(),
                without.healthyX(),
                without.healthySpread());
    }
}
