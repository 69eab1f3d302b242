package org.docksweep.service.store;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** JSON as it stands in columns and under hashes: members in alphabetical order, so that equal values give equal text. */
public final class StoredJson {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
            .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
            .build();

    private StoredJson() {}

    /**
     * The value as text.
     *
     * @param value a contract record, a list of them, or null
     * @return JSON
     */
    public static String write(Object value) {
        return MAPPER.writeValueAsString(value);
    }

    /**
     * The value of a stored text.
     *
     * @param json text made by {@link #write}
     * @param type its type
     * @param <T> its type
     * @return the value, or null for null
     */
    public static <T> T read(String json, Class<T> type) {
        return json == null ? null : MAPPER.readValue(json, type);
    }

    /**
     * The value of a stored text.
     *
     * @param json text made by {@link #write}
     * @param type its type
     * @param <T> its type
     * @return the value, or null for null
     */
    public static <T> T read(String json, TypeReference<T> type) {
        return json == null ? null : MAPPER.readValue(json, type);
    }

    /**
     * SHA-256 of the value's text: equal for equal values, whatever order their members came in.
     *
     * @param value a contract record whose instants were cut with {@link #cut} and whose sets are sorted
     * @return 64 hex digits
     */
    public static String sha256(Object value) {
        return sha256(write(value).getBytes(StandardCharsets.UTF_8));
    }

    /**
     * SHA-256 of bytes.
     *
     * @param bytes bytes
     * @return 64 hex digits in lower case
     */
    public static String sha256(byte[] bytes) {
        return HexFormat.of().formatHex(newSha256().digest(bytes));
    }

    /**
     * A SHA-256 digest.
     *
     * @return a new digest
     */
    public static MessageDigest newSha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256, but this one does not", e);
        }
    }

    /**
     * The instant as databases keep it: cut to microseconds. Bodies are compared after this, because some clocks give
     * nanoseconds and no database here keeps them.
     *
     * @param instant instant, or null
     * @return the instant cut, or null
     */
    public static Instant cut(Instant instant) {
        return instant == null ? null : instant.truncatedTo(ChronoUnit.MICROS);
    }
}
