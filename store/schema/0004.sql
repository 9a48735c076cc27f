-- Version 4 keeps a room as a tape has found it, beside the outline that follows:
-- walls in the order in which they are walked, lengths across, and lines along
-- which the floor changes its height. A place is a wall, for the corner where it
-- begins, or a measured point; either may go and the length stay, so that it is
-- no reference. A length of zero is a wall that was not measured.

CREATE TABLE measured_wall (
  floor     TEXT    NOT NULL REFERENCES floor,
  id        TEXT    NOT NULL,
  name      TEXT    NOT NULL,
  length_m  REAL    NOT NULL CONSTRAINT "A wall must not be shorter than nothing." CHECK (length_m >= 0),
  turn_deg  REAL    NOT NULL,
  square    INTEGER NOT NULL CHECK (square IN (0, 1)),
  rise_m    REAL    NOT NULL,
  seq       REAL    NOT NULL,
  PRIMARY KEY (floor, id)
) STRICT;

CREATE TABLE measured_point (
  floor  TEXT NOT NULL REFERENCES floor,
  id     TEXT NOT NULL,
  name   TEXT NOT NULL,
  seq    REAL NOT NULL,
  PRIMARY KEY (floor, id)
) STRICT;

CREATE TABLE diagonal (
  floor       TEXT NOT NULL REFERENCES floor,
  id          TEXT NOT NULL,
  from_place  TEXT NOT NULL,
  to_place    TEXT NOT NULL,
  length_m    REAL NOT NULL CONSTRAINT "A diagonal must not be shorter than nothing." CHECK (length_m >= 0),
  seq         REAL NOT NULL,
  PRIMARY KEY (floor, id)
) STRICT;

CREATE TABLE step (
  floor   TEXT    NOT NULL REFERENCES floor,
  id      TEXT    NOT NULL,
  name    TEXT    NOT NULL,
  rise_m  REAL    NOT NULL,
  closed  INTEGER NOT NULL CHECK (closed IN (0, 1)),
  seq     REAL    NOT NULL,
  PRIMARY KEY (floor, id)
) STRICT;

CREATE TABLE step_corner (
  floor  TEXT    NOT NULL,
  step   TEXT    NOT NULL,
  seq    INTEGER NOT NULL,
  x_m    REAL    NOT NULL,
  y_m    REAL    NOT NULL,
  bulge  REAL    NOT NULL,
  PRIMARY KEY (floor, step, seq),
  FOREIGN KEY (floor, step) REFERENCES step (floor, id) ON DELETE CASCADE
) STRICT;
