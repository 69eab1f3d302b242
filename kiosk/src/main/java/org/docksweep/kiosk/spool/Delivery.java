package org.docksweep.kiosk.spool;

/** What became of one attempt to send a record. */
public sealed interface Delivery {
    /** The service has it, durable. */
    record Delivered() implements Delivery {}

    /**
     * The service will never take it as it is.
     *
     * @param words what the service said
     */
    record Refused(String words) implements Delivery {}

    /**
     * Not now: no network, service down or overloaded, token not accepted.
     *
     * @param words what happened
     * @param trouble what kind of trouble
     */
    record NotNow(String words, Trouble trouble) implements Delivery {}
}
