package org.docksweep.kiosk.spool;

/**
 * How the outbox stands.
 *
 * @param waiting records that will be sent
 * @param parked records the service refused for good; a person must look at them
 * @param sent records sent and still remembered
 */
public record OutboxCounts(int waiting, int parked, int sent) {
    /**
     * Records that are not at the service.
     *
     * @return waiting and parked ones
     */
    public int notAtService() {
        return waiting + parked;
    }
}
