-- From schema version 3 to 4: the rig profiles that firings were measured with.
-- Never edited once a release has written it; docs/record.md tells what each column means.

CREATE TABLE profile (
  id INTEGER PRIMARY KEY,
  rig_serial TEXT NOT NULL,
  made_on TEXT NOT NULL,
  check_sum TEXT NOT NULL,
  text TEXT NOT NULL,
  UNIQUE (rig_serial, made_on, check_sum)
) STRICT;

ALTER TABLE firing ADD COLUMN profile_id INTEGER REFERENCES profile (id);

ALTER TABLE firing ADD COLUMN profile_mismatches TEXT NOT NULL DEFAULT '';

-- Results hang on it: another calibration is another row.
CREATE TRIGGER profile_stays BEFORE UPDATE ON profile
BEGIN
  SELECT RAISE (ABORT, 'what was measured with is never changed');
END;
