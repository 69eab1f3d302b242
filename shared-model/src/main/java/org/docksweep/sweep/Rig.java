package org.docksweep.sweep;

import org.docksweep.fleet.TestPointKind;

/**
 * What plays and captures: an audio interface with amplifier and sense resistor, or the virtual rig. One measurement at
 * a time.
 */
public interface Rig extends AutoCloseable {

    /**
     * Identity of the rig.
     *
     * @return rig id, never blank
     */
    String id();

    /**
     * Sample rate the rig runs at.
     *
     * @return samples per second
     */
    int sampleRateHz();

    /**
     * Plays a plan and captures all channels. Blocks until the last sample; the listener is called from the calling
     * thread or an audio thread, never from the event thread.
     *
     * @param plan what to play, in volts at the test point
     * @param kind what is connected
     * @param listener hears of progress
     * @return the capture
     * @throws RigException if the device is lost, refuses, or {@link #stop()} was called; says what to do
     */
    Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException;

    /** Stops at once and makes silence; may be called from any thread, also when nothing plays. */
    void stop();

    @Override
    void close();

    /** Hears how far a playback has come. */
    @FunctionalInterface
    interface ProgressListener {
        /**
         * Called now and then.
         *
         * @param share share of the playback done, 0 to 1
         */
        void progressed(double share);
    }
}
