package org.docksweep.contract;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * An error of the service as RFC 9457 problem details, media type {@code application/problem+json}. Members that do
 * not apply are left out.
 *
 * @param type one of {@link ProblemTypes}
 * @param title what kind of problem, the same for every occurrence
 * @param status HTTP status
 * @param detail what is wrong this time
 * @param instance path that was asked for
 * @param field field concerned, as a path into the body or the name of a parameter, or null
 * @param hint what to do next, or null
 * @param errors all errors found, line by line, or null when there is but the one in {@code detail}
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Problem(
        String type,
        String title,
        int status,
        String detail,
        String instance,
        String field,
        String hint,
        List<Entry> errors) {

    /** Media type of problem details. */
    public static final String MEDIA_TYPE = "application/problem+json";

    /**
     * One of several errors.
     *
     * @param line line of the file, from 1, or null when the body has no lines
     * @param column column of the file or field of the body, or null when the whole line is concerned
     * @param message what is wrong and what was expected
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Entry(Integer line, String column, String message) {}
}
