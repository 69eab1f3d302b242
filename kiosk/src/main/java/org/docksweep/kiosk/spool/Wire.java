package org.docksweep.kiosk.spool;

import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.json.JsonMapper;

/** The JSON the kiosk writes and reads: the contract's records, numbers never localised, instants in ISO 8601. */
public final class Wire {
    private static final ObjectMapper JSON = JsonMapper.builder().build();

    private Wire() {}

    /**
     * The mapper.
     *
     * @return the shared mapper; it is immutable
     */
    public static ObjectMapper json() {
        return JSON;
    }
}
