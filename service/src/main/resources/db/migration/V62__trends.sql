-- Readings of unspoiled measurements, taken out of the judgements so that a way can be seen without reading curves.
-- owner is a driver position, or empty where a reading belongs to the whole test point.
create table trend_reading (
    measurement_id uuid not null references measurement (id),
    line_number integer not null,
    tag varchar(16) not null references cabinet (tag),
    model_code varchar(40) not null references cabinet_model (code),
    test_point_code varchar(40) not null,
    owner varchar(40) not null,
    kind varchar(40) not null,
    taken_at timestamp(6) with time zone not null,
    reading_value double precision not null,
    primary key (measurement_id, line_number)
);
create index trend_reading_by_cabinet on trend_reading (tag, taken_at);
create index trend_reading_by_model on trend_reading (model_code, test_point_code, owner, kind, taken_at);

-- The newest word on each quantity that drifts; replaced at every check-in of its cabinet.
create table drift_warning (
    id uuid primary key,
    tag varchar(16) not null references cabinet (tag),
    last_at timestamp(6) with time zone not null,
    body_json varchar(4000) not null,
    version integer not null
);
create index drift_warning_by_cabinet on drift_warning (tag);
