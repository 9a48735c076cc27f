-- A production file, version 1. Lengths are metres (_m), angles degrees (_deg) or
-- radians (_rad) as the name says, money whole hundredths (_cents), times RFC 3339
-- text with '' for "not set", truth 0 or 1. seq orders the rows of a list; it has
-- gaps and fractions, so that a row put between two others moves neither.
-- The name of each CHECK is the sentence that a person reads when it fails.

CREATE TABLE production (
  id                TEXT    NOT NULL PRIMARY KEY CHECK (id = 'production'),
  title             TEXT    NOT NULL,
  company           TEXT    NOT NULL,
  contact           TEXT    NOT NULL,
  first_rehearsal   TEXT    NOT NULL,
  prep_start        TEXT    NOT NULL,
  unit              TEXT    NOT NULL CONSTRAINT "The unit must be ft, m, cm or mm." CHECK (unit IN ('', 'ft', 'm', 'cm', 'mm')),
  step_m            REAL    NOT NULL CONSTRAINT "The rounding step must not be negative." CHECK (step_m >= 0),
  paper             TEXT    NOT NULL,
  currency          TEXT    NOT NULL,
  budget_cents      INTEGER NOT NULL CONSTRAINT "The budget must not be negative." CHECK (budget_cents >= 0),
  weak_angle_deg    REAL    NOT NULL CONSTRAINT "The weakest angle must be between 0 and 180 degrees." CHECK (weak_angle_deg BETWEEN 0 AND 180),
  tape_sigma_m      REAL    NOT NULL CONSTRAINT "The error of a tape reading must not be negative." CHECK (tape_sigma_m >= 0),
  tape_length_m     REAL    NOT NULL CONSTRAINT "The longest tape must not be shorter than nothing." CHECK (tape_length_m >= 0),
  read_edge         TEXT    NOT NULL
) STRICT;

CREATE TABLE ground_plan (
  id        TEXT NOT NULL PRIMARY KEY CHECK (id = 'production'),
  title     TEXT NOT NULL,
  revision  TEXT NOT NULL,
  scale     REAL NOT NULL CONSTRAINT "The scale of the plan must not be negative." CHECK (scale >= 0),
  baseline  TEXT NOT NULL
) STRICT;

CREATE TABLE mark_rules (
  id            TEXT    NOT NULL PRIMARY KEY CHECK (id = 'production'),
  weld_m        REAL    NOT NULL CONSTRAINT "The distance within which points are one mark must not be negative." CHECK (weld_m >= 0),
  row_m         REAL    NOT NULL CONSTRAINT "The depth of a row of labels must not be negative." CHECK (row_m >= 0),
  chord_m       REAL    NOT NULL CONSTRAINT "The departure of a chord from its curve must not be negative." CHECK (chord_m >= 0),
  skip_io       INTEGER NOT NULL CHECK (skip_io IN (0, 1)),
  centre_swing  INTEGER NOT NULL CHECK (centre_swing IN (0, 1))
) STRICT;

CREATE TABLE allowances (
  id                  TEXT NOT NULL PRIMARY KEY CHECK (id = 'production'),
  overlap_m           REAL NOT NULL CONSTRAINT "The overlap must not be negative." CHECK (overlap_m >= 0),
  patch_m             REAL NOT NULL CONSTRAINT "The patch must not be shorter than nothing." CHECK (patch_m >= 0),
  tab_m               REAL NOT NULL CONSTRAINT "The tab must not be shorter than nothing." CHECK (tab_m >= 0),
  spike_leg_m         REAL NOT NULL CONSTRAINT "The leg of a spike must not be shorter than nothing." CHECK (spike_leg_m >= 0),
  figure_m            REAL NOT NULL CONSTRAINT "The tape for a number must not be negative." CHECK (figure_m >= 0),
  dash_on_m           REAL NOT NULL CONSTRAINT "A dash must not be shorter than nothing." CHECK (dash_on_m >= 0),
  dash_off_m          REAL NOT NULL CONSTRAINT "The gap between dashes must not be negative." CHECK (dash_off_m >= 0),
  waste_fraction      REAL NOT NULL CONSTRAINT "Waste must not be negative." CHECK (waste_fraction >= 0),
  wear_week_fraction  REAL NOT NULL CONSTRAINT "Wear must not be negative." CHECK (wear_week_fraction >= 0),
  weeks               REAL NOT NULL CONSTRAINT "The weeks in the room must not be negative." CHECK (weeks >= 0)
) STRICT;

CREATE TABLE rates (
  id                TEXT NOT NULL PRIMARY KEY CHECK (id = 'production'),
  marks_per_hour    REAL NOT NULL CONSTRAINT "Marks an hour must not be negative." CHECK (marks_per_hour >= 0),
  tape_m_per_hour   REAL NOT NULL CONSTRAINT "Tape an hour must not be negative." CHECK (tape_m_per_hour >= 0),
  patches_per_hour  REAL NOT NULL CONSTRAINT "Patches an hour must not be negative." CHECK (patches_per_hour >= 0),
  checks_per_hour   REAL NOT NULL CONSTRAINT "Check measures an hour must not be negative." CHECK (checks_per_hour >= 0),
  day_start_hour    REAL NOT NULL,
  day_end_hour      REAL NOT NULL,
  break_after_hours REAL NOT NULL CONSTRAINT "The time before a break must not be negative." CHECK (break_after_hours >= 0),
  break_hours       REAL NOT NULL CONSTRAINT "A break must not be shorter than nothing." CHECK (break_hours >= 0)
) STRICT;

-- The ground plan, in plan axes: over positive to stage left, up positive upstage.

CREATE TABLE level (
  id        TEXT NOT NULL PRIMARY KEY,
  name      TEXT NOT NULL,
  height_m  REAL NOT NULL,
  seq       REAL NOT NULL
) STRICT;

CREATE TABLE scene (
  id    TEXT NOT NULL PRIMARY KEY,
  name  TEXT NOT NULL,
  seq   REAL NOT NULL
) STRICT;

CREATE TABLE stock (
  id           TEXT    NOT NULL PRIMARY KEY,
  name         TEXT    NOT NULL,
  material     TEXT    NOT NULL,
  colour       TEXT    NOT NULL,
  swatch       TEXT    NOT NULL,
  width_m      REAL    NOT NULL CONSTRAINT "The width of a tape must not be negative." CHECK (width_m >= 0),
  roll_m       REAL    NOT NULL CONSTRAINT "A roll must not be shorter than nothing." CHECK (roll_m >= 0),
  roll_cents   INTEGER NOT NULL CONSTRAINT "The price of a roll must not be negative." CHECK (roll_cents >= 0),
  shelf_rolls  REAL    NOT NULL CONSTRAINT "The rolls on the shelf must not be fewer than none." CHECK (shelf_rolls >= 0),
  lead_days    INTEGER NOT NULL CONSTRAINT "Days to delivery must not be negative." CHECK (lead_days >= 0),
  supplier     TEXT    NOT NULL,
  duty         TEXT    NOT NULL,
  seq          REAL    NOT NULL
) STRICT;

CREATE TABLE element (
  id     TEXT NOT NULL PRIMARY KEY,
  name   TEXT NOT NULL,
  kind   TEXT NOT NULL,
  level  TEXT REFERENCES level,
  stock  TEXT REFERENCES stock,
  use    TEXT NOT NULL,
  note   TEXT NOT NULL,
  rides  TEXT REFERENCES element,
  seq    REAL NOT NULL
) STRICT;
CREATE INDEX element_level ON element (level);
CREATE INDEX element_stock ON element (stock);
CREATE INDEX element_rides ON element (rides);

CREATE TABLE path (
  element  TEXT    NOT NULL REFERENCES element,
  id       TEXT    NOT NULL,
  role     TEXT    NOT NULL,
  closed   INTEGER NOT NULL CHECK (closed IN (0, 1)),
  seq      REAL    NOT NULL,
  PRIMARY KEY (element, id)
) STRICT;

-- The corners of a path in order. bulge belongs to the edge that leaves the
-- corner: the tangent of a quarter of its angle, zero when straight.
CREATE TABLE path_corner (
  element  TEXT    NOT NULL,
  path     TEXT    NOT NULL,
  seq      INTEGER NOT NULL,
  over_m   REAL    NOT NULL,
  up_m     REAL    NOT NULL,
  bulge    REAL    NOT NULL,
  PRIMARY KEY (element, path, seq),
  FOREIGN KEY (element, path) REFERENCES path (element, id) ON DELETE CASCADE
) STRICT;

CREATE TABLE stand (
  element   TEXT NOT NULL REFERENCES element,
  scene     TEXT NOT NULL REFERENCES scene,
  over_m    REAL NOT NULL,
  up_m      REAL NOT NULL,
  turn_deg  REAL NOT NULL,
  seq       REAL NOT NULL,
  PRIMARY KEY (element, scene)
) STRICT;
CREATE INDEX stand_scene ON stand (scene);

-- travel: degrees for a revolve, metres along its way for a track.
CREATE TABLE carry (
  carrier  TEXT NOT NULL REFERENCES element,
  scene    TEXT NOT NULL REFERENCES scene,
  travel   REAL NOT NULL,
  seq      REAL NOT NULL,
  PRIMARY KEY (carrier, scene)
) STRICT;
CREATE INDEX carry_scene ON carry (scene);

-- The floors. x and y are the axes in which the room was measured.

CREATE TABLE floor (
  id                  TEXT    NOT NULL PRIMARY KEY,
  name                TEXT    NOT NULL,
  kind                TEXT    NOT NULL,
  surface             TEXT    NOT NULL,
  rule                TEXT    NOT NULL,
  note                TEXT    NOT NULL,
  outline_closed      INTEGER NOT NULL CHECK (outline_closed IN (0, 1)),
  placement_turn_rad  REAL    NOT NULL,
  placement_x_m       REAL    NOT NULL,
  placement_y_m       REAL    NOT NULL,
  own_datum           INTEGER NOT NULL CHECK (own_datum IN (0, 1)),
  datum_turn_rad      REAL    NOT NULL,
  datum_x_m           REAL    NOT NULL,
  datum_y_m           REAL    NOT NULL,
  side                TEXT    NOT NULL,
  seq                 REAL    NOT NULL
) STRICT;

CREATE TABLE floor_corner (
  floor  TEXT    NOT NULL REFERENCES floor ON DELETE CASCADE,
  seq    INTEGER NOT NULL,
  x_m    REAL    NOT NULL,
  y_m    REAL    NOT NULL,
  bulge  REAL    NOT NULL,
  PRIMARY KEY (floor, seq)
) STRICT;

CREATE TABLE obstacle (
  floor   TEXT    NOT NULL REFERENCES floor,
  id      TEXT    NOT NULL,
  name    TEXT    NOT NULL,
  kind    TEXT    NOT NULL,
  closed  INTEGER NOT NULL CHECK (closed IN (0, 1)),
  seq     REAL    NOT NULL,
  PRIMARY KEY (floor, id)
) STRICT;

CREATE TABLE obstacle_corner (
  floor     TEXT    NOT NULL,
  obstacle  TEXT    NOT NULL,
  seq       INTEGER NOT NULL,
  x_m       REAL    NOT NULL,
  y_m       REAL    NOT NULL,
  bulge     REAL    NOT NULL,
  PRIMARY KEY (floor, obstacle, seq),
  FOREIGN KEY (floor, obstacle) REFERENCES obstacle (floor, id) ON DELETE CASCADE
) STRICT;

CREATE TABLE keep_clear (
  floor   TEXT    NOT NULL REFERENCES floor,
  id      TEXT    NOT NULL,
  name    TEXT    NOT NULL,
  kind    TEXT    NOT NULL,
  closed  INTEGER NOT NULL CHECK (closed IN (0, 1)),
  seq     REAL    NOT NULL,
  PRIMARY KEY (floor, id)
) STRICT;

CREATE TABLE keep_clear_corner (
  floor       TEXT    NOT NULL,
  keep_clear  TEXT    NOT NULL,
  seq         INTEGER NOT NULL,
  x_m         REAL    NOT NULL,
  y_m         REAL    NOT NULL,
  bulge       REAL    NOT NULL,
  PRIMARY KEY (floor, keep_clear, seq),
  FOREIGN KEY (floor, keep_clear) REFERENCES keep_clear (floor, id) ON DELETE CASCADE
) STRICT;

CREATE TABLE pivot (
  floor  TEXT NOT NULL REFERENCES floor,
  id     TEXT NOT NULL,
  name   TEXT NOT NULL,
  x_m    REAL NOT NULL,
  y_m    REAL NOT NULL,
  seq    REAL NOT NULL,
  PRIMARY KEY (floor, id)
) STRICT;

-- over and up are in plan axes: how far a piece is laid aside.
CREATE TABLE treatment (
  floor       TEXT NOT NULL REFERENCES floor,
  element     TEXT NOT NULL REFERENCES element,
  how         TEXT NOT NULL,
  over_m      REAL NOT NULL,
  up_m        REAL NOT NULL,
  reason      TEXT NOT NULL,
  decided_by  TEXT NOT NULL,
  decided_on  TEXT NOT NULL,
  seq         REAL NOT NULL,
  PRIMARY KEY (floor, element)
) STRICT;
CREATE INDEX treatment_element ON treatment (element);

-- Marks. over and up are read from the datum of the floor.

CREATE TABLE dance_line (
  id       TEXT NOT NULL PRIMARY KEY,
  floor    TEXT REFERENCES floor,
  name     TEXT NOT NULL,
  up_m     REAL NOT NULL,
  step_m   REAL NOT NULL CONSTRAINT "The step of a dance line must not be negative." CHECK (step_m >= 0),
  unit_m   REAL NOT NULL CONSTRAINT "The unit of a dance line must not be negative." CHECK (unit_m >= 0),
  reach_m  REAL NOT NULL CONSTRAINT "The reach of a dance line must not be negative." CHECK (reach_m >= 0),
  habit    TEXT NOT NULL,
  seq      REAL NOT NULL
) STRICT;
CREATE INDEX dance_line_floor ON dance_line (floor);

CREATE TABLE issued_label (
  floor      TEXT    NOT NULL REFERENCES floor,
  label      TEXT    NOT NULL,
  over_m     REAL    NOT NULL,
  up_m       REAL    NOT NULL,
  retired    INTEGER NOT NULL CHECK (retired IN (0, 1)),
  issued_on  TEXT    NOT NULL,
  seq        REAL    NOT NULL,
  PRIMARY KEY (floor, label)
) STRICT;

CREATE TABLE mark_progress (
  floor       TEXT NOT NULL REFERENCES floor,
  label       TEXT NOT NULL,
  placed_by   TEXT NOT NULL,
  placed_on   TEXT NOT NULL,
  checked_by  TEXT NOT NULL,
  checked_on  TEXT NOT NULL,
  seq         REAL NOT NULL,
  PRIMARY KEY (floor, label)
) STRICT;

-- Supplies.

CREATE TABLE item (
  id           TEXT    NOT NULL PRIMARY KEY,
  name         TEXT    NOT NULL,
  kit_group    TEXT    NOT NULL,
  rule         TEXT    NOT NULL,
  per_unit     REAL    NOT NULL CONSTRAINT "What one unit needs must not be negative." CHECK (per_unit >= 0),
  least        INTEGER NOT NULL CONSTRAINT "The least number of an item must not be negative." CHECK (least >= 0),
  shelf        INTEGER NOT NULL CONSTRAINT "The number on the shelf must not be negative." CHECK (shelf >= 0),
  piece_cents  INTEGER NOT NULL CONSTRAINT "The price of an item must not be negative." CHECK (piece_cents >= 0),
  lead_days    INTEGER NOT NULL CONSTRAINT "Days to delivery must not be negative." CHECK (lead_days >= 0),
  supplier     TEXT    NOT NULL,
  note         TEXT    NOT NULL,
  counted_out  INTEGER NOT NULL CONSTRAINT "The number counted out must not be negative." CHECK (counted_out >= 0),
  counted_back INTEGER NOT NULL CONSTRAINT "The number counted back must not be negative." CHECK (counted_back >= 0),
  seq          REAL    NOT NULL
) STRICT;

-- wanted names a stock or an item.
CREATE TABLE supply_order (
  id           TEXT    NOT NULL PRIMARY KEY,
  wanted       TEXT    NOT NULL,
  quantity     INTEGER NOT NULL CONSTRAINT "The quantity of an order must not be negative." CHECK (quantity >= 0),
  state        TEXT    NOT NULL,
  placed_on    TEXT    NOT NULL,
  expected_on  TEXT    NOT NULL,
  supplier     TEXT    NOT NULL,
  note         TEXT    NOT NULL,
  seq          REAL    NOT NULL
) STRICT;

-- The team and its week.

CREATE TABLE person (
  id     TEXT    NOT NULL PRIMARY KEY,
  name   TEXT    NOT NULL,
  role   TEXT    NOT NULL,
  phone  TEXT    NOT NULL,
  note   TEXT    NOT NULL,
  hands  INTEGER NOT NULL CHECK (hands IN (0, 1)),
  seq    REAL    NOT NULL
) STRICT;

CREATE TABLE task (
  id        TEXT    NOT NULL PRIMARY KEY,
  name      TEXT    NOT NULL,
  counted   TEXT    NOT NULL,
  floor     TEXT    REFERENCES floor,
  hours     REAL    NOT NULL CONSTRAINT "A task must not take less than no time." CHECK (hours >= 0),
  hands     INTEGER NOT NULL CONSTRAINT "A task must not need fewer hands than none." CHECK (hands >= 0),
  earliest  TEXT    NOT NULL,
  due       TEXT    NOT NULL,
  pinned    TEXT    NOT NULL,
  done      INTEGER NOT NULL CHECK (done IN (0, 1)),
  note      TEXT    NOT NULL,
  seq       REAL    NOT NULL
) STRICT;
CREATE INDEX task_floor ON task (floor);

CREATE TABLE task_after (
  task   TEXT NOT NULL REFERENCES task,
  after  TEXT NOT NULL REFERENCES task CONSTRAINT "A task cannot wait for itself." CHECK (after <> task),
  seq    REAL NOT NULL,
  PRIMARY KEY (task, after)
) STRICT;
CREATE INDEX task_after_after ON task_after (after);

CREATE TABLE task_person (
  task    TEXT NOT NULL REFERENCES task,
  person  TEXT NOT NULL REFERENCES person,
  seq     REAL NOT NULL,
  PRIMARY KEY (task, person)
) STRICT;
CREATE INDEX task_person_person ON task_person (person);

-- Stand-ins.

CREATE TABLE object (
  id        TEXT    NOT NULL PRIMARY KEY,
  name      TEXT    NOT NULL,
  kind      TEXT    NOT NULL,
  width_m   REAL    NOT NULL CONSTRAINT "The width of an object must not be negative." CHECK (width_m >= 0),
  depth_m   REAL    NOT NULL CONSTRAINT "The depth of an object must not be negative." CHECK (depth_m >= 0),
  height_m  REAL    NOT NULL CONSTRAINT "The height of an object must not be negative." CHECK (height_m >= 0),
  number    INTEGER NOT NULL CONSTRAINT "The number of an object must not be negative." CHECK (number >= 0),
  source    TEXT    NOT NULL,
  ballast   INTEGER NOT NULL CHECK (ballast IN (0, 1)),
  note      TEXT    NOT NULL,
  seq       REAL    NOT NULL
) STRICT;

CREATE TABLE stand_in (
  id       TEXT    NOT NULL PRIMARY KEY,
  element  TEXT    REFERENCES element,
  scene    TEXT    REFERENCES scene,
  object   TEXT    REFERENCES object,
  number   INTEGER NOT NULL CONSTRAINT "The number of a stand-in must not be negative." CHECK (number >= 0),
  state    TEXT    NOT NULL,
  note     TEXT    NOT NULL,
  seq      REAL    NOT NULL
) STRICT;
CREATE INDEX stand_in_element ON stand_in (element);
CREATE INDEX stand_in_scene ON stand_in (scene);
CREATE INDEX stand_in_object ON stand_in (object);

-- What is kept for the record. It may outlive what it speaks of.

CREATE TABLE note (
  id        TEXT    NOT NULL PRIMARY KEY,
  element   TEXT    REFERENCES element,
  words     TEXT    NOT NULL,
  owner     TEXT    NOT NULL,
  open      INTEGER NOT NULL CHECK (open IN (0, 1)),
  written   TEXT    NOT NULL,
  seq       REAL    NOT NULL
) STRICT;
CREATE INDEX note_element ON note (element);

CREATE TABLE typed_length (
  row_id       TEXT NOT NULL,
  column_name  TEXT NOT NULL,
  typed        TEXT NOT NULL,
  seq          REAL NOT NULL,
  PRIMARY KEY (row_id, column_name)
) STRICT;

CREATE TABLE drawing (
  id           TEXT    NOT NULL PRIMARY KEY,
  name         TEXT    NOT NULL,
  format       TEXT    NOT NULL,
  bytes        INTEGER NOT NULL CONSTRAINT "The size of a drawing must not be negative." CHECK (bytes >= 0),
  imported_on  TEXT    NOT NULL,
  imported_by  TEXT    NOT NULL,
  seq          REAL    NOT NULL
) STRICT;

-- The bytes of a drawing as they came. They are written once, never changed and
-- kept when the drawing's row goes, so that undo and redo need not carry them.
CREATE TABLE drawing_content (
  drawing  TEXT NOT NULL PRIMARY KEY,
  content  BLOB NOT NULL
) STRICT;

CREATE TABLE printing (
  sheet       TEXT NOT NULL,
  floor       TEXT NOT NULL,
  printed_on  TEXT NOT NULL,
  state       TEXT NOT NULL,
  seq         REAL NOT NULL,
  PRIMARY KEY (sheet, floor, printed_on)
) STRICT;

-- Every change of the tables above, in order: who, when, what, and the columns
-- before and after. An undo or redo names the row that it takes back.
CREATE TABLE journal (
  seq      INTEGER PRIMARY KEY AUTOINCREMENT,
  id       TEXT    NOT NULL UNIQUE,
  who      TEXT    NOT NULL,
  at       TEXT    NOT NULL,
  label    TEXT    NOT NULL,
  kind     TEXT    NOT NULL CHECK (kind IN ('edit', 'undo', 'redo')),
  of       TEXT    REFERENCES journal (id),
  rows     INTEGER NOT NULL,
  changes  TEXT    NOT NULL CHECK (json_valid(changes))
) STRICT;
CREATE INDEX journal_of ON journal (of);
