-- From an empty file to schema version 1. Never edited once a release has written it; docs/record.md tells what each column means.
-- An empty line stands after each statement, and nowhere within one.

-- 'HFLT': what tells this file from every other SQLite file.
PRAGMA application_id = 1212566612;

CREATE TABLE camera (
  id INTEGER PRIMARY KEY,
  label TEXT NOT NULL,
  serial_number TEXT NOT NULL,
  shutter TEXT NOT NULL,
  dial TEXT NOT NULL,
  dial_speeds TEXT NOT NULL,
  dial_reference TEXT NOT NULL,
  widest_f_number REAL,
  frame_width_micrometres INTEGER,
  frame_height_micrometres INTEGER,
  firing_without_film TEXT NOT NULL
) STRICT;

CREATE TABLE visit (
  id INTEGER PRIMARY KEY,
  camera_id INTEGER NOT NULL REFERENCES camera (id),
  job_number TEXT NOT NULL,
  received_at_millis INTEGER NOT NULL,
  handed_back_at_millis INTEGER
) STRICT;

CREATE INDEX visit_by_camera ON visit (camera_id);

CREATE TABLE visit_check (
  visit_id INTEGER NOT NULL REFERENCES visit (id),
  list TEXT NOT NULL CHECK (list IN ('intake', 'hand-back')),
  item TEXT NOT NULL,
  state TEXT NOT NULL,
  note TEXT NOT NULL,
  PRIMARY KEY (visit_id, list, item)
) STRICT, WITHOUT ROWID;

CREATE TABLE bench_session (
  id INTEGER PRIMARY KEY,
  session_key TEXT NOT NULL UNIQUE,
  file_name TEXT NOT NULL,
  began_at_millis INTEGER,
  events_taken INTEGER NOT NULL
) STRICT;

CREATE TABLE rig_start (
  rig_serial TEXT NOT NULL,
  boot_count INTEGER NOT NULL,
  rig_kind TEXT NOT NULL,
  channels_mask INTEGER NOT NULL,
  ticks_per_second INTEGER NOT NULL,
  firmware TEXT NOT NULL,
  protocol INTEGER NOT NULL,
  reset_cause TEXT NOT NULL,
  PRIMARY KEY (rig_serial, boot_count)
) STRICT, WITHOUT ROWID;

CREATE TABLE run (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER REFERENCES visit (id),
  session_id INTEGER NOT NULL REFERENCES bench_session (id),
  run_ordinal INTEGER NOT NULL,
  camera_label TEXT NOT NULL,
  phase TEXT NOT NULL,
  dial TEXT NOT NULL,
  speeds TEXT NOT NULL,
  reference TEXT NOT NULL,
  firings_per_speed INTEGER NOT NULL,
  checks TEXT NOT NULL,
  top_speed_before_cocking INTEGER NOT NULL,
  blades_shut_while_cocking INTEGER NOT NULL,
  rest_seconds REAL,
  began_at_millis INTEGER,
  UNIQUE (session_id, run_ordinal)
) STRICT;

CREATE INDEX run_by_visit ON run (visit_id);

CREATE TABLE run_condition (
  run_id INTEGER NOT NULL REFERENCES run (id),
  name TEXT NOT NULL,
  words TEXT NOT NULL,
  PRIMARY KEY (run_id, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE work_entry (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visit (id),
  at_millis INTEGER NOT NULL,
  kind TEXT NOT NULL,
  text TEXT NOT NULL,
  measured_value TEXT,
  measured_unit TEXT,
  run_id INTEGER REFERENCES run (id),
  after_firing_number INTEGER
) STRICT;

CREATE INDEX work_entry_by_visit ON work_entry (visit_id);

CREATE TABLE link_statistics (
  run_id INTEGER PRIMARY KEY REFERENCES run (id),
  lines INTEGER NOT NULL,
  bytes INTEGER NOT NULL,
  bad_form INTEGER NOT NULL,
  bad_crc INTEGER NOT NULL,
  bad_fields INTEGER NOT NULL,
  too_long INTEGER NOT NULL,
  unknown INTEGER NOT NULL,
  repeated INTEGER NOT NULL,
  missing INTEGER NOT NULL,
  last_beat_ticks INTEGER,
  rig_edges INTEGER,
  rig_snapshots_lost INTEGER,
  rig_captures_lost INTEGER,
  rig_floods INTEGER,
  rig_bad_lines INTEGER,
  rig_long_lines INTEGER,
  rig_bytes_lost INTEGER
) STRICT;

CREATE TABLE firing (
  id INTEGER PRIMARY KEY,
  rig_serial TEXT NOT NULL,
  boot_count INTEGER NOT NULL,
  first_ticks INTEGER NOT NULL,
  ticks_per_second INTEGER NOT NULL,
  edges BLOB NOT NULL,
  damage TEXT NOT NULL,
  cut_off INTEGER NOT NULL,
  session_id INTEGER NOT NULL REFERENCES bench_session (id),
  run_ordinal INTEGER NOT NULL,
  firing_number INTEGER NOT NULL,
  marked_speed TEXT,
  marked_literal_seconds REAL,
  marked_exact_seconds REAL,
  b_or_t TEXT,
  reference TEXT NOT NULL,
  phase TEXT,
  after_rest INTEGER NOT NULL,
  level_low REAL,
  level_high REAL,
  release_delay_seconds REAL,
  plateau_counts REAL,
  plateau_share REAL,
  light_doubtful INTEGER NOT NULL,
  leak INTEGER NOT NULL,
  cap_on INTEGER NOT NULL,
  moved_from TEXT,
  rejection TEXT,
  settled_outcome TEXT NOT NULL,
  settled_exposure TEXT NOT NULL,
  closed_by_hand INTEGER NOT NULL,
  kept_at_millis INTEGER NOT NULL,
  UNIQUE (rig_serial, boot_count, first_ticks)
) STRICT;

CREATE INDEX firing_by_run ON firing (session_id, run_ordinal, rig_serial);

CREATE TABLE firing_result (
  firing_id INTEGER PRIMARY KEY REFERENCES firing (id),
  method_version INTEGER NOT NULL,
  outcome TEXT NOT NULL,
  exposure TEXT NOT NULL CHECK (exposure IN ('timed', 'never-fully-open', 'stuck-open', 'unusable')),
  error_stops REAL,
  effective_seconds REAL,
  method_seconds REAL,
  lowest_seconds REAL,
  highest_seconds REAL,
  width_low_seconds REAL,
  width_high_seconds REAL,
  half_width_area_linear_seconds REAL,
  half_width_radius_linear_seconds REAL,
  fully_open_area_linear_seconds REAL,
  fully_open_radius_linear_seconds REAL,
  opening_area_linear_seconds REAL,
  opening_radius_linear_seconds REAL,
  closing_area_linear_seconds REAL,
  closing_radius_linear_seconds REAL,
  total_area_linear_seconds REAL,
  total_radius_linear_seconds REAL,
  efficiency_area_linear REAL,
  efficiency_radius_linear REAL,
  early_light_share REAL,
  late_light_share REAL,
  low_rise_ticks INTEGER,
  high_rise_ticks INTEGER,
  high_fall_ticks INTEGER,
  low_fall_ticks INTEGER,
  high_reached INTEGER,
  remarks TEXT NOT NULL,
  reason TEXT,
  reason_damage TEXT NOT NULL
) STRICT;

-- What was measured is never changed. Only what was not whole may be made so: where the session had broken off in the middle of a firing, and
-- where the release was pressed and the light came much later, which then follows the edges that are there.
CREATE TRIGGER firing_raw_stays BEFORE UPDATE OF rig_serial, boot_count, first_ticks, ticks_per_second, edges, damage, cut_off ON firing
WHEN NOT (
  NEW.rig_serial = OLD.rig_serial
  AND NEW.boot_count = OLD.boot_count
  AND NEW.first_ticks = OLD.first_ticks
  AND NEW.ticks_per_second = OLD.ticks_per_second
  AND (
    (OLD.cut_off = 1 AND length (NEW.edges) >= length (OLD.edges))
    OR (
      OLD.settled_outcome = 'did-not-open'
      AND length (NEW.edges) > length (OLD.edges)
      AND substr (NEW.edges, 1, length (OLD.edges)) = OLD.edges
    )
  )
)
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never changed');
END;

CREATE TRIGGER firing_stays BEFORE DELETE ON firing
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never deleted');
END;
