package org.docksweep.contract;

/** Paths of the REST interface. {@code PUT} is idempotent: first 201, same again 200, same id with another body 409. */
public final class ApiPaths {
    /** Root of everything. */
    public static final String API = "/api";
    /** GET, PUT the whole {@link org.docksweep.fleet.ModelBook}; PUT merges by code. */
    public static final String MODEL_BOOK = API + "/model-book";
    /** GET {@link Page} of {@link CabinetBody}; {@code /{tag}} GET, PUT. */
    public static final String CABINETS = API + "/cabinets";
    /** POST text/csv; all or nothing. */
    public static final String CABINETS_IMPORT = CABINETS + "/import";
    /**
     * {@code /{tag}/history} GET {@link Page} of {@link HistoryEvent}, newest first; POST a list of past events of the
     * cabinet, idempotent by their ids.
     */
    public static final String HISTORY = "/history";
    /** GET {@link Page} of {@link ReturnList}; {@code /{id}} GET, PUT; {@code /{id}/report} GET. */
    public static final String RETURN_LISTS = API + "/return-lists";
    /** POST text/csv; all or nothing. */
    public static final String RETURN_LISTS_IMPORT = RETURN_LISTS + "/import";
    /** {@code /{id}/report} GET {@link ReturnReport}. */
    public static final String REPORT = "/report";
    /** {@code /{id}/close} POST: what is still out becomes missing. */
    public static final String CLOSE = "/close";
    /** GET {@link Page} of {@link Dispatch}; {@code /{id}} GET, PUT. */
    public static final String DISPATCHES = API + "/dispatches";
    /** {@code /{id}} PUT {@link CheckInBody} gives {@link CheckInReceipt}; GET. */
    public static final String CHECK_INS = API + "/check-ins";
    /** {@code /{sha256}} PUT application/zip (WAV and sidecar); GET. */
    public static final String RECORDINGS = API + "/recordings";
    /** GET {@link Page} of {@link BenchJobBody}; {@code /{code}} GET. */
    public static final String BENCH_JOBS = API + "/bench-jobs";
    /** GET list; {@code /{model}/{testPoint}} GET, PUT {@link org.docksweep.gate.PointReference}. */
    public static final String REFERENCES = API + "/references";
    /** {@code /{id}} PUT {@link CommissioningBody}: an outgoing sweep becomes the cabinet's baseline. */
    public static final String COMMISSIONINGS = API + "/commissionings";
    /** GET {@link org.docksweep.gate.LimitSet} in force. */
    public static final String LIMITS = API + "/limits";
    /** GET {@link KioskSnapshot} with ETag: everything a kiosk needs to work without a network. */
    public static final String KIOSK_SNAPSHOT = API + "/kiosk-snapshot";
    /**
     * GET {@link Page} of {@link KioskToken.Issued}; POST {@link KioskToken.Order} gives {@link KioskToken};
     * {@code /{name}} DELETE revokes.
     */
    public static final String KIOSK_TOKENS = API + "/kiosk-tokens";
    /** {@code /{name}/rotate} POST gives a new {@link KioskToken}; the one before ends some minutes later. */
    public static final String ROTATE = "/rotate";
    /** GET {@link Page} of {@link Person}; {@code /{id}} GET, PUT; a PUT changes, except a person's id. */
    public static final String PEOPLE = API + "/people";
    /** {@code /{id}/pin} PUT {@link Person.Pin}: ends the person's sign-ons and opens the account. */
    public static final String PIN = "/pin";
    /** POST {@link SignOn.Order} gives {@link SignOn}. */
    public static final String SIGN_ONS = API + "/sign-ons";
    /** DELETE ends the sign-on whose token is sent. */
    public static final String CURRENT_SIGN_ON = SIGN_ONS + "/current";
    /** GET {@link Page} of {@link AuditEntry}, oldest first. */
    public static final String AUDIT = API + "/audit";
    /** GET text/csv: all of it. */
    public static final String AUDIT_EXPORT = AUDIT + "/export";
    /** GET {@link FleetStatus}. */
    public static final String FLEET_STATUS = API + "/fleet-status";
    /** GET application/zip: everything, re-importable; {@code ?recordings=true} with the recordings. */
    public static final String EXPORT = API + "/export";
    /** GET, unauthenticated: liveness for scripts. */
    public static final String HEALTH = "/actuator/health";

    private ApiPaths() {}
}
