package org.docksweep.service.security;

import java.util.List;
import java.util.UUID;

/**
 * Who sends a request: a person at a kiosk, or the kiosk itself. Stands in the details of the authentication.
 *
 * @param name name of the person, or of the kiosk's token
 * @param roles what is allowed, as Spring Security spells it
 * @param kiosk name of the kiosk's token
 * @param personId the person, or null
 * @param tokenSha256 hash of the person's token, or null
 */
public record SignedOn(String name, List<String> roles, String kiosk, UUID personId, String tokenSha256) {
    /** What the dock may do. */
    public static final List<String> DOCK = List.of("ROLE_DOCK");
    /** What the bench may do: the dock's as well. */
    public static final List<String> BENCH = List.of("ROLE_BENCH", "ROLE_DOCK");
    /** What a manager may do: everything. */
    public static final List<String> MANAGER = List.of("ROLE_MANAGER", "ROLE_BENCH", "ROLE_DOCK");

    static SignedOn kiosk(String name, List<String> roles) {
        return new SignedOn(name, roles, name, null, null);
    }
}
