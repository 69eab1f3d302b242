package org.docksweep.kiosk.rig;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that stands until it is moved. */
public final class SteppingClock extends Clock {
    private volatile Instant now;

    SteppingClock() {
        this(Instant.parse("2026-05-08T19:00:00Z"));
    }

    /**
     * Makes a clock.
     *
     * @param now where it stands
     */
    public SteppingClock(Instant now) {
        this.now = now;
    }

    /**
     * Moves it.
     *
     * @param time by how much; negative for back
     */
    public void pass(Duration time) {
        now = now.plus(time);
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return this;
    }

    @Override
    public Instant instant() {
        return now;
    }
}
