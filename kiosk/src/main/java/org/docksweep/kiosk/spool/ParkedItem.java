package org.docksweep.kiosk.spool;

/**
 * A record the service refused for good. It stays here until a person has dealt with it.
 *
 * @param item the record
 * @param words what the service said
 */
public record ParkedItem(OutboxItem item, String words) {}
