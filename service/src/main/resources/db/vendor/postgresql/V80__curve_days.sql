-- The day (UTC) the service received a curve, for retention; the table in partitions by month, since curves are nearly
-- all there is to store. Headers stay whole: a partition key would enter their unique keys. That a measurement has one
-- curve follows from its header, which is stored in the same transaction. Partitions of months are made by the service
-- (CurvePartitions); what belongs to none waits in the rest.
alter table measurement_curve rename to measurement_curve_before;
create table measurement_curve (
    measurement_id uuid not null references measurement (id),
    stored_on date not null,
    judgement_json varchar(1000000) not null,
    primary key (measurement_id, stored_on)
) partition by range (stored_on);
create table measurement_curve_rest partition of measurement_curve default;
insert into measurement_curve (measurement_id, stored_on, judgement_json)
    select c.measurement_id, cast(i.received_at at time zone 'UTC' as date), c.judgement_json
    from measurement_curve_before c join measurement m on m.id = c.measurement_id join check_in i on i.id = m.check_in_id;
drop table measurement_curve_before;
