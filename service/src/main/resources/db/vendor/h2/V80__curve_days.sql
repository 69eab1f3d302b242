-- The day (UTC) the service received a curve, for retention. PostgreSQL has the table in partitions by month.
alter table measurement_curve add column stored_on date;
update measurement_curve c set stored_on = (
    select cast(i.received_at at time zone 'UTC' as date)
    from measurement m join check_in i on i.id = m.check_in_id where m.id = c.measurement_id);
alter table measurement_curve alter column stored_on set not null;
create index measurement_curve_by_day on measurement_curve (stored_on);
