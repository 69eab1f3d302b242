package org.docksweep.kiosk.rig.audio;

/** An output that takes samples; the narrow part of a source line that a measurement uses. */
interface PlayLine extends AutoCloseable {
    /** How samples are written. */
    SampleCodec codec();

    /** Channels per frame. */
    int channels();

    /** Starts the stream. */
    void start();

    /**
     * Writes whole frames and waits until they are in the buffer.
     *
     * @param bytes frames
     * @return bytes taken; fewer than given when the device is gone or the line was silenced
     */
    int write(byte[] bytes);

    /** Throws away what is in the buffer and stops; from any thread. */
    void silence();

    @Override
    void close();
}
