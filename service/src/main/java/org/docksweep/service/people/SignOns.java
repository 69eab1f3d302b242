package org.docksweep.service.people;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Base64;
import java.util.Optional;
import java.util.UUID;
import org.docksweep.contract.AuditEntry;
import org.docksweep.contract.Person;
import org.docksweep.contract.SignOn;
import org.docksweep.service.audit.Audit;
import org.docksweep.service.security.BearerSource;
import org.docksweep.service.security.SignedOn;
import org.docksweep.service.security.TokenRevoked;
import org.docksweep.service.store.AddedRows;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Signs people on and knows who is. A token is 256 random bits and kept as SHA-256; PINs are kept by a slow hash. The
 * answer and its time tell a stranger nothing of whether a badge exists.
 */
@Service
@Order(2)
class SignOns implements BearerSource {
    private static final int TOKEN_BYTES = 32;
    /** Use is noted at most this often, so that reading stays reading. */
    private static final Duration USE_NOTED_EVERY = Duration.ofMinutes(1);

    private final PersonRows people;
    private final SignOnRows signOns;
    private final AddedRows rows;
    private final PasswordEncoder pins;
    private final Audit audit;
    private final Clock clock;
    private final Duration lasts;
    private final Duration idle;
    private final SecureRandom random = new SecureRandom();
    private volatile String nobodysPin;

    SignOns(
            PersonRows people,
            SignOnRows signOns,
            AddedRows rows,
            PasswordEncoder pins,
            Audit audit,
            Clock clock,
            @Value("${docksweep.sign-on.lasts:12h}") Duration lasts,
            @Value("${docksweep.sign-on.idle:30m}") Duration idle) {
        this.people = people;
        this.signOns = signOns;
        this.rows = rows;
        this.pins = pins;
        this.audit = audit;
        this.clock = clock;
        this.lasts = lasts;
        this.idle = idle;
    }

    /**
     * How a try ended: signed on, or null and how long to wait before the next one.
     *
     * @param signOn the sign-on, or null
     * @param retryAfter how long no try of this badge is taken, zero when one is
     */
    record Try(SignOn signOn, Duration retryAfter) {}

    /** Counts a wrong try, hence ends without an exception: that would roll the count back. */
    @Transactional
    public Try signOn(SignOn.Order order, String kiosk) {
        new Check()
                .text(order.badge(), 64, "badge")
                .text(order.pin(), 64, "pin")
                .refuseIfWrong();
        Instant now = StoredJson.cut(clock.instant());
        Optional<PersonRow> found = people.lockedByBadge(order.badge());
        if (found.isEmpty() || found.get().pinHash() == null) {
            pins.matches(order.pin(), nobodysPin());
            audit.signOn(kiosk, kiosk, null, AuditEntry.Outcome.REFUSED);
            return new Try(null, Duration.ZERO);
        }
        PersonRow row = found.get();
        Person person = row.person();
        Duration locked = row.lockedFor(now);
        if (locked.isZero() && pins.matches(order.pin(), row.pinHash())) {
            row.rightPin();
            audit.signOn(person.name(), kiosk, person.id(), AuditEntry.Outcome.STORED);
            return new Try(start(person, kiosk, now), Duration.ZERO);
        }
        if (locked.isZero()) {
            row.wrongPin(now);
        }
        audit.signOn(person.name(), kiosk, person.id(), AuditEntry.Outcome.REFUSED);
        return new Try(null, locked);
    }

    /** A hash to compare with when there is nobody, so that a wrong badge takes as long as a wrong PIN. */
    private String nobodysPin() {
        if (nobodysPin == null) {
            nobodysPin = pins.encode("nobody has this PIN");
        }
        return nobodysPin;
    }

    private SignOn start(Person person, String kiosk, Instant now) {
        byte[] bytes = new byte[TOKEN_BYTES];
        random.nextBytes(bytes);
        String token = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        Instant endsAt = now.plus(lasts);
        signOns.save(new SignOnRow(hash(token), person.id(), kiosk, now, endsAt));
        return new SignOn(person.name(), person.role(), kiosk, token, endsAt);
    }

    private static String hash(String token) {
        return StoredJson.sha256(token.getBytes(StandardCharsets.UTF_8));
    }

    /** Asked at every request, hence by one plain statement without a transaction around it. */
    @Override
    public Optional<SignedOn> holder(String token) {
        String sha256 = hash(token);
        Instant now = StoredJson.cut(clock.instant());
        return rows
                .read(
                        "select p.id, p.name, p.role, s.kiosk, s.last_used_at, s.ends_at from sign_on s"
                                + " join person p on p.id = s.person_id where s.sha256 = ? and s.ended_at is null",
                        (row, number) -> new Known(
                                row.getObject(1, UUID.class),
                                row.getString(2),
                                Person.Role.valueOf(row.getString(3)),
                                row.getString(4),
                                row.getObject(5, OffsetDateTime.class).toInstant(),
                                row.getObject(6, OffsetDateTime.class).toInstant()),
                        sha256)
                .stream()
                .filter(known -> now.isBefore(known.endsAt())
                        && now.isBefore(known.lastUsedAt().plus(idle)))
                .findFirst()
                .map(known -> {
                    if (!known.lastUsedAt().isAfter(now.minus(USE_NOTED_EVERY))) {
                        signOns.used(sha256, now);
                    }
                    return known.signedOn(sha256);
                });
    }

    private record Known(
            UUID personId, String name, Person.Role role, String kiosk, Instant lastUsedAt, Instant endsAt) {
        SignedOn signedOn(String sha256) {
            return new SignedOn(
                    name,
                    switch (role) {
                        case DOCK -> SignedOn.DOCK;
                        case BENCH -> SignedOn.BENCH;
                        case MANAGER -> SignedOn.MANAGER;
                    },
                    kiosk,
                    personId,
                    sha256);
        }
    }

    @Transactional(propagation = Propagation.MANDATORY)
    public void end(String sha256) {
        signOns.end(sha256, StoredJson.cut(clock.instant()));
    }

    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void revoked(TokenRevoked kiosk) {
        signOns.endAtKiosk(kiosk.name(), StoredJson.cut(clock.instant()));
    }
}
