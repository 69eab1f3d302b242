package org.docksweep.acoustic;

import java.util.Arrays;

/**
 * The residue of a third-octave band of the sweep, read period by period; of several sweeps always the least, so that
 * what happened in one alone does not count.
 *
 * @param meanSquare mean over the periods of the least mean square, in Pa^2
 * @param peak median over the periods of the least peak, in Pa
 * @param crestDb median over the periods of the least crest factor, in dB
 */
record PeriodReadings(double meanSquare, double peak, double crestDb) {
    /** At low frequencies a band holds less than one period; it is widened to this many. */
    private static final int LEAST_PERIODS = 2;

    static PeriodReadings of(Residue residue, double centreHz) {
        if (centreHz > residue.highestSweepHz()) {
            return new PeriodReadings(0, 0, 0);
        }
        double middle = residue.turns(centreHz);
        double reach = Math.max(LEAST_PERIODS / 2.0, middle * (ThirdOctave.HALF_BAND - 1));
        int periods = (int) Math.max(LEAST_PERIODS, Math.rint(2 * reach));
        double first = Math.max(residue.turns(residue.signal().startHz()), middle - periods / 2.0);
        double square = 0;
        double[] peaks = new double[periods];
        double[] crests = new double[periods];
        for (int j = 0; j < periods; j++) {
            double from = residue.indexAtTurns(first + j);
            double to = residue.indexAtTurns(first + j + 1);
            double least = Double.POSITIVE_INFINITY;
            peaks[j] = Double.POSITIVE_INFINITY;
            crests[j] = Double.POSITIVE_INFINITY;
            for (int k = 0; k < residue.sweeps(); k++) {
                double mean = residue.energy(k, from, to) / (to - from);
                double peak = residue.peak(k, from, to);
                least = Math.min(least, mean);
                peaks[j] = Math.min(peaks[j], peak);
                crests[j] = Math.min(crests[j], 10 * StrictMath.log10(peak * peak / Math.max(1e-30, mean) + 1e-9));
            }
            square += least / periods;
        }
        Arrays.sort(peaks);
        Arrays.sort(crests);
        return new PeriodReadings(square, peaks[periods / 2], crests[periods / 2]);
    }
}
