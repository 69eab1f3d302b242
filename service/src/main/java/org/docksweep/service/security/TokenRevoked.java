package org.docksweep.service.security;

/**
 * A kiosk's token was revoked; published within that transaction.
 *
 * @param name name of the token
 */
public record TokenRevoked(String name) {}
