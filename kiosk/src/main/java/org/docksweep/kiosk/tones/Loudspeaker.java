package org.docksweep.kiosk.tones;

/** Where tones are heard. */
public interface Loudspeaker {
    /**
     * Begins a tone in place of one that still sounds. Returns at once.
     *
     * @param tone tone
     */
    void play(AnswerTone tone);

    /** Ends what sounds. */
    void silence();
}
