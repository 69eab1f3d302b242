package org.docksweep.demo;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.DemoHouseProvider;

/** Publishes {@link MarramCoastHire} to whoever looks for a demo house; the night is the day it is asked
 * for, in the time zone of the house. */
public final class MarramCoastHireProvider implements DemoHouseProvider {
    private final Clock clock;

    /** For {@link java.util.ServiceLoader}. */
    public MarramCoastHireProvider() {
        this(Clock.systemUTC());
    }

    MarramCoastHireProvider(Clock clock) {
        this.clock = clock;
    }

    @Override
    public DemoHouse house(long seed) {
        return MarramCoastHire.of(seed, LocalDate.now(clock.withZone(ZoneId.of(MarramCoastHire.TIME_ZONE))))
                .papers();
    }
}
