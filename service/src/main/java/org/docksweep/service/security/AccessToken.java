package org.docksweep.service.security;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import org.docksweep.contract.KioskToken;
import org.docksweep.service.store.Stored;

/** A token, known by its hash only. */
@Entity
@Table(name = "access_token")
class AccessToken extends Stored<String> {
    @Id
    private String sha256;

    private String name;

    @Enumerated(EnumType.STRING)
    private Role role;

    private String issuedBy;
    private Instant issuedAt;
    private Instant revokedAt;
    private Boolean openMarker;

    @Version
    private int version;

    protected AccessToken() {}

    AccessToken(String sha256, String name, Role role, String issuedBy, Instant issuedAt) {
        this.sha256 = sha256;
        this.name = name;
        this.role = role;
        this.issuedBy = issuedBy;
        this.issuedAt = issuedAt;
        this.openMarker = true;
    }

    /** What a token allows. */
    enum Role {
        DOCK,
        BENCH,
        MANAGER,
        /** The code of the first start: allows to issue the first manager token, nothing else. */
        SETUP
    }

    /** Ends it for good, now or at a time soon. */
    void revoke(Instant at) {
        if (openMarker == null) {
            throw new IllegalStateException("token of " + name + " was revoked before");
        }
        revokedAt = at;
        openMarker = null;
    }

    String name() {
        return name;
    }

    Role role() {
        return role;
    }

    /** Cuts the time a rotated token has left. */
    void endNow(Instant now) {
        revokedAt = now;
    }

    KioskToken.Issued issued() {
        return new KioskToken.Issued(name, KioskToken.Role.valueOf(role.name()), issuedBy, issuedAt);
    }

    @Override
    public String getId() {
        return sha256;
    }
}
