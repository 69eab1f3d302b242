package org.docksweep.kiosk.spool;

/**
 * One record on its way to the service. Sending it twice does no harm: it is a {@code PUT} under an id made here.
 *
 * @param sequence place in the queue, rising
 * @param kind what it is
 * @param path path at the service, for example {@code /api/check-ins/...}
 * @param body the exact bytes to send; empty for a recording, which lies in the folder of recordings
 * @param attempts how often it was tried
 */
public record OutboxItem(long sequence, Kind kind, String path, byte[] body, int attempts) {

    /** Kinds of records. */
    public enum Kind {
        REGISTRATION,
        COMMISSIONING,
        /** The path ends in the content hash of the recording. */
        RECORDING,
        CHECK_IN,
        /** Close of a return list. */
        CLOSE
    }
}
