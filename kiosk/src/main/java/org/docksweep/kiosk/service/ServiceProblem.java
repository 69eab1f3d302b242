package org.docksweep.kiosk.service;

/** The service answered with a problem (RFC 9457). The message is what it said, in words. */
public final class ServiceProblem extends Exception {
    private static final long serialVersionUID = 1L;

    private final int status;
    private final String type;

    ServiceProblem(int status, String type, String message) {
        super(message);
        this.status = status;
        this.type = type;
    }

    /**
     * HTTP status.
     *
     * @return 400 to 599
     */
    public int status() {
        return status;
    }

    /**
     * Stable type of the problem, see {@link org.docksweep.contract.ProblemTypes}.
     *
     * @return the type, empty when the service gave none
     */
    public String type() {
        return type;
    }

    /**
     * Whether the same request may succeed later: overload, defects, a token that is not accepted (a person can mend
     * that), and time-outs.
     *
     * @return true if trying again makes sense
     */
    public boolean mayPass() {
        return status >= 500 || status == 401 || status == 403 || status == 408 || status == 425 || status == 429;
    }
}
