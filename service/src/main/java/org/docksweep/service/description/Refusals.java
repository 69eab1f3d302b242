package org.docksweep.service.description;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.ProblemTypes;

/**
 * Which problem types an operation answers with, by status. Most follow from what an operation is: whether it has a body,
 * names a thing in its address, or writes. The rest is named here. {@code Fuzz} fails on an answer that is not in it.
 */
final class Refusals {
    private static final Map<String, Kind> KINDS = new LinkedHashMap<>();

    /** What is said of a type in the description. */
    record Kind(int status, String title, String words) {}

    static {
        kind(ProblemTypes.BAD_FIELD, 400, "Wrong value", "A field or parameter has a wrong value; field names it.");
        kind(ProblemTypes.UNREADABLE, 400, "Cannot be read", "The request cannot be read at all.");
        kind(
                ProblemTypes.IMPORT_ERRORS,
                400,
                "Import has errors",
                "Lines of the file are wrong; errors names each. Nothing was stored.");
        kind(ProblemTypes.NOT_SIGNED_ON, 401, "Not signed on", "No token was sent, or one that is not known.");
        kind(ProblemTypes.WRONG_BADGE_OR_PIN, 401, "Not signed on", "Badge or PIN is wrong; never says which.");
        kind(ProblemTypes.NOT_ALLOWED, 403, "Not allowed", "The role of the token does not allow this.");
        kind(ProblemTypes.NOT_FOUND, 404, "Not found", "What is asked for does not exist; field names the parameter.");
        kind(
                ProblemTypes.ID_REUSED,
                409,
                "Id used before",
                "The id was used before with another body; what is stored stays.");
        kind(ProblemTypes.WRONG_STATE, 409, "Not possible now", "The state of the thing does not allow this now.");
        kind(
                ProblemTypes.PART_DOES_NOT_FIT,
                409,
                "Part does not fit",
                "The part does not fit the place; nothing was booked.");
        kind(
                ProblemTypes.NOT_PROVED,
                409,
                "Not proved",
                "The job cannot be signed off yet; errors names what its proof lacks.");
        kind(ProblemTypes.TOO_LARGE, 413, "Too large", "The body is larger than allowed.");
        kind(ProblemTypes.UNSUPPORTED, 406, "Not supported", "This path has no answer in the media type asked for.");
        kind(ProblemTypes.TOO_MANY_TRIES, 429, "Too many tries", "Wrong tries too often; Retry-After says when.");
        kind(
                ProblemTypes.DEFECT,
                500,
                "Defect of the service",
                "A defect of the service; the log knows the request id.");
        kind(ProblemTypes.TRY_LATER, 503, "Try again later", "No room for this now; Retry-After says when.");
    }

    private Refusals() {}

    private static void kind(String type, int status, String title, String words) {
        KINDS.put(type, new Kind(status, title, words));
    }

    static Kind of(String type) {
        return KINDS.get(type);
    }

    static Set<String> types() {
        return KINDS.keySet();
    }

    /**
     * Types by status.
     *
     * @param method method in capitals
     * @param path path as described, with braces
     * @param hasBody whether it takes a body
     */
    static Map<Integer, List<String>> of(String method, String path, boolean hasBody) {
        Map<Integer, List<String>> types = new TreeMap<>();
        add(types, 400, ProblemTypes.BAD_FIELD, ProblemTypes.UNREADABLE);
        add(types, 401, ProblemTypes.NOT_SIGNED_ON);
        add(types, 403, ProblemTypes.NOT_ALLOWED);
        add(types, 406, ProblemTypes.UNSUPPORTED);
        add(types, 500, ProblemTypes.DEFECT);
        if (path.contains("{") || hasBody || path.equals(ApiPaths.TIMELINES) || path.equals(ApiPaths.MATCHED_SETS)) {
            add(types, 404, ProblemTypes.NOT_FOUND);
        }
        if (hasBody || method.equals("PUT")) {
            add(types, 413, ProblemTypes.TOO_LARGE);
        }
        if (!method.equals("GET")) {
            // Also where no body is read: a wildcard for its type is refused before anybody looks at the address.
            add(types, 415, ProblemTypes.UNSUPPORTED);
            add(types, 409, ProblemTypes.ID_REUSED, ProblemTypes.WRONG_STATE);
            add(types, 503, ProblemTypes.TRY_LATER);
        }
        if (path.endsWith("/import") || path.equals(ApiPaths.PAST_PART_LIVES)) {
            add(types, 400, ProblemTypes.IMPORT_ERRORS);
        }
        if (path.startsWith(ApiPaths.BENCH_JOBS) && !method.equals("GET")) {
            add(types, 409, ProblemTypes.PART_DOES_NOT_FIT, ProblemTypes.NOT_PROVED);
        }
        if (path.equals(ApiPaths.SIGN_ONS)) {
            add(types, 401, ProblemTypes.WRONG_BADGE_OR_PIN);
            add(types, 429, ProblemTypes.TOO_MANY_TRIES);
        }
        if (path.equals(ApiPaths.BOARD_EVENTS)) {
            add(types, 503, ProblemTypes.TRY_LATER);
        }
        return types;
    }

    private static void add(Map<Integer, List<String>> types, int status, String... more) {
        types.computeIfAbsent(status, s -> new ArrayList<>()).addAll(List.of(more));
    }
}
