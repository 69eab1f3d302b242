package org.docksweep.kiosk.spool;

/** Why a record could not be sent now. A person mends each in another way, so the dock names them apart. */
public enum Trouble {
    /** Nobody answers at the address: no network, or the service is down. */
    UNREACHABLE,
    /** The service took the request and did not answer in time. */
    SLOW,
    /** The certificate of the service is wrong, too old, or of an authority this machine does not know. */
    NOT_TRUSTED,
    /** The service answered that it has a defect. */
    FAULTY,
    /** The service asks to come again later. */
    BUSY,
    /** The service does not take the token of this kiosk. */
    NOT_SIGNED_ON;

    /**
     * Whether the service answered at all.
     *
     * @return true if so
     */
    public boolean serviceAnswered() {
        return this == FAULTY || this == BUSY || this == NOT_SIGNED_ON;
    }
}
