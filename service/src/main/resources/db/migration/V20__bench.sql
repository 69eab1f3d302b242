-- The bench: verbs and records of jobs, parts and stock, procedures, proofs. Portable as V1 is.

-- A new role. The constraint of a column has another name in every database, so the table is made anew.
create table access_token_with_bench (
    sha256 varchar(64) primary key,
    name varchar(80) not null,
    role varchar(20) not null check (role in ('DOCK', 'BENCH', 'MANAGER', 'SETUP')),
    issued_by varchar(80) not null,
    issued_at timestamp(6) with time zone not null,
    revoked_at timestamp(6) with time zone,
    open_marker boolean check (open_marker),
    version integer not null,
    check ((open_marker is null and revoked_at is not null) or (open_marker is not null and revoked_at is null)),
    unique (name, open_marker)
);
insert into access_token_with_bench (sha256, name, role, issued_by, issued_at, revoked_at, open_marker, version)
    select sha256, name, role, issued_by, issued_at, revoked_at, open_marker, version from access_token;
drop table access_token;
alter table access_token_with_bench rename to access_token;

alter table bench_job add column revision integer default 0 not null;
alter table bench_job add column bench varchar(80);
alter table bench_job add column held_by varchar(120);
alter table bench_job add column waits_for_part varchar(40);
alter table bench_job add column proof_from integer default 0 not null;
alter table bench_job add column closed_at timestamp(6) with time zone;

-- Everything done with a job, never changed. The job's revision counts these rows.
create table job_record (
    id uuid primary key,
    job_code varchar(10) not null references bench_job (code),
    sequence_number integer not null check (sequence_number >= 1),
    kind varchar(20) not null check (kind in ('ACTION', 'FINDING', 'EXCHANGE', 'TICK', 'PROOF')),
    happened_at timestamp(6) with time zone not null,
    stored_at timestamp(6) with time zone not null,
    done_by varchar(120) not null,
    token_name varchar(80) not null,
    body_json varchar(100000) not null,
    body_sha256 varchar(64) not null,
    unique (job_code, sequence_number)
);

-- Apart from the record, so that reading a job reads no curves. Belongs to a job record or to a spare repair's sweep.
create table proof_measurement (
    id uuid primary key,
    proof_id uuid not null,
    line_number integer not null,
    body_json varchar(1000000) not null,
    unique (proof_id, line_number)
);

-- What was confirmed, in columns: the priors of the gate and the reliability of parts are counted from here.
create table finding (
    id uuid primary key,
    job_code varchar(10) references bench_job (code),
    tag varchar(16) references cabinet (tag),
    model_code varchar(40) references cabinet_model (code),
    position_code varchar(40),
    element_id varchar(40),
    driver_model_code varchar(40) references driver_model (code),
    driver_serial varchar(80),
    happened_at timestamp(6) with time zone not null,
    done_by varchar(120) not null,
    cause varchar(40) not null,
    charge varchar(20) not null check (charge in ('OVERDRIVEN', 'WORN', 'TRANSPORT', 'UNKNOWN')),
    coil_resistance_ohm double precision check (coil_resistance_ohm >= 0),
    coil_open boolean not null
);
create index finding_by_job on finding (job_code);
create index finding_by_driver on finding (driver_model_code, happened_at);

create table part (
    number varchar(40) primary key,
    body_json varchar(20000) not null,
    in_stock integer not null check (in_stock >= 0),
    version integer not null
);

create table part_unit (
    part_number varchar(40) not null references part (number),
    serial varchar(80) not null,
    state varchar(20) not null check (state in ('IN_STOCK', 'AWAITING_REPAIR', 'FITTED', 'SCRAPPED')),
    repaired boolean not null,
    since timestamp(6) with time zone not null,
    diaphragm_part_number varchar(40),
    diaphragm_serial varchar(80),
    diaphragm_source varchar(20) check (diaphragm_source in ('ORIGINAL', 'AFTERMARKET')),
    diaphragm_fitted_on date,
    version integer not null,
    primary key (part_number, serial)
);
create index part_unit_by_diaphragm on part_unit (diaphragm_serial);

create table stock_move (
    id uuid primary key,
    part_number varchar(40) not null references part (number),
    happened_at timestamp(6) with time zone not null,
    stored_at timestamp(6) with time zone not null,
    done_by varchar(120) not null,
    kind varchar(20) not null check (kind in ('RECEIVED', 'COUNTED', 'SCRAPPED', 'FITTED', 'REPAIRED')),
    change_count integer not null,
    stock_after integer not null check (stock_after >= 0),
    job_code varchar(10) references bench_job (code),
    body_sha256 varchar(64) not null
);
create index stock_move_by_part on stock_move (part_number, stored_at);

alter table installation add column part_number varchar(40);
alter table installation add column fitted_by_job varchar(10);
alter table installation add column removed_by_job varchar(10);
create index installation_by_driver on installation (driver_model_code, driver_serial);
create index installation_by_diaphragm on installation (diaphragm_serial);

create table driver_bench_data (
    driver_model_code varchar(40) primary key references driver_model (code),
    body_json varchar(100000) not null,
    version integer not null
);

create table driver_reference (
    driver_model_code varchar(40) not null references driver_model (code),
    revision integer not null check (revision >= 1),
    unit_count integer not null check (unit_count >= 1),
    stored_at timestamp(6) with time zone not null,
    body_json varchar(1000000) not null,
    primary key (driver_model_code, revision)
);

-- What happened to a driver unit while it sat in no cabinet.
create table unit_event (
    id uuid primary key,
    driver_model_code varchar(40) not null references driver_model (code),
    driver_serial varchar(80) not null,
    happened_at timestamp(6) with time zone not null,
    done_by varchar(120) not null,
    kind varchar(20) not null,
    text_key varchar(120) not null,
    text_arguments_json varchar(4000) not null
);
create index unit_event_by_unit on unit_event (driver_model_code, driver_serial, happened_at);

create table spare_repair (
    id uuid primary key,
    part_number varchar(40) not null references part (number),
    driver_serial varchar(80) not null,
    happened_at timestamp(6) with time zone not null,
    stored_at timestamp(6) with time zone not null,
    done_by varchar(120) not null,
    token_name varchar(80) not null,
    body_json varchar(100000) not null,
    body_sha256 varchar(64) not null
);

-- A baseline that no longer holds because what it was measured on was exchanged. The baseline itself is kept.
create table baseline_end (
    tag varchar(16) not null references cabinet (tag),
    test_point_code varchar(40) not null,
    ended_at timestamp(6) with time zone not null,
    job_code varchar(10) not null references bench_job (code),
    primary key (tag, test_point_code, ended_at)
);
