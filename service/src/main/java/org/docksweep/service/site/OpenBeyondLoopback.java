package org.docksweep.service.site;

/** The service was told to listen beyond the loopback interface without TLS. */
final class OpenBeyondLoopback extends RuntimeException {
    private static final long serialVersionUID = 1L;

    OpenBeyondLoopback(String address) {
        super("server.address opens the service on " + address
                + " without TLS; tokens and fleet would travel in the clear");
    }
}
