package org.docksweep.kiosk.tones;

import java.util.Optional;
import org.docksweep.fleet.Route;
import org.docksweep.kiosk.dock.DockState;

/**
 * Tones of the answers. They differ in rhythm first and pitch second, and lie between 300 and 800 Hz: hearing protection takes
 * away most above that, and a hall drowns what is below (common practice, no source).
 */
public enum AnswerTone {
    /** To the shelf: two notes, rising, over at once. */
    SHELF(new Note(523.25, 0.12), new Note(783.99, 0.24)),
    /** To the bench or on hold: three slow low notes. */
    AWAY(new Note(329.63, 0.25), Note.rest(0.15), new Note(329.63, 0.25), Note.rest(0.15), new Note(329.63, 0.25)),
    /** Something is to be done here: six quick notes up and down. */
    HANDS(
            new Note(440, 0.07),
            new Note(587.33, 0.07),
            new Note(440, 0.07),
            new Note(587.33, 0.07),
            new Note(440, 0.07),
            new Note(587.33, 0.07));

    /** Peak re full scale, -12 dB: how loud that is, is set at the loudspeaker. */
    static final double PEAK = 0.25;
    /** Rise and fall of a note, against clicks. */
    private static final double RAMP_SECONDS = 0.008;

    private final Note[] notes;

    AnswerTone(Note... notes) {
        this.notes = notes;
    }

    /** A note, or a rest at 0 Hz. */
    private record Note(double frequencyHz, double seconds) {
        static Note rest(double seconds) {
            return new Note(0, seconds);
        }
    }

    /**
     * The tone of an answer.
     *
     * @param answer answer on the screen
     * @return its tone
     */
    public static AnswerTone of(DockState.Answer answer) {
        Optional<Route> route = answer.route();
        if (route.isEmpty()) {
            return HANDS;
        }
        return route.get() == Route.SHELF ? SHELF : AWAY;
    }

    /**
     * The tone as samples.
     *
     * @param sampleRateHz sample rate
     * @return samples, -1 to 1
     */
    public double[] samples(int sampleRateHz) {
        int total = 0;
        for (Note note : notes) {
            total += length(note, sampleRateHz);
        }
        double[] samples = new double[total];
        int at = 0;
        for (Note note : notes) {
            int length = length(note, sampleRateHz);
            for (int i = 0; i < length && note.frequencyHz() > 0; i++) {
                double edge = Math.min(i, length - 1 - i) / (RAMP_SECONDS * sampleRateHz);
                double gain = PEAK * Math.min(1, edge);
                samples[at + i] = gain * Math.sin(2 * Math.PI * note.frequencyHz() * i / sampleRateHz);
            }
            at += length;
        }
        return samples;
    }

    private static int length(Note note, int sampleRateHz) {
        return (int) Math.round(note.seconds() * sampleRateHz);
    }
}
