package org.docksweep.sweep;

import static org.docksweep.fleet.Require.positive;

/**
 * Settings of the analysis; {@link #standard()} has the values the dock uses. All are common practice or found by
 * simulation, none has a published source unless said.
 *
 * @param longestGateS longest time looked at behind the linear response, in seconds; standard 0.5 (three to seven decay
 *     times of a driver resonance)
 * @param shortestGateS shortest such time, in seconds; standard 0.02
 * @param gateCycles such time in cycles between the two; standard 60 (a resonance of Q 27 has fallen by 60 dB)
 * @param openOhm magnitude above which a point counts as open, in ohm; standard 1000 (healthy peaks reach 200)
 * @param shortOhm resistance below which a point counts as shorted, in ohm; standard 0.8, room for a long cable
 * @param noiseLimit relative standard uncertainty at which a point is too noisy; standard 0.02
 * @param quietLimit share of the asked voltage that must arrive; standard 0.5
 */
public record AnalysisSettings(
        double longestGateS,
        double shortestGateS,
        double gateCycles,
        double openOhm,
        double shortOhm,
        double noiseLimit,
        double quietLimit) {

    public AnalysisSettings {
        positive("longestGateS", longestGateS);
        positive("shortestGateS", shortestGateS);
        if (shortestGateS > longestGateS) {
            throw new IllegalArgumentException(
                    "shortestGateS must be at most longestGateS (" + longestGateS + "), but is " + shortestGateS);
        }
        positive("gateCycles", gateCycles);
        positive("openOhm", openOhm);
        positive("shortOhm", shortOhm);
        positive("noiseLimit", noiseLimit);
        positive("quietLimit", quietLimit);
    }

    /**
     * The settings of the dock.
     *
     * @return the settings
     */
    public static AnalysisSettings standard() {
        return new AnalysisSettings(0.5, 0.02, 60, 1000, 0.8, 0.02, 0.5);
    }

    /**
     * The same with other gates.
     *
     * @param longestS longest gate in seconds
     * @param shortestS shortest gate in seconds
     * @param cycles cycles between the two
     * @return new settings
     */
    public AnalysisSettings withGates(double longestS, double shortestS, double cycles) {
        return new AnalysisSettings(longestS, shortestS, cycles, openOhm, shortOhm, noiseLimit, quietLimit);
    }

    /**
     * The same with another noise limit.
     *
     * @param relative relative standard uncertainty, above 0
     * @return new settings
     */
    public AnalysisSettings withNoiseLimit(double relative) {
        return new AnalysisSettings(longestGateS, shortestGateS, gateCycles, openOhm, shortOhm, relative, quietLimit);
    }

    /**
     * The same with another lowest share of the asked voltage.
     *
     * @param share share, above 0
     * @return new settings
     */
    public AnalysisSettings withQuietLimit(double share) {
        return new AnalysisSettings(longestGateS, shortestGateS, gateCycles, openOhm, shortOhm, noiseLimit, share);
    }
}
