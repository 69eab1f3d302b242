package org.docksweep.service.web;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.unit.DataSize;

/**
 * Largest bodies accepted.
 *
 * @param json JSON bodies, 16 MB by default: a check-in of twelve sweeps with curves is about 2 MB
 * @param csv imports, 16 MB by default: 100,000 lines are about 6 MB
 * @param recording recordings, 64 MB by default: 12 s of four channels at 96 kHz and 24 bit are about 14 MB
 */
@ConfigurationProperties("docksweep.limits")
record BodyLimits(
        @DefaultValue("16MB") DataSize json,
        @DefaultValue("16MB") DataSize csv,
        @DefaultValue("64MB") DataSize recording) {

    /**
     * Limit for a content type.
     *
     * @param contentType content type of the request, or null
     * @return bytes
     */
    long bytesFor(String contentType) {
        String type = contentType == null ? "" : contentType;
        if (type.startsWith("text/csv")) {
            return csv.toBytes();
        }
        return type.startsWith("application/zip") ? recording.toBytes() : json.toBytes();
    }
}
