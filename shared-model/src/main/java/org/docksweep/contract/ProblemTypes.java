package org.docksweep.contract;

/** Stable {@code type} values of RFC 9457 problem details. */
public final class ProblemTypes {
    private static final String BASE = "https://docksweep.invalid/problems/";
    /** 404: the thing named does not exist. */
    public static final String NOT_FOUND = BASE + "not-found";
    /** 409: the id was used before with another body. */
    public static final String ID_REUSED = BASE + "id-reused";
    /** 409: the state of the thing does not allow this now. */
    public static final String WRONG_STATE = BASE + "wrong-state";
    /** 409: the part does not fit the place; nothing was booked. */
    public static final String PART_DOES_NOT_FIT = BASE + "part-does-not-fit";
    /** 409: a job cannot be signed off yet; extension member {@code errors}: what its proof lacks. */
    public static final String NOT_PROVED = BASE + "not-proved";
    /** 400: a field has a wrong value; extension members {@code field} and {@code hint}. */
    public static final String BAD_FIELD = BASE + "bad-field";
    /** 400: the body cannot be read at all. */
    public static final String UNREADABLE = BASE + "unreadable";
    /** 400: an import has errors; extension member {@code errors}: list of line, column, message. Nothing was stored. */
    public static final String IMPORT_ERRORS = BASE + "import-errors";
    /** 413: the body is larger than allowed. */
    public static final String TOO_LARGE = BASE + "too-large";
    /** 405, 406, 415: this path does not offer the method or media type. */
    public static final String UNSUPPORTED = BASE + "unsupported";
    /** 401: no or unknown token. */
    public static final String NOT_SIGNED_ON = BASE + "not-signed-on";
    /** 403: the role does not allow this. */
    public static final String NOT_ALLOWED = BASE + "not-allowed";
    /** 401: badge or PIN is wrong; never says which. */
    public static final String WRONG_BADGE_OR_PIN = BASE + "wrong-badge-or-pin";
    /** 429: too many wrong tries; header {@code Retry-After} says when to try again, in seconds. */
    public static final String TOO_MANY_TRIES = BASE + "too-many-tries";
    /** 500: a defect of the service. */
    public static final String DEFECT = BASE + "defect";
    /** The service has no room for this now (status 503). */
    public static final String TRY_LATER = BASE + "try-later";

    private ProblemTypes() {}
}
