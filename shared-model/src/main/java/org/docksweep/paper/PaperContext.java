package org.docksweep.paper;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;

/**
 * What stands in the foot of every paper and how it is said.
 *
 * @param siteName name of the house
 * @param zone time zone of the site
 * @param locale language
 * @param printedBy person
 * @param printedAt when
 * @param softwareVersion version of Docksweep
 * @param practice whether everything on it is invented, so that every page must say so
 */
public record PaperContext(
        String siteName,
        ZoneId zone,
        Locale locale,
        String printedBy,
        Instant printedAt,
        String softwareVersion,
        boolean practice) {

    /**
     * A paper of the real house.
     *
     * @param siteName name of the house
     * @param zone time zone of the site
     * @param locale language
     * @param printedBy person
     * @param printedAt when
     * @param softwareVersion version of Docksweep
     */
    public PaperContext(
            String siteName, ZoneId zone, Locale locale, String printedBy, Instant printedAt, String softwareVersion) {
        this(siteName, zone, locale, printedBy, printedAt, softwareVersion, false);
    }
}
