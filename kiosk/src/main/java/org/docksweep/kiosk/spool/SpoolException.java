package org.docksweep.kiosk.spool;

/** The spool could not read or write. The message says which spool, what happened and what to do. */
public final class SpoolException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    SpoolException(String message, Throwable cause) {
        super(message, cause);
    }
}
