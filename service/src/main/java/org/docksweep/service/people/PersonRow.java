package org.docksweep.service.people;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.contract.Person;
import org.docksweep.service.store.Stored;

/** A person, and how often the PIN was wrong in a row. */
@Entity
@Table(name = "person")
class PersonRow extends Stored<UUID> {
    /** Wrong tries in a row that cost nothing. */
    private static final int FREE_TRIES = 3;
    /** Wrong tries in a row after which only a new PIN opens the account; NIST SP 800-63B allows at most 100. */
    private static final int MOST_TRIES = 20;

    private static final Duration FIRST_DELAY = Duration.ofSeconds(5);
    private static final Duration LONGEST_DELAY = Duration.ofMinutes(15);

    @Id
    private UUID id;

    private String name;
    private String badge;

    @Enumerated(EnumType.STRING)
    private Person.Role role;

    private String pinHash;
    private int failedTries;
    private Instant lockedUntil;
    private Boolean openMarker;

    @Version
    private int version;

    protected PersonRow() {}

    PersonRow(Person person) {
        this.id = person.id();
        replace(person);
    }

    void replace(Person person) {
        name = person.name();
        badge = person.badge();
        role = person.role();
        openMarker = person.retired() ? null : true;
    }

    void setPin(String hash) {
        pinHash = hash;
        failedTries = 0;
        lockedUntil = null;
    }

    /** After the free tries every wrong one doubles the wait. */
    void wrongPin(Instant now) {
        failedTries++;
        if (failedTries > FREE_TRIES) {
            int doublings = Math.min(failedTries - FREE_TRIES - 1, 16);
            Duration delay = FIRST_DELAY.multipliedBy(1L << doublings);
            lockedUntil = now.plus(delay.compareTo(LONGEST_DELAY) < 0 ? delay : LONGEST_DELAY);
        }
    }

    void rightPin() {
        failedTries = 0;
        lockedUntil = null;
    }

    /** How long no try is taken, zero when one is; a locked account is as long as the longest delay, over and over. */
    Duration lockedFor(Instant now) {
        if (failedTries >= MOST_TRIES) {
            return LONGEST_DELAY;
        }
        return lockedUntil == null || !now.isBefore(lockedUntil) ? Duration.ZERO : Duration.between(now, lockedUntil);
    }

    Person person() {
        return new Person(id, name, badge, role, openMarker == null);
    }

    String pinHash() {
        return pinHash;
    }

    @Override
    public UUID getId() {
        return id;
    }
}
