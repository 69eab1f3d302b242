package org.docksweep.service.kiosks;

import java.util.List;

/**
 * What a copy of the fleet was made of, as its entity tag says it.
 *
 * @param whole of all of it
 * @param models of cabinet and driver models
 * @param references of the references
 * @param labels of the labels beside the asset tags
 */
record Fingerprint(String whole, String models, String references, String labels) {
    private static final Fingerprint UNKNOWN = new Fingerprint("", "", "", "");

    String etag() {
        return "W/\"" + String.join(".", whole, models, references, labels) + '"';
    }

    /** Reads an entity tag; one that is not from here is of a copy of which nothing is known. */
    static Fingerprint of(String etag) {
        if (etag == null) {
            return UNKNOWN;
        }
        List<String> parts = List.of(etag.replaceAll("^W/|\"", "").split("\\.", -1));
        return parts.size() == 4 ? new Fingerprint(parts.get(0), parts.get(1), parts.get(2), parts.get(3)) : UNKNOWN;
    }
}
