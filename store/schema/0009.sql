-- Version 9 keeps what a placement of the plan on a floor has to keep to and what counts
-- in it: how the plan may be turned, which sides of the room may be the front (each as
-- the direction out through its walls), and what a metre of an element counts, where
-- zero is what its use says.

ALTER TABLE floor ADD COLUMN angle_rule     TEXT NOT NULL DEFAULT '';
ALTER TABLE floor ADD COLUMN angle_step_deg REAL NOT NULL DEFAULT 0;
ALTER TABLE floor ADD COLUMN area_counts    REAL NOT NULL DEFAULT 0 CONSTRAINT "What playing area counts must not be negative." CHECK (area_counts >= 0);
ALTER TABLE floor ADD COLUMN sight_counts   REAL NOT NULL DEFAULT 0 CONSTRAINT "What sight counts must not be negative." CHECK (sight_counts >= 0);
ALTER TABLE element ADD COLUMN weight REAL NOT NULL DEFAULT 0;

CREATE TABLE front (
  floor       TEXT NOT NULL REFERENCES floor ON DELETE CASCADE,
  id          TEXT NOT NULL,
  toward_rad  REAL NOT NULL,
  seq         REAL NOT NULL,
  PRIMARY KEY (floor, id)
) STRICT;
