-- Who stored a reference: the person signed on, or the kiosk; null for references older than this.
alter table point_reference add column stored_by varchar(120);
