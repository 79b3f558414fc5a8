-- From schema version 9 to 10: linkage and evidence at the bench.
-- Never edited once a release has written it; docs/record.md tells what each column means.

-- Under which conditions a firing was made, where the person said so: words with spaces between.
ALTER TABLE firing ADD COLUMN conditions TEXT CHECK (conditions <> '');

-- What the contact at the wind knob did around a firing, in the form of edges.
ALTER TABLE firing ADD COLUMN knob_edges BLOB;

CREATE TRIGGER knob_edges_stay BEFORE UPDATE OF knob_edges ON firing
WHEN OLD.knob_edges IS NOT NULL
  AND (NEW.knob_edges IS NULL OR length (NEW.knob_edges) < length (OLD.knob_edges))
  AND NOT EXISTS (SELECT 1 FROM repair_under_way)
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never changed');
END;

-- The reason given at first for not counting a firing, where the person has changed it since.
ALTER TABLE firing ADD COLUMN first_reason TEXT;

-- Kinds of shutter that this form knows.
CREATE TRIGGER camera_shutter_is_known BEFORE INSERT ON camera
WHEN NEW.shutter NOT IN ('leaf', 'leaf-behind-lens', 'leaf-reflex', 'curtain-long-side', 'curtain-short-side', 'rotary', 'other', 'unknown')
BEGIN
  SELECT RAISE (ABORT, 'no kind of shutter that is known');
END;

CREATE TRIGGER run_shutter_is_known BEFORE INSERT ON run_condition
WHEN NEW.name = 'aim-shutter-kind' AND NEW.words NOT IN ('leaf', 'leaf-behind-lens', 'leaf-reflex', 'curtain-long-side', 'curtain-short-side', 'rotary', 'other')
BEGIN
  SELECT RAISE (ABORT, 'no kind of shutter that is known');
END;

-- A quick look at a camera as found is one, or is not noted.
CREATE TRIGGER quick_look_is_known BEFORE INSERT ON run_condition
WHEN NEW.name = 'aim-quick' AND NEW.words <> 'yes'
BEGIN
  SELECT RAISE (ABORT, 'a quick look is noted with yes');
END;

-- A run that is a stage of assembly. Its parts are conditions, whose words earlier forms left free.
CREATE TRIGGER run_stages_is_known BEFORE INSERT ON run_condition
WHEN NEW.name = 'aim-stages' AND NEW.words <> 'yes'
BEGIN
  SELECT RAISE (ABORT, 'a run is in stages or it is not');
END;

-- Presses of the linkage test: what was asked, how the wind was, and the firings that belong to it.
CREATE TABLE linkage_press (
  id INTEGER PRIMARY KEY,
  session_id INTEGER NOT NULL REFERENCES bench_session (id),
  run_ordinal INTEGER NOT NULL,
  number INTEGER NOT NULL,
  phase TEXT,
  step TEXT NOT NULL CHECK (step IN ('rest', 'stop', 'squeeze', 'tap')),
  wind TEXT NOT NULL CHECK (wind IN ('turns', 'locked')),
  watched INTEGER NOT NULL,
  firings TEXT NOT NULL,
  kept_at_millis INTEGER NOT NULL,
  row_crc INTEGER NOT NULL DEFAULT -1,
  UNIQUE (session_id, run_ordinal, number)
) STRICT;

-- Readings of a screw plunger that presses the button, in mm.
CREATE TABLE plunger_reading (
  id INTEGER PRIMARY KEY,
  session_id INTEGER NOT NULL REFERENCES bench_session (id),
  run_ordinal INTEGER NOT NULL,
  phase TEXT,
  advance_mm REAL NOT NULL,
  shutter_mm REAL NOT NULL,
  kept_at_millis INTEGER NOT NULL,
  row_crc INTEGER NOT NULL DEFAULT -1
) STRICT;

-- What is noted of a camera and of a visit in words.
ALTER TABLE camera ADD COLUMN maker TEXT CHECK (maker <> '');

ALTER TABLE camera ADD COLUMN model TEXT CHECK (model <> '');

ALTER TABLE camera ADD COLUMN lens TEXT CHECK (lens <> '');

ALTER TABLE camera ADD COLUMN second_serial TEXT CHECK (second_serial <> '');

ALTER TABLE visit ADD COLUMN complaint TEXT CHECK (complaint <> '');

ALTER TABLE visit ADD COLUMN answer TEXT CHECK (answer <> '');

ALTER TABLE visit ADD COLUMN owner TEXT CHECK (owner <> '');

ALTER TABLE visit ADD COLUMN film TEXT CHECK (film IN ('yes', 'no'));

ALTER TABLE visit ADD COLUMN lubricant TEXT CHECK (lubricant <> '');

-- What stood in a camera, a visit or the work log before somebody corrected it.
CREATE TABLE correction (
  id INTEGER PRIMARY KEY,
  table_name TEXT NOT NULL,
  row_id INTEGER NOT NULL,
  column_name TEXT NOT NULL,
  earlier TEXT NOT NULL,
  kept_at_millis INTEGER NOT NULL,
  row_crc INTEGER NOT NULL DEFAULT -1
) STRICT;

CREATE TRIGGER correction_stays BEFORE DELETE ON correction
WHEN NOT EXISTS (SELECT 1 FROM repair_under_way)
BEGIN
  SELECT RAISE (ABORT, 'what was corrected is kept');
END;

-- The strip sheet of a visit. Each row is what one line of it came to say; a correction is another row.
CREATE TABLE sheet_entry (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visit (id),
  line INTEGER NOT NULL CHECK (line > 0),
  at_millis INTEGER NOT NULL,
  item TEXT NOT NULL CHECK (item IN ('spring-turns', 'shims', 'helical-start', 'notch-marks', 'other', 'infinity-focus', 'flange-top-left', 'flange-top-right', 'flange-bottom-left', 'flange-bottom-right', 'rangefinder-infinity', 'rangefinder-3m', 'rangefinder-1m')),
  place TEXT NOT NULL,
  words TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('noted', 'back', 'struck')),
  row_crc INTEGER NOT NULL DEFAULT -1
) STRICT;

CREATE INDEX sheet_entry_by_visit ON sheet_entry (visit_id, id);

CREATE TRIGGER sheet_entry_stays BEFORE UPDATE OF visit_id, line, at_millis, item, place, words, state ON sheet_entry
WHEN NOT EXISTS (SELECT 1 FROM repair_under_way)
BEGIN
  SELECT RAISE (ABORT, 'what the strip sheet said is never changed');
END;

CREATE TRIGGER sheet_entry_is_kept BEFORE DELETE ON sheet_entry
WHEN NOT EXISTS (SELECT 1 FROM repair_under_way)
BEGIN
  SELECT RAISE (ABORT, 'what the strip sheet said is never deleted');
END;
