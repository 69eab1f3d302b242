package org.docksweep.contract;

import java.util.UUID;

/**
 * Somebody who works here. The PIN is kept as a slow hash only and never given back.
 *
 * @param id made by the client
 * @param name full name, as it stands in histories
 * @param badge what the badge says when scanned, 4 to 64 letters, digits, {@code -} or {@code _}; unique among those
 *     who work here
 * @param role what the person may do
 * @param retired whether the person has left; nobody is ever deleted
 */
public record Person(UUID id, String name, String badge, Role role, boolean retired) {

    /** What a person may do; each may also do what those before may. */
    public enum Role {
        /** The return dock. */
        DOCK,
        /** The repair bench. */
        BENCH,
        /** Everything. */
        MANAGER
    }

    /**
     * A PIN for a person; also opens an account that was locked.
     *
     * @param pin 6 to 12 digits
     */
    public record Pin(String pin) {
        @Override
        public String toString() {
            return "Pin[...]";
        }
    }
}
