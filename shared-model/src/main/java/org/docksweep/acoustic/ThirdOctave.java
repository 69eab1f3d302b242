package org.docksweep.acoustic;

import org.docksweep.fleet.Require;

/**
 * Third-octave bands, base ten: exact mid-band frequencies {@code 1000 Hz * 10^(n/10)}, edges a factor {@code 10^(1/20)}
 * to either side (IEC 61260-1:2014; from memory, the ratio 10^(3/10) per octave is checked in a test).
 */
public final class ThirdOctave {
    /** Ratio from the middle of a band to its upper edge. */
    static final double HALF_BAND = StrictMath.pow(10, 0.05);

    private ThirdOctave() {}

    /**
     * Mid-band frequency.
     *
     * @param index n; 0 is 1 kHz
     * @return hertz
     */
    public static double centreHz(int index) {
        return 1000 * StrictMath.pow(10, index / 10.0);
    }

    /**
     * Mid-band frequencies of the bands that lie wholly within a range.
     *
     * @param fromHz lower end, greater than 0
     * @param toHz upper end
     * @return rising frequencies in hertz; empty when no band fits
     */
    public static double[] centresWithin(double fromHz, double toHz) {
        Require.positive("third-octave fromHz", fromHz);
        int first = (int) Math.ceil(10 * StrictMath.log10(fromHz * HALF_BAND / 1000) - 1e-9);
        int last = (int) Math.floor(10 * StrictMath.log10(toHz / HALF_BAND / 1000) + 1e-9);
        double[] centres = new double[Math.max(0, last - first + 1)];
        for (int i = 0; i < centres.length; i++) {
            centres[i] = centreHz(first + i);
        }
        return centres;
    }
}
