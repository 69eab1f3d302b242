-- Lives of parts from before the bench wrote them down, taken over by a manager; never changed.
create table past_part_life (
    id uuid primary key,
    tag varchar(16) not null references cabinet (tag),
    driver_model_code varchar(40) not null references driver_model (code),
    stored_at timestamp(6) with time zone not null,
    body_sha256 varchar(64) not null,
    body_json varchar(4000) not null
);
create index past_part_life_by_driver_model on past_part_life (driver_model_code);
