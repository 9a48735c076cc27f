-- Version 8 keeps what was answered to the questions about a floor. question and about
-- are in the words of the day on which it was asked, so that the record outlives the
-- element.

CREATE TABLE answer (
  id           TEXT NOT NULL PRIMARY KEY,
  floor        TEXT NOT NULL REFERENCES floor,
  element      TEXT REFERENCES element,
  about        TEXT NOT NULL,
  question     TEXT NOT NULL,
  words        TEXT NOT NULL,
  answered_by  TEXT NOT NULL,
  answered_on  TEXT NOT NULL,
  seq          REAL NOT NULL
) STRICT;
CREATE INDEX answer_floor ON answer (floor);
CREATE INDEX answer_element ON answer (element);
