package org.docksweep.sweep;

/** Reads from a microphone channel what goes beyond the level; the package of the acoustic channel has one. */
@FunctionalInterface
public interface SoundReader {
    /**
     * Reads a take.
     *
     * @param take what the microphone captured; it is good until this returns
     * @return what was heard
     */
    SoundPrint read(MicrophoneTake take);
}
