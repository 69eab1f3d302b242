package org.docksweep.service.site;

import java.nio.file.Path;
import java.time.ZoneId;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Settings of the house.
 *
 * @param dataDir folder of the database and the recordings
 * @param siteName name of the house, for sheets
 * @param timeZone IANA time zone of the house
 * @param portFile file the chosen port is written to once the service answers, or empty
 * @param tlsEndsAtProxy whether a proxy in front of the service ends TLS, so that it may listen beyond loopback
 */
@ConfigurationProperties("docksweep")
public record Site(
        Path dataDir,
        @DefaultValue("") String siteName,
        @DefaultValue("UTC") String timeZone,
        @DefaultValue("") String portFile,
        @DefaultValue("false") boolean tlsEndsAtProxy) {

    public Site {
        try {
            ZoneId.of(timeZone);
        } catch (java.time.DateTimeException e) {
            throw new IllegalArgumentException(
                    "docksweep.time-zone must be an IANA time zone like Europe/Lisbon, but is " + timeZone, e);
        }
    }

    /**
     * Time zone of the house.
     *
     * @return the zone
     */
    public ZoneId zone() {
        return ZoneId.of(timeZone);
    }
}
