package org.docksweep.kiosk.people;

import java.time.Duration;
import java.time.Instant;
import org.docksweep.fleet.Require;

/**
 * Somebody the service vouched for at this kiosk.
 *
 * @param badge what the badge says
 * @param name full name, as it stands in records
 * @param verifier slow hash of the PIN, with the name of its method; never the PIN
 * @param verifiedAt when the service last accepted badge and PIN
 * @param expiresAt until when the verifier counts without the service
 * @param signedOnUntil until when the badge alone is enough here, since the PIN was given before
 * @param wrongTries wrong PINs in a row without the service
 * @param noTryBefore until when no PIN is tried without the service; null when one is
 */
record KnownPerson(
        String badge,
        String name,
        String verifier,
        Instant verifiedAt,
        Instant expiresAt,
        Instant signedOnUntil,
        int wrongTries,
        Instant noTryBefore) {
    /** Three wrong tries cost nothing, as at the service. */
    private static final int FREE_TRIES = 3;

    private static final Duration FIRST_WAIT = Duration.ofSeconds(5);
    private static final Duration LONGEST_WAIT = Duration.ofMinutes(15);
    /** After so many only the service can help. The service allows twice as many, but it is watched. */
    static final int MOST_TRIES = 10;

    /** A clock may be wrong by so much and no more: an old verifier must not come alive by setting the clock back. */
    private static final Duration CLOCK_GRACE = Duration.ofDays(1);

    KnownPerson {
        Require.text("badge", badge);
        Require.text("name", name);
        Require.text("verifier", verifier);
        if (verifiedAt == null || expiresAt == null || signedOnUntil == null || wrongTries < 0) {
            throw new IllegalArgumentException(
                    "known person " + name + ": times are needed and tries cannot be below 0");
        }
    }

    private boolean clockIsRight(Instant now) {
        return !now.isBefore(verifiedAt.minus(CLOCK_GRACE));
    }

    /** Whether the badge alone is enough. */
    boolean isSignedOn(Instant now) {
        return clockIsRight(now) && now.isBefore(signedOnUntil);
    }

    /** Whether the PIN may be checked here at all. */
    boolean countsWithoutService(Instant now) {
        return clockIsRight(now) && now.isBefore(expiresAt) && wrongTries < MOST_TRIES;
    }

    /** How long no PIN is tried, zero when one is. */
    Duration waits(Instant now) {
        boolean past = noTryBefore == null || !now.isBefore(noTryBefore);
        if (past) {
            return Duration.ZERO;
        }
        // A clock that was set back must not lock anybody out for longer than the wait was meant to be.
        Duration left = Duration.between(now, noTryBefore);
        return left.compareTo(LONGEST_WAIT) > 0 ? LONGEST_WAIT : left;
    }

    /** After a wrong PIN: each beyond the free ones doubles the wait. */
    KnownPerson wrongPin(Instant now) {
        int wrong = wrongTries + 1;
        Duration wait = Duration.ZERO;
        if (wrong > FREE_TRIES) {
            Duration doubled = FIRST_WAIT.multipliedBy(1L << Math.min(wrong - FREE_TRIES - 1, 10));
            wait = doubled.compareTo(LONGEST_WAIT) > 0 ? LONGEST_WAIT : doubled;
        }
        return new KnownPerson(
                badge,
                name,
                verifier,
                verifiedAt,
                expiresAt,
                signedOnUntil,
                wrong,
                wait.isZero() ? null : now.plus(wait));
    }

    KnownPerson signedOn(Instant until) {
        return new KnownPerson(badge, name, verifier, verifiedAt, expiresAt, until, 0, null);
    }

    /** The badge alone is no longer enough. */
    KnownPerson signedOff(Instant now) {
        return new KnownPerson(badge, name, verifier, verifiedAt, expiresAt, now, wrongTries, noTryBefore);
    }

    /** Without the hash. */
    @Override
    public String toString() {
        return "KnownPerson[" + name + ", badge " + badge + ", until " + expiresAt + "]";
    }
}
