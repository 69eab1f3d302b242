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
 */
public record PaperContext(
        String siteName, ZoneId zone, Locale locale, String printedBy, Instant printedAt, String softwareVersion) {}
