-- Version 7 keeps what makes a mark land beside its true place, each one standard
-- deviation, and how somebody chose to place marks, whatever is recommended. A choice
-- belongs to a place in the axes of the floor's datum, or to the whole floor.

ALTER TABLE production ADD COLUMN tape_class      TEXT NOT NULL DEFAULT 'II';
ALTER TABLE production ADD COLUMN tape_stretch    REAL NOT NULL DEFAULT 0      CONSTRAINT "The stretch of a tape must not be negative." CHECK (tape_stretch >= 0);
ALTER TABLE production ADD COLUMN placing_sigma_m REAL NOT NULL DEFAULT 0.002  CONSTRAINT "The error of putting a tab down must not be negative." CHECK (placing_sigma_m >= 0);
ALTER TABLE production ADD COLUMN pivot_sigma_m   REAL NOT NULL DEFAULT 0.002  CONSTRAINT "The error of setting a pivot must not be negative." CHECK (pivot_sigma_m >= 0);
ALTER TABLE production ADD COLUMN squaring        TEXT NOT NULL DEFAULT 'by 3-4-5';
ALTER TABLE production ADD COLUMN by_eye_rad      REAL NOT NULL DEFAULT 0.02   CONSTRAINT "The error of a right angle must not be negative." CHECK (by_eye_rad >= 0);
ALTER TABLE production ADD COLUMN by_square_rad   REAL NOT NULL DEFAULT 0.003  CONSTRAINT "The error of a right angle must not be negative." CHECK (by_square_rad >= 0);
ALTER TABLE production ADD COLUMN by_grid_rad     REAL NOT NULL DEFAULT 0.002  CONSTRAINT "The error of a right angle must not be negative." CHECK (by_grid_rad >= 0);
ALTER TABLE production ADD COLUMN mark_allowed_m  REAL NOT NULL DEFAULT 0.0254 CONSTRAINT "What is allowed for a mark must not be negative." CHECK (mark_allowed_m >= 0);

CREATE TABLE method_choice (
  id           TEXT    NOT NULL PRIMARY KEY,
  floor        TEXT    REFERENCES floor,
  whole_floor  INTEGER NOT NULL CHECK (whole_floor IN (0, 1)),
  over_m       REAL    NOT NULL,
  up_m         REAL    NOT NULL,
  method       TEXT    NOT NULL,
  seq          REAL    NOT NULL
) STRICT;
CREATE INDEX method_choice_floor ON method_choice (floor);
