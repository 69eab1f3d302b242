package org.docksweep.contract;

import java.security.SecureRandom;
import java.util.UUID;

/**
 * Identifiers that anybody can make without asking and that grow with time: version 7 of RFC 9562 (May 2024), section
 * 5.7, 48 bits of milliseconds since 1970 and 74 random bits.
 *
 * <p>What is stored under such keys lies side by side in the indexes of a database. Keys that are random throughout touch
 * another page for every row of a check-in, its measurements, curves and readings.
 */
public final class OrderedId {
    private static final SecureRandom RANDOM = new SecureRandom();

    private OrderedId() {}

    /**
     * Makes an identifier.
     *
     * @return a fresh one; later than those of former milliseconds as far as the clock was not set back
     */
    public static UUID next() {
        return of(System.currentTimeMillis(), RANDOM.nextLong(), RANDOM.nextLong());
    }

    /**
     * Puts an identifier together.
     *
     * @param millisecond milliseconds since 1970, the lowest 48 bits of it
     * @param first its lowest 12 bits follow the time
     * @param second its lowest 62 bits are the rest
     * @return the identifier
     */
    static UUID of(long millisecond, long first, long second) {
        long high = millisecond << 16 | 0x7000 | first & 0xFFF;
        long low = 1L << 63 | second & (1L << 62) - 1;
        return new UUID(high, low);
    }
}
