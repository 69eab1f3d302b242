package org.docksweep.contract;

import java.time.Instant;

/**
 * A person signed on at a kiosk. The service keeps the hash of the token only: it is shown this once.
 *
 * @param name the person
 * @param role what the person may do
 * @param kiosk kiosk the person signed on at: the name of its token
 * @param token the token, for the header {@code Authorization: Bearer ...}, in place of the kiosk's own
 * @param endsAt latest end; it ends earlier when it is not used for a while
 */
public record SignOn(String name, Person.Role role, String kiosk, String token, Instant endsAt) {

    /**
     * Asks for a sign-on, with the token of the kiosk.
     *
     * @param badge what the badge says
     * @param pin PIN of the person
     */
    public record Order(String badge, String pin) {
        @Override
        public String toString() {
            return "Order[badge " + badge + "]";
        }
    }

    @Override
    public String toString() {
        return "SignOn[" + name + ", " + role + ", at " + kiosk + "]";
    }
}
