package org.docksweep.service.people;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.stereotype.Component;

/**
 * Bounds wrong tries per kiosk, whatever the badges: against one PIN tried on many badges. Held in memory per instance;
 * the count per person is in the database. Kiosks are few, so the map stays small.
 */
@Component
class Tries {
    private static final int MOST = 20;
    private static final Duration PERIOD = Duration.ofMinutes(1);

    private final Map<String, Window> windows = new ConcurrentHashMap<>();
    private final Clock clock;

    Tries(Clock clock) {
        this.clock = clock;
    }

    private record Window(Instant since, int wrong) {}

    /** How long this kiosk must wait, or zero. */
    Duration wait(String kiosk) {
        Window window = windows.get(kiosk);
        Instant now = clock.instant();
        if (window == null
                || window.wrong() < MOST
                || !now.isBefore(window.since().plus(PERIOD))) {
            return Duration.ZERO;
        }
        return Duration.between(now, window.since().plus(PERIOD));
    }

    void wrong(String kiosk) {
        Instant now = clock.instant();
        windows.merge(
                kiosk,
                new Window(now, 1),
                (old, fresh) ->
                        now.isBefore(old.since().plus(PERIOD)) ? new Window(old.since(), old.wrong() + 1) : fresh);
    }
}
