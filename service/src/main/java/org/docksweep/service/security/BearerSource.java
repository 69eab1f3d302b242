package org.docksweep.service.security;

import java.util.Optional;

/** Knows the holders of some bearer tokens. */
public interface BearerSource {
    /**
     * Whose token it is.
     *
     * @param token token as sent
     * @return its holder, or nothing when it is not known here, has ended or was revoked
     */
    Optional<SignedOn> holder(String token);
}
