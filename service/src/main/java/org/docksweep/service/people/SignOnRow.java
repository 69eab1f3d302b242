package org.docksweep.service.people;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.service.store.Stored;

/** A sign-on, known by the hash of its token only. */
@Entity
@Table(name = "sign_on")
class SignOnRow extends Stored<String> {
    @Id
    private String sha256;

    private UUID personId;
    private String kiosk;
    private Instant signedOnAt;
    private Instant lastUsedAt;
    private Instant endsAt;
    private Instant endedAt;

    protected SignOnRow() {}

    SignOnRow(String sha256, UUID personId, String kiosk, Instant at, Instant endsAt) {
        this.sha256 = sha256;
        this.personId = personId;
        this.kiosk = kiosk;
        this.signedOnAt = at;
        this.lastUsedAt = at;
        this.endsAt = endsAt;
    }

    @Override
    public String getId() {
        return sha256;
    }
}
