-- Version 6 keeps which marks somebody has seen to be worn, and which have been lifted
-- off the floor, each with who and when; and the pieces that were moved in rehearsal:
-- how far the middle of the piece has gone in plan axes, and how far it has turned.

ALTER TABLE mark_progress ADD COLUMN worn_by   TEXT NOT NULL DEFAULT '';
ALTER TABLE mark_progress ADD COLUMN worn_on   TEXT NOT NULL DEFAULT '';
ALTER TABLE mark_progress ADD COLUMN lifted_by TEXT NOT NULL DEFAULT '';
ALTER TABLE mark_progress ADD COLUMN lifted_on TEXT NOT NULL DEFAULT '';

CREATE TABLE move (
  id        TEXT    NOT NULL PRIMARY KEY,
  floor     TEXT    REFERENCES floor,
  element   TEXT    REFERENCES element,
  scene     TEXT    REFERENCES scene,
  over_m    REAL    NOT NULL,
  up_m      REAL    NOT NULL,
  turn_deg  REAL    NOT NULL,
  points    TEXT    NOT NULL,
  reason    TEXT    NOT NULL,
  moved_by  TEXT    NOT NULL,
  moved_on  TEXT    NOT NULL,
  taken     INTEGER NOT NULL CHECK (taken IN (0, 1)),
  seq       REAL    NOT NULL
) STRICT;
CREATE INDEX move_floor ON move (floor);
CREATE INDEX move_element ON move (element);
CREATE INDEX move_scene ON move (scene);
