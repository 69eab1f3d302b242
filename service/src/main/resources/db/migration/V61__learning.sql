-- What a manager decided about learning: whether findings are used at all, and single findings left out or taken in again.
-- Append-only; the newest decision about a thing holds.
create table learning_decision (
    id uuid primary key,
    decided_at timestamp(6) with time zone not null,
    decided_by varchar(120) not null,
    kind varchar(20) not null check (kind in ('USE', 'PAUSE', 'LEAVE_OUT', 'TAKE_IN')),
    finding_id uuid,
    why varchar(1000) not null,
    body_sha256 varchar(64) not null,
    check ((finding_id is null) = (kind in ('USE', 'PAUSE')))
);
create index learning_decision_by_finding on learning_decision (finding_id, decided_at);
