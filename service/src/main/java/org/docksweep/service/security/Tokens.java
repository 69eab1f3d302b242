package org.docksweep.service.security;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.Page;
import org.docksweep.service.store.AddedRows;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Paging;
import org.docksweep.service.web.Refusal;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.core.annotation.Order;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Issues, checks and revokes tokens. A token is 256 random bits, so a plain SHA-256 is enough at rest: there is nothing
 * to guess. The bootstrap token is held in memory only and ends with this process.
 */
@Service
@Order(1)
@Transactional
class Tokens implements BearerSource {
    static final String SETUP_NAME = "first start";
    private static final Duration OVERLAP = Duration.ofMinutes(10);
    private static final int TOKEN_BYTES = 32;
    private static final int SHORTEST_BOOTSTRAP = 32;

    private final AccessTokens tokens;
    private final AddedRows rows;
    private final Clock clock;
    private final ApplicationEventPublisher events;
    private final SecureRandom random = new SecureRandom();
    private final byte[] bootstrapSha256;

    Tokens(
            AccessTokens tokens,
            AddedRows rows,
            Clock clock,
            ApplicationEventPublisher events,
            @Value("${docksweep.bootstrap-token:}") String bootstrapToken) {
        this.tokens = tokens;
        this.rows = rows;
        this.clock = clock;
        this.events = events;
        if (!bootstrapToken.isEmpty() && bootstrapToken.length() < SHORTEST_BOOTSTRAP) {
            throw new IllegalArgumentException("docksweep.bootstrap-token must have at least " + SHORTEST_BOOTSTRAP
                    + " characters, but has " + bootstrapToken.length());
        }
        this.bootstrapSha256 = bootstrapToken.isEmpty() ? null : hash(bootstrapToken);
    }

    private static byte[] hash(String token) {
        return StoredJson.newSha256().digest(token.getBytes(StandardCharsets.UTF_8));
    }

    /** Asked at every request, hence by one plain statement without a transaction around it. */
    @Override
    @Transactional(propagation = Propagation.SUPPORTS)
    public Optional<SignedOn> holder(String token) {
        byte[] sha256 = hash(token);
        if (bootstrapSha256 != null && MessageDigest.isEqual(bootstrapSha256, sha256)) {
            return Optional.of(SignedOn.kiosk("bootstrap", SignedOn.MANAGER));
        }
        return rows
                .read(
                        "select name, role, revoked_at from access_token where sha256 = ?",
                        (row, number) -> new Known(
                                row.getString(1),
                                AccessToken.Role.valueOf(row.getString(2)),
                                row.getObject(3, OffsetDateTime.class)),
                        HexFormat.of().formatHex(sha256))
                .stream()
                .filter(known -> known.revokedAt() == null
                        || clock.instant().isBefore(known.revokedAt().toInstant()))
                .map(known -> SignedOn.kiosk(known.name(), roles(known.role())))
                .findFirst();
    }

    /** In force until its end, which is ahead for a token that was rotated a moment ago. */
    private record Known(String name, AccessToken.Role role, OffsetDateTime revokedAt) {}

    private static List<String> roles(AccessToken.Role role) {
        return switch (role) {
            case MANAGER -> SignedOn.MANAGER;
            case BENCH -> SignedOn.BENCH;
            case DOCK -> SignedOn.DOCK;
            case SETUP -> List.of("ROLE_SETUP");
        };
    }

    @Transactional(readOnly = true)
    Page<KioskToken.Issued> page(String after, int limit) {
        return Paging.page(
                tokens.page(after, Limit.of(Paging.checked(limit) + 1)), limit, AccessToken::issued, AccessToken::name);
    }

    /**
     * Issues a new token of the same name and role. The old one works on for a while, so that a kiosk whose answer got
     * lost on the way is not locked out.
     */
    KioskToken rotate(String name, String by) {
        AccessToken old = inForce(name);
        Instant now = now();
        old.revoke(now.plus(OVERLAP));
        tokens.flush();
        String token = newToken();
        tokens.saveAndFlush(
                new AccessToken(StoredJson.sha256(token.getBytes(StandardCharsets.UTF_8)), name, old.role(), by, now));
        return new KioskToken(name, KioskToken.Role.valueOf(old.role().name()), token);
    }

    private AccessToken inForce(String name) {
        return tokens.inForce(name)
                .filter(t -> t.role() != AccessToken.Role.SETUP)
                .orElseThrow(() -> Refusal.notFound(
                        "name", "there is no token in force with that name", "Look it up at GET /api/kiosk-tokens."));
    }

    /** Issues a token. The code of the first start is used up by the first manager token. */
    KioskToken issue(KioskToken.Order order, String by, boolean setup) {
        new Check()
                .text(order.name(), 80, "name")
                .present(order.role(), "role")
                .that(!SETUP_NAME.equals(order.name()), "name", "\"" + SETUP_NAME + "\" is taken")
                .that(
                        !setup || order.role() == KioskToken.Role.MANAGER,
                        "role",
                        "the code of the first start issues the first MANAGER token; with that one, issue the others")
                .refuseIfWrong();
        tokens.inForce(order.name()).ifPresent(t -> {
            throw Refusal.wrongState(
                    "name",
                    "there is a token in force named \"" + order.name() + "\"",
                    "Choose another name, or revoke that token first.");
        });
        String token = newToken();
        AccessToken.Role role = AccessToken.Role.valueOf(order.role().name());
        tokens.saveAndFlush(new AccessToken(
                StoredJson.sha256(token.getBytes(StandardCharsets.UTF_8)), order.name(), role, by, now()));
        if (setup) {
            tokens.inForce(SETUP_NAME).ifPresent(t -> t.revoke(now()));
        }
        return new KioskToken(order.name(), order.role(), token);
    }

    private String newToken() {
        byte[] bytes = new byte[TOKEN_BYTES];
        random.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    private Instant now() {
        return StoredJson.cut(clock.instant());
    }

    /** Ends a token at once, a rotated one of that name too, and the sign-ons made with it. */
    void revoke(String name) {
        Instant now = now();
        inForce(name).revoke(now);
        tokens.overlapping(name, now).forEach(t -> t.endNow(now));
        events.publishEvent(new TokenRevoked(name));
    }

    /** Whether nobody has a token and none was given from outside; by a plain statement, since every start asks. */
    @Transactional(propagation = Propagation.SUPPORTS)
    public boolean firstStart() {
        return bootstrapSha256 == null
                && rows.read(
                                "select name from access_token where open_marker = true and role <> 'SETUP'"
                                        + " fetch first 1 rows only",
                                (row, number) -> row.getString(1))
                        .isEmpty();
    }

    /** A fresh code for the first start, as long as nobody has a token and none was given from outside. */
    Optional<String> firstStartCode() {
        List<AccessToken> inForce = tokens.inForce();
        boolean used = inForce.stream().anyMatch(t -> t.role() != AccessToken.Role.SETUP);
        if (used || bootstrapSha256 != null) {
            return Optional.empty();
        }
        inForce.forEach(t -> t.revoke(now()));
        tokens.flush();
        String code = newToken();
        tokens.save(new AccessToken(
                StoredJson.sha256(code.getBytes(StandardCharsets.UTF_8)),
                SETUP_NAME,
                AccessToken.Role.SETUP,
                SETUP_NAME,
                now()));
        return Optional.of(code);
    }
}
