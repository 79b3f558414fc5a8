-- From schema version 6 to 7: a check sum for every row and for the form itself; how much of a session file was taken in; a way to mend.
-- Never edited once a release has written it; docs/record.md tells what each column means.
-- The check sums of rows that are there are worked out by the program in the same transaction.

ALTER TABLE camera ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

ALTER TABLE visit ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

ALTER TABLE visit_check ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

ALTER TABLE work_entry ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

ALTER TABLE bench_session ADD COLUMN bytes_taken INTEGER NOT NULL DEFAULT 0;

ALTER TABLE bench_session ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

ALTER TABLE rig_start ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

ALTER TABLE run ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

ALTER TABLE run_condition ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

ALTER TABLE link_statistics ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

ALTER TABLE profile ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

ALTER TABLE light_reading ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

ALTER TABLE firing ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

ALTER TABLE firing_result ADD COLUMN row_crc INTEGER NOT NULL DEFAULT -1;

CREATE TABLE form (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  schema_crc INTEGER NOT NULL
) STRICT;

-- Has a row only within the transaction of a repair; the triggers below then let a damaged row be replaced.
CREATE TABLE repair_under_way (
  id INTEGER PRIMARY KEY
) STRICT;

-- What a repair took out of its table, as it stood: nothing is thrown away.
CREATE TABLE set_aside (
  id INTEGER PRIMARY KEY,
  table_name TEXT NOT NULL,
  content TEXT NOT NULL,
  at_millis INTEGER NOT NULL
) STRICT;

DROP TRIGGER firing_raw_stays;

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
    OR (
      -- Damage may be found later. It is only ever added to.
      length (NEW.damage) > 0
      AND NOT EXISTS (
        SELECT 1 FROM (VALUES ('edges-lost'), ('lines-lost'), ('rig-restarted'), ('contradiction'), ('link-lost')) AS word
        WHERE instr (' ' || OLD.damage || ' ', ' ' || word.column1 || ' ') > 0
        AND instr (' ' || NEW.damage || ' ', ' ' || word.column1 || ' ') = 0
      )
      AND (
        (NEW.edges = OLD.edges AND NEW.cut_off = 0)
        OR (
          length (OLD.damage) > 0
          AND length (NEW.edges) > length (OLD.edges)
          AND substr (NEW.edges, 1, length (OLD.edges)) = OLD.edges
        )
        -- The rest of a firing behind a break of the session may stand between its edges.
        OR (
          instr (' ' || NEW.damage || ' ', ' link-lost ') > 0
          AND length (NEW.edges) > length (OLD.edges)
        )
      )
    )
  )
)
AND NOT EXISTS (SELECT 1 FROM repair_under_way)
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never changed');
END;

DROP TRIGGER firing_curve_stays;

CREATE TRIGGER firing_curve_stays BEFORE UPDATE OF curve, curve_dark_counts, curve_full_counts, curve_low_counts, curve_high_counts ON firing
WHEN OLD.curve IS NOT NULL AND (
  NEW.curve IS NOT OLD.curve
  OR NEW.curve_dark_counts IS NOT OLD.curve_dark_counts
  OR NEW.curve_full_counts IS NOT OLD.curve_full_counts
  OR NEW.curve_low_counts IS NOT OLD.curve_low_counts
  OR NEW.curve_high_counts IS NOT OLD.curve_high_counts
)
AND NOT EXISTS (SELECT 1 FROM repair_under_way)
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never changed');
END;

DROP TRIGGER firing_stays;

CREATE TRIGGER firing_stays BEFORE DELETE ON firing
WHEN NOT EXISTS (SELECT 1 FROM repair_under_way)
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never deleted');
END;

DROP TRIGGER light_reading_stays;

CREATE TRIGGER light_reading_stays BEFORE UPDATE OF id, rig_serial, boot_count, end_ticks, session_id, run_ordinal, phase, read_of, stop, opening, counts, uncertainty_counts, blocks, dark_counts, full_counts, kept_at_millis ON light_reading
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never changed');
END;

DROP TRIGGER light_reading_not_deleted;

CREATE TRIGGER light_reading_not_deleted BEFORE DELETE ON light_reading
WHEN NOT EXISTS (SELECT 1 FROM repair_under_way)
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never deleted');
END;

DROP TRIGGER profile_stays;

CREATE TRIGGER profile_stays BEFORE UPDATE OF id, rig_serial, made_on, check_sum, text ON profile
BEGIN
  SELECT RAISE (ABORT, 'what was measured with is never changed');
END;
