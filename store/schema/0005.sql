-- Version 5 keeps more of the room as it is: doors, windows, mirrors, sockets, seams
-- and areas of the floor; which way its boards or tiles run and how wide they are; and
-- the ways that a person must get along. opens says how a door does. A way begins and
-- ends at a thing of the floor, or where none is named at a place in floor axes.

ALTER TABLE floor ADD COLUMN board_direction_deg REAL NOT NULL DEFAULT 0;
ALTER TABLE floor ADD COLUMN board_module_m      REAL NOT NULL DEFAULT 0;

CREATE TABLE feature (
  floor   TEXT    NOT NULL REFERENCES floor,
  id      TEXT    NOT NULL,
  name    TEXT    NOT NULL,
  kind    TEXT    NOT NULL,
  opens   TEXT    NOT NULL,
  closed  INTEGER NOT NULL CHECK (closed IN (0, 1)),
  seq     REAL    NOT NULL,
  PRIMARY KEY (floor, id)
) STRICT;

CREATE TABLE feature_corner (
  floor    TEXT    NOT NULL,
  feature  TEXT    NOT NULL,
  seq      INTEGER NOT NULL,
  x_m      REAL    NOT NULL,
  y_m      REAL    NOT NULL,
  bulge    REAL    NOT NULL,
  PRIMARY KEY (floor, feature, seq),
  FOREIGN KEY (floor, feature) REFERENCES feature (floor, id) ON DELETE CASCADE
) STRICT;

CREATE TABLE way (
  floor       TEXT NOT NULL REFERENCES floor,
  id          TEXT NOT NULL,
  name        TEXT NOT NULL,
  kind        TEXT NOT NULL,
  from_thing  TEXT NOT NULL,
  from_x_m    REAL NOT NULL,
  from_y_m    REAL NOT NULL,
  to_thing    TEXT NOT NULL,
  to_x_m      REAL NOT NULL,
  to_y_m      REAL NOT NULL,
  width_m     REAL NOT NULL CONSTRAINT "A way must not be narrower than nothing." CHECK (width_m >= 0),
  seq         REAL NOT NULL,
  PRIMARY KEY (floor, id)
) STRICT;
