package org.docksweep.kiosk.spool;

import java.time.Duration;
import java.util.random.RandomGenerator;

/**
 * How long to wait after failures in a row: {@code min(cap, base 2^(n-1))}, of which a random share of 50 to 100 % is
 * taken, so that many kiosks do not knock at the same moment after an outage.
 *
 * @param base wait after the first failure
 * @param cap longest wait
 */
public record Backoff(Duration base, Duration cap) {
    /** Half a second to half a minute. */
    public static final Backoff USUAL = new Backoff(Duration.ofMillis(500), Duration.ofSeconds(30));

    /**
     * The wait.
     *
     * @param failuresInARow at least 1
     * @param random source of the jitter
     * @return time to wait
     */
    public Duration after(int failuresInARow, RandomGenerator random) {
        double fullMs = Math.min(cap.toMillis(), base.toMillis() * Math.pow(2, Math.min(failuresInARow - 1, 30)));
        return Duration.ofMillis(Math.round(fullMs * (0.5 + 0.5 * random.nextDouble())));
    }
}
