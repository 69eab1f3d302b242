package org.docksweep.kiosk.settings;

import java.net.URI;
import java.util.Map;
import org.docksweep.fleet.Require;

/**
 * How a kiosk was set up.
 *
 * @param service address of the service
 * @param token token of this kiosk; never shown, never logged
 * @param number number of the kiosk, 1 to 99, part of every job code
 * @param rig rig to use, by the name of its provider
 * @param rigSettings settings of the rig
 * @param printer print queue for tags and sheets; null for a folder of PDF files
 * @param tones output on which every answer sounds and a person listens; null for none
 * @param theme DARK or LIGHT
 * @param scale size of everything, 0.5 to 4
 * @param language language tag
 * @param lockAfterMinutes locks after so many minutes without a touch, 0 to 1440; 0 for never
 * @param badgePrefix what every badge begins with
 * @param pinCountsDays how many days a PIN counts without the service after it was accepted by it, 1 to 31
 */
public record KioskSettings(
        URI service,
        String token,
        int number,
        String rig,
        Map<String, String> rigSettings,
        String printer,
        String tones,
        String theme,
        double scale,
        String language,
        double lockAfterMinutes,
        String badgePrefix,
        int pinCountsDays) {
    /** Longer than a holiday weekend, shorter than a notice period; common practice, no source. */
    public static final int USUAL_PIN_COUNTS_DAYS = 7;

    public KioskSettings {
        if (service == null) {
            throw new IllegalArgumentException("kiosk settings: the address of the service is needed");
        }
        Require.text("token of the kiosk", token);
        Require.inRange("number of the kiosk", number, 1, 99);
        Require.text("rig", rig);
        rigSettings = rigSettings == null ? Map.of() : Map.copyOf(rigSettings);
        Require.text("theme", theme);
        Require.inRange("scale", scale, 0.5, 4);
        Require.text("language", language);
        Require.inRange("minutes until the kiosk locks", lockAfterMinutes, 0, 24 * 60);
        if (badgePrefix == null) {
            throw new IllegalArgumentException("kiosk settings: the badge prefix is needed, and may be empty");
        }
        Require.inRange("days a PIN counts without the service", pinCountsDays, 1, 31);
    }

    /** Without the token. */
    @Override
    public String toString() {
        return "KioskSettings[service " + service + ", number " + number + ", rig " + rig + ", printer " + printer
                + "]";
    }
}
