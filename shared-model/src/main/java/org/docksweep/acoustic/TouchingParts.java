package org.docksweep.acoustic;

import java.util.List;
import org.docksweep.sweep.SoundPrint;

/** Whether strokes that come back at one phase of the sweep are the cabinet's own, the noise's, or something that touches. */
final class TouchingParts {
    /** Logarithm of the number of independent looks for an event. */
    static final double LOOKS_LOG = 10;

    private static final double MOST_EVENT_LOG = 15;

    /** Silence where an event would have been heard speaks this much against one. */
    private static final double NO_EVENT_LOG = -3;

    /** Bursts must be this much louder than what belongs to the cabinet, in dB. */
    private static final double LOUDER_DB = 2;

    /** Peaks within a short period that are no further above the rms of the noise are the noise's, in dB. */
    private static final double HIDDEN_DB = 13;

    /** Noise's largest value of a period strays by 0.7 dB, its level as read by half a decibel: three times both, in dB. */
    private static final double PEAK_CHANCE_DB = 2.5;

    /** Peak of noise over its rms within the cells of an event, the least of two sweeps, in dB. */
    private static final double NOISE_PEAK_DB = 9;

    /** Two scores of the same event differ by this much once in twenty times: twice the root of two. */
    private static final double CLEARLY_MORE = 2.8;

    /** Mean square of a burst over a stroke's millisecond under a Hann window, over the square of its peak: 1/2 times 3/8. */
    private static final double STROKE_SHARE = 0.19;

    /** Spread of the cube root of a stroke's noise: the root of 2 over 9 times 28 degrees of freedom, 14 kHz for a millisecond. */
    private static final double CELL_SPREAD = 0.089;

    /** From here an event may be one of strokes that run into each other. */
    private static final double RUNNING_HZ = DifferenceFold.LOWEST_HZ;

    /** Events so close in phase are one: a cell or two of the fold. */
    private static final double SAME_PHASE_TURNS = 0.15;

    /** Every sweep must show an event at least so clearly. */
    private static final double LEAST_WEAKEST = 1.5;

    private TouchingParts() {}

    /**
     * Logarithm of the likelihood ratio of touching parts over none.
     *
     * @param heard what was heard
     * @param usual what this cabinet or its model sounds like, or null
     * @return logarithm; 0 where the cabinet's own bursts are not known
     */
    static double log(SoundPrint heard, SoundPrint usual) {
        if (usual == null || heard.marks().contains(SoundPrint.Mark.SINGLE_SWEEP)) {
            return 0;
        }
        SoundPrint.Event event = heard.event();
        if (event == null || event.weakestScore() < LEAST_WEAKEST) {
            return NO_EVENT_LOG;
        }
        if (isOwn(event, usual.event(), heard)
                || event.burstDb() < usualDb(usual, event) && !isNew(event, usual, heard)) {
            return NO_EVENT_LOG;
        }
        double log = event.score() * event.score() / 2 - LOOKS_LOG;
        return Math.max(NO_EVENT_LOG, Math.min(MOST_EVENT_LOG, log));
    }

    /**
     * Whether the expected sound has the same event, at about the same level: the cabinet's own. A suspension that stiffens speaks at
     * both ends of the travel, half a turn apart; which of the two comes out of the noise first is chance, and the noise's peaks
     * ride on it.
     */
    private static boolean isOwn(SoundPrint.Event event, SoundPrint.Event usual, SoundPrint heard) {
        if (usual == null || event.fromHz() > usual.toHz() || event.toHz() < usual.fromHz()) {
            return false;
        }
        double turns = Math.abs(Math.IEEEremainder(event.phaseTurns() - usual.phaseTurns(), 0.5));
        double noise = heard.bands().stream()
                .filter(band -> near(band, event))
                .mapToDouble(TouchingParts::noiseDb)
                .max()
                .orElse(Double.NEGATIVE_INFINITY);
        double withNoise = powerSumDb(usual.burstDb(), noise + NOISE_PEAK_DB);
        return turns < SAME_PHASE_TURNS && event.burstDb() < withNoise + LOUDER_DB;
    }

    private static double powerSumDb(double one, double other) {
        return 10 * StrictMath.log10(StrictMath.pow(10, one / 10) + StrictMath.pow(10, other / 10));
    }

    /**
     * Whether the expected sound, read the same way in its own noise, would have shown the event and did not. Its level may then be
     * anything: among the noise's peaks it is told by its coming back, not by its height.
     */
    private static boolean isNew(SoundPrint.Event event, SoundPrint usual, SoundPrint heard) {
        double before =
                usual.event() == null ? SoundEar.NOTED_SCORE : usual.event().score();
        List<SoundPrint.Band> bands =
                usual.bands().stream().filter(band -> near(band, event)).toList();
        double moreNoiseDb = bands.stream()
                .mapToDouble(band -> noiseDb(band) - noiseDb(heard, band.centreHz()))
                .max()
                .orElse(0);
        return thenScore(event, heard, Math.max(0, moreNoiseDb)) > before + CLEARLY_MORE
                && bands.stream().allMatch(TouchingParts::hidden);
    }

    /**
     * The score of an event in more noise. A fold sums what each cell shows, {@code ((1 + a b)^(1/3) - 1) / s} up to a cap: b the square of the
     * strokes' peak over the noise, a the mean square of a millisecond's burst over that of its peak, s the spread of the cube root. At high
     * frequencies strokes run into each other and have no peak; there a score falls no faster than their energy over the noise's.
     */
    private static double thenScore(SoundPrint.Event event, SoundPrint heard, double moreNoiseDb) {
        if (event.fromHz() >= RUNNING_HZ) {
            return event.score() * StrictMath.pow(10, -moreNoiseDb / 10);
        }
        double noise = heard.bands().stream()
                .filter(band -> near(band, event))
                .mapToDouble(TouchingParts::noiseDb)
                .max()
                .orElse(event.burstDb());
        double overDb = event.burstDb() - noise;
        return event.score() * cell(overDb - moreNoiseDb) / cell(overDb);
    }

    private static double cell(double overNoiseDb) {
        double energy = 1 + STROKE_SHARE * StrictMath.pow(10, overNoiseDb / 10);
        return Math.min(PhaseFold.SHARED_CAP, (StrictMath.cbrt(energy) - 1) / CELL_SPREAD);
    }

    private static boolean near(SoundPrint.Band band, SoundPrint.Event event) {
        return band.centreHz() > 0.85 * event.fromHz() && band.centreHz() < 1.18 * event.toHz();
    }

    /**
     * Whether the peaks of a band are no more than those of its noise. Of n normal values that know nothing of each other the largest magnitude is
     * about {@code sqrt(2 ln 2n)} times their rms, n being twice the bandwidth times the period: 12 dB at 20 Hz, so that what is a burst at
     * 200 Hz is chance there.
     */
    private static boolean hidden(SoundPrint.Band band) {
        return band.burstDb() < noiseReachDb(band);
    }

    /** Up to where peaks of a band are its noise's, in dB re the sweep's peak. */
    static double noiseReachDb(SoundPrint.Band band) {
        double values = Math.max(2, 2 * Residue.bandwidthHz(band.centreHz()) / band.centreHz());
        double peakDb = 10 * StrictMath.log10(2 * StrictMath.log(2 * values));
        return noiseDb(band) + Math.max(HIDDEN_DB, peakDb + PEAK_CHANCE_DB);
    }

    /**
     * Noise while the sweep passed. The silence before it may have held a knock that no sweep held; what a sweep leaves behind holds all
     * its noise, and in the calmer sweep of two no knock. The less of both is it at most.
     */
    static double noiseDb(SoundPrint.Band band) {
        boolean read = band.residueDb() > SoundEar.LOWEST_DB;
        return read ? Math.min(band.noiseDb(), band.residueDb()) : band.noiseDb();
    }

    /** Noise of the band at a centre; unknown is none, in which everything would have been heard better. */
    private static double noiseDb(SoundPrint print, double centreHz) {
        return print.bands().stream()
                .filter(b -> b.centreHz() == centreHz)
                .mapToDouble(TouchingParts::noiseDb)
                .findAny()
                .orElse(Double.NEGATIVE_INFINITY);
    }

    /**
     * Level that bursts must pass where the event is: what belongs to the cabinet, or, where the noise of its baseline hid
     * that, what that noise's own peaks would have been between two cells.
     */
    private static double usualDb(SoundPrint usual, SoundPrint.Event event) {
        double most = Double.NEGATIVE_INFINITY;
        for (SoundPrint.Band band : usual.bands()) {
            if (near(band, event)) {
                double noise = noiseDb(band);
                most = Math.max(most, hidden(band) ? noise + NOISE_PEAK_DB : band.burstDb() + LOUDER_DB);
            }
        }
        return most;
    }
}
