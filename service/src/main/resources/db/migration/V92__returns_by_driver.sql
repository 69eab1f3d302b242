-- The first kiosk snapshot of a day counts the returns of every driver model over years: answered from these two indexes
-- alone, without reading the rows of half a million check-ins.
create index check_in_position_by_driver on check_in_position (check_in_id, driver_model_code);
drop index check_in_by_time;
create index check_in_by_time on check_in (finished_at, id);
