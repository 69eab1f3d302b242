package org.docksweep.service.people;

import org.docksweep.service.web.Check;

/**
 * What a PIN must be. Six digits at least, as NIST SP 800-63B asks of randomly chosen ones; since people choose these
 * themselves, what is tried first is refused, and wrong tries are slowed down and counted.
 */
final class PinRules {
    private static final String UP = "01234567890123456789";
    private static final String DOWN = "98765432109876543210";

    private PinRules() {}

    static void check(String pin, String badge) {
        boolean digits = pin != null && pin.matches("[0-9]{6,12}");
        new Check()
                .that(digits, "pin", "must be 6 to 12 digits")
                .that(
                        !digits || pin.chars().distinct().count() > 2,
                        "pin",
                        "has only one or two different digits; choose another")
                .that(
                        !digits || !(UP.contains(pin) || DOWN.contains(pin)),
                        "pin",
                        "counts straight up or down; choose another")
                .that(!digits || !badge.contains(pin), "pin", "stands on the badge; choose another")
                .refuseIfWrong();
    }
}
