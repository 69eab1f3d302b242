package org.docksweep.contract;

import java.time.Instant;

/**
 * A token that was just issued. The service keeps its hash only: it is shown this once.
 *
 * @param name whose token it is
 * @param role what it allows
 * @param token the token, for the header {@code Authorization: Bearer ...}
 */
public record KioskToken(String name, Role role, String token) {

    /** What the holder of a token may do. */
    public enum Role {
        /** Look at everything, check in, register cabinets, send recordings and commissionings, close lists. */
        DOCK,
        /** What the dock may, and bench jobs, findings, parts, proofs and sign-off. */
        BENCH,
        /** Everything. */
        MANAGER
    }

    /**
     * Asks for a token.
     *
     * @param name whose token it will be, unique among the tokens in force
     * @param role what it will allow
     */
    public record Order(String name, Role role) {}

    /**
     * What may be told of a token in force.
     *
     * @param name whose token it is
     * @param role what it allows
     * @param issuedBy who issued it
     * @param issuedAt when
     */
    public record Issued(String name, Role role, String issuedBy, Instant issuedAt) {}

    @Override
    public String toString() {
        return "KioskToken[" + name + ", " + role + "]";
    }
}
