package org.docksweep.service.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.springframework.stereotype.Component;

/** Checks instants that people and kiosks send against the clock of the service. */
@Component
public class Times {
    /** How far the clock of a kiosk may run ahead. */
    private static final Duration AHEAD = Duration.ofMinutes(10);

    private final Clock clock;

    Times(Clock clock) {
        this.clock = clock;
    }

    /**
     * The time, cut to what databases keep.
     *
     * @return now
     */
    public Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    /**
     * Notes an error unless an instant is there and has come.
     *
     * @param instant instant, may be null
     * @param field path into the body
     * @param check takes the error
     */
    public void notInFuture(Instant instant, String field, Check check) {
        check.present(instant, field);
        if (instant != null) {
            Instant now = now();
            check.that(
                    !instant.isAfter(now.plus(AHEAD)),
                    field,
                    "is " + instant + ", in the future: it is " + now + " now. Check date and clock of the sender");
        }
    }
}
