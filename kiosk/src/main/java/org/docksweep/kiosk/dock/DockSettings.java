package org.docksweep.kiosk.dock;

import java.time.Duration;
import java.util.Locale;
import java.util.function.Supplier;
import org.docksweep.fleet.Require;

/**
 * Settings of this dock.
 *
 * @param kioskId name of the kiosk
 * @param kioskNumber its number, 1 to 99, part of every job code
 * @param signedOn who is signed on now; asked whenever something is recorded
 * @param locale language of places in words
 * @param answerStays how long an answer stays before a cabinet that was scanned meanwhile takes its place
 */
public record DockSettings(
        String kioskId, int kioskNumber, Supplier<String> signedOn, Locale locale, Duration answerStays) {
    /** Long enough to read one word and the route from three metres; common practice, no source. */
    public static final Duration USUAL_ANSWER_STAYS = Duration.ofSeconds(4);

    public DockSettings {
        Require.text("kiosk id", kioskId);
        Require.inRange("kiosk number", kioskNumber, 1, 99);
        if (signedOn == null) {
            throw new IllegalArgumentException("dock settings: who is signed on must be known");
        }
    }

    /**
     * Settings with one person for good.
     *
     * @param kioskId name of the kiosk
     * @param kioskNumber its number, 1 to 99, part of every job code
     * @param operator the person
     * @param locale language of places in words
     * @param answerStays how long an answer stays before a cabinet that was scanned meanwhile takes its place
     */
    public DockSettings(String kioskId, int kioskNumber, String operator, Locale locale, Duration answerStays) {
        this(kioskId, kioskNumber, always(operator), locale, answerStays);
    }

    private static Supplier<String> always(String operator) {
        Require.text("operator", operator);
        return () -> operator;
    }

    /**
     * Person signed on now.
     *
     * @return a name
     */
    public String operator() {
        return signedOn.get();
    }
}
