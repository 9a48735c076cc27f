-- Version 3 keeps where a scanned drawing lies: points of the picture whose place on
-- the plan is known, two to scale and turn it, four to take out perspective as well.
-- pixel_x and pixel_y are in dots from the upper left corner, y downwards.

CREATE TABLE known_point (
  id        TEXT NOT NULL PRIMARY KEY,
  drawing   TEXT NOT NULL REFERENCES drawing,
  pixel_x   REAL NOT NULL,
  pixel_y   REAL NOT NULL,
  over_m    REAL NOT NULL,
  up_m      REAL NOT NULL,
  seq       REAL NOT NULL
) STRICT;
CREATE INDEX known_point_drawing ON known_point (drawing);
