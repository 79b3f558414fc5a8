-- From schema version 7 to 8: readings of a test of the panel of light, and what it limits at a firing; what decides a firing that
-- edges and light curve both saw.
-- Never edited once a release has written it; docs/record.md tells what each column means.

ALTER TABLE firing ADD COLUMN panel_fall REAL;

CREATE TABLE light_reading_with_panel (
  id INTEGER PRIMARY KEY,
  rig_serial TEXT NOT NULL,
  boot_count INTEGER NOT NULL,
  end_ticks INTEGER NOT NULL,
  session_id INTEGER NOT NULL REFERENCES bench_session (id),
  run_ordinal INTEGER NOT NULL,
  phase TEXT,
  read_of TEXT NOT NULL CHECK (read_of IN ('lamp-covered', 'shut-cocked', 'shut-uncocked', 'stop', 'panel-in-place', 'panel-moved', 'full-light')),
  stop TEXT NOT NULL,
  opening INTEGER NOT NULL,
  counts REAL NOT NULL,
  uncertainty_counts REAL NOT NULL,
  blocks INTEGER NOT NULL,
  dark_counts REAL,
  full_counts REAL,
  kept_at_millis INTEGER NOT NULL,
  row_crc INTEGER NOT NULL DEFAULT -1,
  UNIQUE (rig_serial, boot_count, end_ticks)
) STRICT;

INSERT INTO light_reading_with_panel
SELECT id, rig_serial, boot_count, end_ticks, session_id, run_ordinal, phase, read_of, stop, opening, counts, uncertainty_counts, blocks, dark_counts, full_counts, kept_at_millis, row_crc
FROM light_reading;

DROP TABLE light_reading;

ALTER TABLE light_reading_with_panel RENAME TO light_reading;

CREATE INDEX light_reading_by_run ON light_reading (session_id, run_ordinal);

CREATE TRIGGER light_reading_stays BEFORE UPDATE OF id, rig_serial, boot_count, end_ticks, session_id, run_ordinal, phase, read_of, stop, opening, counts, uncertainty_counts, blocks, dark_counts, full_counts, kept_at_millis ON light_reading
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never changed');
END;

CREATE TRIGGER light_reading_not_deleted BEFORE DELETE ON light_reading
WHEN NOT EXISTS (SELECT 1 FROM repair_under_way)
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never deleted');
END;

ALTER TABLE firing ADD COLUMN full_light_after REAL;

ALTER TABLE firing_result ADD COLUMN decided_by TEXT CHECK (decided_by IN ('edges', 'edges-corrected', 'curve', 'check-rig', 'full-light-again'));

ALTER TABLE firing_result ADD COLUMN decided_seconds REAL;

ALTER TABLE firing_result ADD COLUMN decided_method_seconds REAL;

ALTER TABLE firing_result ADD COLUMN decided_apart_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_main_seconds REAL;
