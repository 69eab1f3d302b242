package org.docksweep.suspect;

/**
 * Severity of a fault that grows from nothing: its carried logarithm is normal. Integrates the evidence over it.
 *
 * @param logMean mean of the logarithm
 * @param logSpread its standard deviation
 * @param least least severity there is, not negative
 */
record Severity(double logMean, double logSpread, double least) {
    private static final int STEPS = 48;
    private static final double REACH = 4;

    /**
     * Evidence against that of the healthy circuit, {@code ln integral p(s) exp(pull a - strength a^2 / 2) ds}, a = s / at.
     *
     * @param pull pull of the fault's signature
     * @param strength its strength
     * @param at severity of the signature
     * @return logarithm of the ratio of evidences
     */
    double logEvidenceRatio(double pull, double strength, double at) {
        double largest = Double.NEGATIVE_INFINITY;
        double[] logs = new double[STEPS + 1];
        double step = 2 * REACH / STEPS;
        for (int k = 0; k <= STEPS; k++) {
            double z = -REACH + k * step;
            double severity = StrictMath.exp(logMean + logSpread * z);
            double amplitude = severity / at;
            logs[k] = severity < least
                    ? Double.NEGATIVE_INFINITY
                    : -0.5 * z * z + pull * amplitude - 0.5 * strength * amplitude * amplitude;
            largest = Math.max(largest, logs[k]);
        }
        double sum = 0;
        for (double log : logs) {
            sum += StrictMath.exp(log - largest);
        }
        return largest + StrictMath.log(sum * step / Math.sqrt(2 * Math.PI));
    }
}
