-- Version 6 keeps which marks somebody has seen to be worn, and which have been lifted
-- off the floor, each with who and when.

ALTER TABLE mark_progress ADD COLUMN worn_by   TEXT NOT NULL DEFAULT '';
ALTER TABLE mark_progress ADD COLUMN worn_on   TEXT NOT NULL DEFAULT '';
ALTER TABLE mark_progress ADD COLUMN lifted_by TEXT NOT NULL DEFAULT '';
ALTER TABLE mark_progress ADD COLUMN lifted_on TEXT NOT NULL DEFAULT '';
