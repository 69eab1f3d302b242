-- The fleet and its memory. Portable between H2 and PostgreSQL: no partial or expression indexes, no vendor types.
-- "At most one open ..." is a unique key over (thing, open_marker): the marker is true while open and null afterwards,
-- and nulls never collide.
-- *_json columns hold details that nothing queries inside.

create table driver_model (
    code varchar(40) primary key,
    body_json varchar(1000000) not null,
    version integer not null
);

create table cabinet_model (
    code varchar(40) primary key,
    name varchar(200) not null,
    body_json varchar(1000000) not null,
    version integer not null
);

create table point_reference (
    cabinet_model_code varchar(40) not null references cabinet_model (code),
    test_point_code varchar(40) not null,
    revision integer not null check (revision >= 1),
    unit_count integer not null check (unit_count >= 1),
    stored_at timestamp(6) with time zone not null,
    body_json varchar(1000000) not null,
    primary key (cabinet_model_code, test_point_code, revision)
);

create table limit_set (
    version integer primary key check (version >= 1),
    stored_at timestamp(6) with time zone not null,
    body_json varchar(10000) not null
);

create table cabinet (
    tag varchar(16) primary key,
    model_code varchar(40) not null references cabinet_model (code),
    shelf_place varchar(40),
    status varchar(20) not null
        check (status in ('READY', 'OUT', 'BENCH', 'SAFETY_HOLD', 'MANUAL_HOLD', 'MISSING', 'RETIRED')),
    watch boolean not null,
    version integer not null
);
create index cabinet_by_model on cabinet (model_code, status);

create table installation (
    id uuid primary key,
    tag varchar(16) not null references cabinet (tag),
    position_code varchar(40) not null,
    driver_model_code varchar(40) not null references driver_model (code),
    driver_serial varchar(80),
    diaphragm_serial varchar(80),
    diaphragm_source varchar(20) check (diaphragm_source in ('ORIGINAL', 'AFTERMARKET')),
    installed_on date,
    removed_at timestamp(6) with time zone,
    open_marker boolean check (open_marker),
    version integer not null,
    check ((open_marker is null and removed_at is not null) or (open_marker is not null and removed_at is null)),
    unique (tag, position_code, open_marker),
    unique (driver_model_code, driver_serial, open_marker)
);

create table history_event (
    id uuid primary key,
    tag varchar(16) not null references cabinet (tag),
    position_code varchar(40),
    happened_at timestamp(6) with time zone not null,
    done_by varchar(120) not null,
    kind varchar(20) not null,
    text_key varchar(120) not null,
    text_arguments_json varchar(4000) not null
);
create index history_event_by_cabinet on history_event (tag, happened_at, id);

create table return_list (
    id uuid primary key,
    order_number varchar(80) not null,
    customer varchar(200) not null,
    due_on date not null,
    stored_at timestamp(6) with time zone not null,
    closed_at timestamp(6) with time zone,
    body_sha256 varchar(64) not null,
    version integer not null
);
create index return_list_by_state on return_list (closed_at, due_on);

create table return_list_line (
    return_list_id uuid not null references return_list (id),
    line_number integer not null,
    tag varchar(16) not null references cabinet (tag),
    model_code varchar(40) not null references cabinet_model (code),
    primary key (return_list_id, line_number),
    unique (return_list_id, tag)
);
create index return_list_line_by_tag on return_list_line (tag);

create table dispatch (
    id uuid primary key,
    order_number varchar(80) not null,
    customer varchar(200) not null,
    out_on date not null,
    due_on date not null check (due_on >= out_on),
    body_sha256 varchar(64) not null
);
create index dispatch_by_out_date on dispatch (out_on);

create table dispatch_line (
    dispatch_id uuid not null references dispatch (id),
    line_number integer not null,
    model_code varchar(40) not null references cabinet_model (code),
    unit_count integer not null check (unit_count >= 1),
    primary key (dispatch_id, line_number)
);

create table check_in (
    id uuid primary key,
    tag varchar(16) not null references cabinet (tag),
    model_code varchar(40) not null references cabinet_model (code),
    return_list_id uuid references return_list (id),
    kiosk_id varchar(80) not null,
    operator varchar(120) not null,
    started_at timestamp(6) with time zone not null,
    finished_at timestamp(6) with time zone not null check (finished_at >= started_at),
    received_at timestamp(6) with time zone not null,
    visual_damage_json varchar(1000) not null,
    verdict varchar(20) check (verdict in ('PASS', 'FAIL', 'SWEEP_AGAIN')),
    route varchar(20) not null check (route in ('SHELF', 'BENCH', 'SAFETY_HOLD', 'MANUAL_HOLD')),
    watch boolean not null,
    reason_json varchar(4000) not null,
    fault_position_code varchar(40),
    suspects_json varchar(1000000) not null,
    printed_job_code varchar(10),
    judge_version varchar(40),
    limits_version integer not null,
    body_sha256 varchar(64) not null,
    status_after varchar(20) not null,
    bench_job_code varchar(10),
    joined_open_job boolean not null,
    check ((route = 'BENCH' and printed_job_code is not null) or (route <> 'BENCH' and printed_job_code is null))
);
create index check_in_by_cabinet on check_in (tag, finished_at);
create index check_in_by_return_list on check_in (return_list_id);
create index check_in_by_time on check_in (finished_at);

create table check_in_position (
    check_in_id uuid not null references check_in (id),
    line_number integer not null,
    position_code varchar(40) not null,
    driver_model_code varchar(40),
    state varchar(20) not null check (state in ('OK', 'WATCH', 'FAULT', 'NOT_JUDGED')),
    word_json varchar(4000),
    headline varchar(200),
    primary key (check_in_id, line_number),
    unique (check_in_id, position_code)
);

create table measurement (
    id uuid primary key,
    check_in_id uuid not null references check_in (id),
    line_number integer not null,
    taken_at timestamp(6) with time zone not null,
    attempt integer not null check (attempt >= 1),
    recording_sha256 varchar(64),
    ambient_celsius double precision,
    test_point_code varchar(40) not null,
    verdict varchar(20) not null check (verdict in ('PASS', 'FAIL', 'SWEEP_AGAIN')),
    unique (check_in_id, line_number)
);
create index measurement_by_recording on measurement (recording_sha256);

-- Apart from the header, so that lists of measurements never read curves.
create table measurement_curve (
    measurement_id uuid primary key references measurement (id),
    judgement_json varchar(1000000) not null
);

create table bench_job (
    code varchar(10) primary key,
    tag varchar(16) not null references cabinet (tag),
    model_code varchar(40) not null references cabinet_model (code),
    state varchar(20) not null check (state in ('WAITING', 'ACCEPTED', 'WAITING_FOR_PART', 'IN_REPAIR', 'PROVING',
        'SIGNED_OFF', 'SCRAPPED', 'RETURNED_UNREPAIRED')),
    opened_at timestamp(6) with time zone not null,
    fault_position_code varchar(40),
    reason_json varchar(4000) not null,
    suspects_json varchar(1000000) not null,
    open_marker boolean check (open_marker),
    version integer not null,
    check ((open_marker is null) = (state in ('SIGNED_OFF', 'SCRAPPED', 'RETURNED_UNREPAIRED'))),
    constraint one_open_job_per_cabinet unique (tag, open_marker)
);

-- Every code ever printed on a tag, and the job it leads to.
create table bench_job_code (
    printed_code varchar(10) primary key,
    job_code varchar(10) not null references bench_job (code)
);

create table bench_job_check_in (
    check_in_id uuid primary key,
    job_code varchar(10) not null references bench_job (code),
    finished_at timestamp(6) with time zone not null
);
create index bench_job_check_in_by_job on bench_job_check_in (job_code, finished_at);

create table commissioning (
    id uuid primary key,
    tag varchar(16) not null references cabinet (tag),
    taken_at timestamp(6) with time zone not null,
    operator varchar(120) not null,
    body_sha256 varchar(64) not null
);

create table baseline (
    commissioning_id uuid not null references commissioning (id),
    test_point_code varchar(40) not null,
    tag varchar(16) not null references cabinet (tag),
    taken_at timestamp(6) with time zone not null,
    body_json varchar(1000000) not null,
    primary key (commissioning_id, test_point_code)
);
create index baseline_by_cabinet on baseline (tag, test_point_code, taken_at);

-- Tokens are kept as hashes only.
create table access_token (
    sha256 varchar(64) primary key,
    name varchar(80) not null,
    role varchar(20) not null check (role in ('DOCK', 'MANAGER', 'SETUP')),
    issued_by varchar(80) not null,
    issued_at timestamp(6) with time zone not null,
    revoked_at timestamp(6) with time zone,
    open_marker boolean check (open_marker),
    version integer not null,
    check ((open_marker is null and revoked_at is not null) or (open_marker is not null and revoked_at is null)),
    unique (name, open_marker)
);
