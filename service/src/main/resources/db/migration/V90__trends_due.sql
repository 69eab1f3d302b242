-- Check-ins whose readings have not been looked at yet: the look comes after the answer. A row goes once its cabinet's
-- warnings were replaced. Several services take them by locking the rows of a cabinet.
create table trend_due (
    check_in_id uuid primary key,
    tag varchar(16) not null
);
create index trend_due_by_cabinet on trend_due (tag);
