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
    /** Part: keys on other labels of a cabinet. */
    public static final String ASSET_KEYS = "/asset-keys";
    /** {@code /{tag}/safety-test} PUT {@link SafetyTest} gives {@link CabinetBody}. */
    public static final String SAFETY_TEST = "/safety-test";
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
    /**
     * GET {@link Page} of {@link BenchJobBody}, most urgent first ({@code ?tag=} of one cabinet, when its tag cannot be
     * read as a code); {@code /{code}} GET. PUT below it answers with the job
     * as it is afterwards: {@code /{code}/actions/{id}} {@link BenchActionBody}, {@code /{code}/findings/{id}}
     * {@link FindingBody}, {@code /{code}/exchanges/{id}} {@link PartExchangeBody}, {@code /{code}/ticks/{id}}
     * {@link StepTickBody}, {@code /{code}/proofs/{id}} {@link ProofSweepBody}.
     */
    public static final String BENCH_JOBS = API + "/bench-jobs";
    /** {@code /{code}/actions/{id}} PUT. */
    public static final String ACTIONS = "/actions";
    /** {@code /{code}/findings/{id}} PUT. */
    public static final String FINDINGS = "/findings";
    /** {@code /{code}/exchanges/{id}} PUT. */
    public static final String EXCHANGES = "/exchanges";
    /** {@code /{code}/ticks/{id}} PUT. */
    public static final String TICKS = "/ticks";
    /** {@code /{code}/proofs/{id}} PUT. */
    public static final String PROOFS = "/proofs";
    /** {@code /{code}/file} GET {@link BenchJobFile}. */
    public static final String FILE = "/file";
    /** {@code /{code}/evidence} GET {@link JobEvidence}, or PDF. */
    public static final String EVIDENCE = "/evidence";
    /**
     * {@code /{purpose}} GET the generic {@link org.docksweep.fleet.ProcedureCard}; {@code /{purpose}/{driverModel}} the
     * one with the numbers of a driver model. Both also as PDF; with {@code ?job=} the PDF names the job.
     */
    public static final String PROCEDURES = API + "/procedures";
    /** GET list of {@link org.docksweep.fleet.DriverBenchData}; {@code /{driverModel}} GET, PUT (manager). */
    public static final String DRIVER_BENCH_DATA = API + "/driver-bench-data";
    /**
     * GET list; {@code /{driverModel}} GET, PUT {@link org.docksweep.gate.PointReference} of the bare driver, with the
     * codes of {@link org.docksweep.fleet.BareDriver}.
     */
    public static final String DRIVER_REFERENCES = API + "/driver-references";
    /**
     * GET list of {@link PartStock} ({@code ?fits=driverModel} only those that fit); {@code /{number}} GET, PUT
     * {@link org.docksweep.fleet.Part} (manager).
     */
    public static final String PARTS = API + "/parts";
    /** {@code /{number}/fit?tag=&position=&element=} GET {@link FitAnswer}. */
    public static final String FIT = "/fit";
    /** {@code /{number}/moves} GET {@link Page} of {@link StockMove}, newest first. */
    public static final String MOVES = "/moves";
    /** {@code /{id}} PUT {@link StockMoveBody} gives {@link PartStock}. */
    public static final String STOCK_MOVES = API + "/stock-moves";
    /** GET {@link OrderList}, or PDF. */
    public static final String PART_ORDERS = API + "/part-orders";
    /** {@code /{id}} PUT {@link SpareRepairBody} gives the {@link org.docksweep.fleet.Part} repaired. */
    public static final String SPARE_REPAIRS = API + "/spare-repairs";
    /**
     * GET {@link Timeline} of a cabinet ({@code ?tag=}), a position ({@code ?tag=&position=}), a driver unit
     * ({@code ?driverModel=&driverSerial=}) or a diaphragm ({@code ?driverModel=&diaphragmSerial=}).
     */
    public static final String TIMELINES = API + "/timelines";
    /** GET list of {@link PartLife}, all moving parts ever fitted ({@code ?driverModel=} of one driver model). */
    public static final String PART_LIVES = API + "/part-lives";
    /** GET list; {@code /{model}/{testPoint}} GET, PUT {@link org.docksweep.gate.PointReference}. */
    public static final String REFERENCES = API + "/references";
    /** {@code /{id}} PUT {@link CommissioningBody}: an outgoing sweep becomes the cabinet's baseline. */
    public static final String COMMISSIONINGS = API + "/commissionings";
    /**
     * GET list of {@link TaughtPoint}; {@code /{model}} PUT {@link LessonBody} (manager): model and references at once.
     */
    public static final String LESSONS = API + "/lessons";
    /**
     * GET {@link org.docksweep.gate.LimitSet} in force; {@code /{version}} GET, PUT the next one (manager), which is in force from then
     * on.
     */
    public static final String LIMITS = API + "/limits";
    /** POST {@link LimitRehearsal.Order} gives {@link LimitRehearsal}, or its changes as text/csv; stores nothing. */
    public static final String LIMIT_REHEARSALS = API + "/limit-rehearsals";
    /** GET {@link KioskSnapshot} with ETag: everything a kiosk needs to work without a network. */
    public static final String KIOSK_SNAPSHOT = API + "/kiosk-snapshot";

    /** What changed since a kiosk's copy of the fleet: {@code ?since=} the time it was true. */
    public static final String KIOSK_CHANGES = API + "/kiosk-changes";
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
    /**
     * GET {@link Page} of {@link BoardEvent} ({@code ?after=} the {@code next} of the answer before), or as
     * text/event-stream.
     */
    public static final String BOARD_EVENTS = API + "/board-events";
    /** GET {@link RetentionReport} of what is past its time; POST removes it (manager). */
    public static final String RETENTION = API + "/retention";
    /**
     * GET {@link ReliabilityReport}, or as text/csv, or as PDF ({@code ?driverModel=} of one driver model): how long parts
     * last.
     */
    public static final String RELIABILITY = API + "/reliability";
    /** POST a list of {@link PastPartLife}, idempotent by their ids, all or nothing; gives {@link ImportReceipt}. */
    public static final String PAST_PART_LIVES = API + "/past-part-lives";
    /** GET list of {@link DriftRow}: cabinets on their way out; {@code /{tag}} GET all quantities of one cabinet. */
    public static final String DRIFT_WATCH = API + "/drift-watch";
    /** GET {@link MatchedSet} ({@code ?model=&count=}): cabinets on the shelf that agree best; a pair unless a count is given. */
    public static final String MATCHED_SETS = API + "/matched-sets";
    /** GET {@link LearnedPriors}. */
    public static final String LEARNED_PRIORS = API + "/learned-priors";
    /** GET list of {@link LearningDecision}, newest first; {@code /{id}} PUT (manager). */
    public static final String LEARNING_DECISIONS = API + "/learning-decisions";
    /** GET {@link DockConfusion}. */
    public static final String DOCK_CONFUSION = API + "/dock-confusion";
    /** GET, unauthenticated: liveness for scripts. */
    public static final String HEALTH = "/actuator/health";

    private ApiPaths() {}
}
