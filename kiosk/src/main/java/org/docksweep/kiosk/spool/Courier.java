package org.docksweep.kiosk.spool;

/** Carries one record to the service. */
@FunctionalInterface
public interface Courier {
    /**
     * Tries once. Blocks until the service answered or the time is up.
     *
     * @param item the record
     * @return what became of it
     */
    Delivery deliver(OutboxItem item);
}
