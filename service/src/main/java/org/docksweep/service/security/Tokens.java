package org.docksweep.service.security;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.docksweep.contract.KioskToken;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Refusal;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Issues, checks and revokes tokens. A token is 256 random bits, so a plain SHA-256 is enough at rest: there is nothing
 * to guess. The bootstrap token is held in memory only and ends with this process.
 */
@Service
@Transactional
class Tokens {
    static final String SETUP_NAME = "first start";
    private static final int TOKEN_BYTES = 32;
    private static final int SHORTEST_BOOTSTRAP = 32;

    private final AccessTokens tokens;
    private final Clock clock;
    private final SecureRandom random = new SecureRandom();
    private final byte[] bootstrapSha256;

    Tokens(AccessTokens tokens, Clock clock, @Value("${docksweep.bootstrap-token:}") String bootstrapToken) {
        this.tokens = tokens;
        this.clock = clock;
        if (!bootstrapToken.isEmpty() && bootstrapToken.length() < SHORTEST_BOOTSTRAP) {
            throw new IllegalArgumentException("docksweep.bootstrap-token must have at least " + SHORTEST_BOOTSTRAP
                    + " characters, but has " + bootstrapToken.length());
        }
        this.bootstrapSha256 = bootstrapToken.isEmpty() ? null : hash(bootstrapToken);
    }

    private static byte[] hash(String token) {
        return StoredJson.newSha256().digest(token.getBytes(StandardCharsets.UTF_8));
    }

    /** Whoever holds a token. */
    record Holder(String name, AccessToken.Role role) {}

    @Transactional(readOnly = true)
    Optional<Holder> holder(String token) {
        byte[] sha256 = hash(token);
        if (bootstrapSha256 != null && MessageDigest.isEqual(bootstrapSha256, sha256)) {
            return Optional.of(new Holder("bootstrap", AccessToken.Role.MANAGER));
        }
        return tokens.findById(java.util.HexFormat.of().formatHex(sha256))
                .filter(AccessToken::isInForce)
                .map(t -> new Holder(t.name(), t.role()));
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

    private java.time.Instant now() {
        return StoredJson.cut(clock.instant());
    }

    void revoke(String name) {
        tokens.inForce(name)
                .orElseThrow(() -> Refusal.notFound(
                        "name", "there is no token in force with that name", "Look the name up where it was issued."))
                .revoke(now());
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
