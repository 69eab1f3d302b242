-- When a row last changed, so that a kiosk is sent what changed since its copy instead of the whole fleet.
alter table cabinet add column changed_at timestamp(6) with time zone default current_timestamp not null;
alter table installation add column changed_at timestamp(6) with time zone default current_timestamp not null;
alter table baseline add column changed_at timestamp(6) with time zone default current_timestamp not null;
alter table baseline_end add column changed_at timestamp(6) with time zone default current_timestamp not null;
create index cabinet_by_change on cabinet (changed_at);
create index installation_by_change on installation (changed_at);
create index baseline_by_change on baseline (changed_at);
create index baseline_end_by_change on baseline_end (changed_at);
