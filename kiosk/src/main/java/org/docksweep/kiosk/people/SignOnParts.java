package org.docksweep.kiosk.people;

import java.time.Clock;
import java.time.Duration;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.docksweep.fleet.Require;

/**
 * What signing on works with. It closes none of these.
 *
 * @param office asks the service
 * @param book who is known here
 * @param clock time of day
 * @param ticksNs a clock that never jumps, in ns; for how long nobody touched anything
 * @param working whether the kiosk is at something that must not be locked away, such as a sweep
 * @param later takes scans that came while the kiosk was locked, one after the other
 * @param kioskName name in records that come about before anybody is signed on
 * @param settings settings
 */
public record SignOnParts(
        SignOnOffice office,
        PersonBook book,
        Clock clock,
        LongSupplier ticksNs,
        BooleanSupplier working,
        Consumer<String> later,
        String kioskName,
        Settings settings) {

    /**
     * Settings of signing on.
     *
     * @param lockAfter locks when nobody touched anything for so long; zero for never
     * @param badgePrefix what every badge of the house begins with and no cabinet does; empty when badges have nothing in common
     */
    public record Settings(Duration lockAfter, String badgePrefix) {
        /** Time to fetch a trolley, not to go home; common practice, no source. */
        public static final Duration USUAL_LOCK_AFTER = Duration.ofMinutes(10);

        /** As on the badges of the examples. */
        public static final String USUAL_BADGE_PREFIX = "B-";

        public Settings {
            if (lockAfter == null || badgePrefix == null) {
                throw new IllegalArgumentException("sign-on settings: both are needed");
            }
            Require.inRange("minutes until the kiosk locks", lockAfter.toSeconds() / 60.0, 0, 24 * 60);
            if (!badgePrefix.matches("[A-Za-z0-9_-]{0,20}")) {
                throw new IllegalArgumentException("badge prefix \"" + badgePrefix
                        + "\": expected at most 20 letters, digits, - or _, as every badge begins with");
            }
        }
    }
}
