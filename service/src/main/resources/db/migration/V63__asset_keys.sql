-- Keys of the GS1 system on labels beside the house's own tag. A row stays when its label is taken off, without a cabinet.
create table asset_key (
    key_value varchar(48) primary key,
    tag varchar(16) references cabinet (tag),
    version integer not null
);
create index asset_key_by_cabinet on asset_key (tag);
