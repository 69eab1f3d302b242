package org.docksweep.kiosk.service;

/** No answer from the service: no network, service down, or time is up. */
public final class ServiceUnreachable extends Exception {
    private static final long serialVersionUID = 1L;

    ServiceUnreachable(String message, Throwable cause) {
        super(message, cause);
    }
}
