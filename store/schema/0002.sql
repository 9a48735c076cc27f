-- Version 2 keeps the check measures that have been read. from_place and to_place
-- are labels of marks, or 'pivot 1' and 'pivot 2'; typed is the length as it was
-- typed. A mark may go and its readings stay, so that a label is no reference.

CREATE TABLE reading (
  id          TEXT NOT NULL PRIMARY KEY,
  floor       TEXT REFERENCES floor,
  from_place  TEXT NOT NULL,
  to_place    TEXT NOT NULL,
  read_m      REAL NOT NULL CONSTRAINT "A reading must not be shorter than nothing." CHECK (read_m >= 0),
  typed       TEXT NOT NULL,
  read_by     TEXT NOT NULL,
  read_on     TEXT NOT NULL,
  seq         REAL NOT NULL
) STRICT;
CREATE INDEX reading_floor ON reading (floor);
