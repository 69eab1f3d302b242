-- When the periodic electrical safety test of a powered cabinet is due; local rules decide. Null where nobody said.
alter table cabinet add column safety_test_due date;
