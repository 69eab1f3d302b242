package org.docksweep.kiosk.rig.audio;

/** An input that gives samples; the narrow part of a target line that a measurement uses. */
interface CaptureLine extends AutoCloseable {
    /** How samples are read. */
    SampleCodec codec();

    /** Channels per frame. */
    int channels();

    /** Starts the stream. */
    void start();

    /**
     * Reads whole frames and waits for them.
     *
     * @param bytes filled from the start
     * @return bytes read; fewer than fit when the device is gone or the line was closed
     */
    int read(byte[] bytes);

    @Override
    void close();
}
