-- From schema version 4 to 5: readings of the light with the shutter at rest: leak test and stop check.
-- Never edited once a release has written it; docs/record.md tells what each column means.

CREATE TABLE light_reading (
  id INTEGER PRIMARY KEY,
  rig_serial TEXT NOT NULL,
  boot_count INTEGER NOT NULL,
  end_ticks INTEGER NOT NULL,
  session_id INTEGER NOT NULL REFERENCES bench_session (id),
  run_ordinal INTEGER NOT NULL,
  phase TEXT,
  read_of TEXT NOT NULL CHECK (read_of IN ('lamp-covered', 'shut-cocked', 'shut-uncocked', 'stop')),
  stop TEXT NOT NULL,
  opening INTEGER NOT NULL,
  counts REAL NOT NULL,
  uncertainty_counts REAL NOT NULL,
  blocks INTEGER NOT NULL,
  dark_counts REAL,
  full_counts REAL,
  kept_at_millis INTEGER NOT NULL,
  UNIQUE (rig_serial, boot_count, end_ticks)
) STRICT;

CREATE INDEX light_reading_by_run ON light_reading (session_id, run_ordinal);

CREATE TRIGGER light_reading_stays BEFORE UPDATE ON light_reading
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never changed');
END;

CREATE TRIGGER light_reading_not_deleted BEFORE DELETE ON light_reading
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never deleted');
END;
