-- From schema version 10 to 11: photographs of a visit, and entries of the work log taken back.
-- Never edited once a release has written it; docs/record.md tells what each column means.

-- An entry of the work log that was taken back stays, and no longer counts.
ALTER TABLE work_entry ADD COLUMN struck TEXT CHECK (struck = 'yes');

-- A visit that was begun by mistake stays, and no longer counts.
ALTER TABLE visit ADD COLUMN struck TEXT CHECK (struck = 'yes');

-- Pictures of a visit. The files are beside the record; a picture that was taken off stays.
CREATE TABLE photo (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visit (id),
  file TEXT NOT NULL CHECK (file <> ''),
  name TEXT NOT NULL,
  sha256 TEXT NOT NULL CHECK (length (sha256) = 64),
  bytes INTEGER NOT NULL,
  taken_at_millis INTEGER NOT NULL,
  taken_by TEXT NOT NULL CHECK (taken_by IN ('picture', 'file')),
  caption TEXT CHECK (caption <> ''),
  taken_off TEXT CHECK (taken_off = 'yes'),
  row_crc INTEGER NOT NULL DEFAULT -1,
  UNIQUE (visit_id, sha256)
) STRICT;

CREATE TRIGGER photo_stays BEFORE UPDATE OF visit_id, file, name, sha256, bytes, taken_at_millis, taken_by ON photo
WHEN NOT EXISTS (SELECT 1 FROM repair_under_way)
  AND (NEW.visit_id IS NOT OLD.visit_id OR NEW.file IS NOT OLD.file OR NEW.name IS NOT OLD.name OR NEW.sha256 IS NOT OLD.sha256
    OR NEW.bytes IS NOT OLD.bytes OR NEW.taken_at_millis IS NOT OLD.taken_at_millis OR NEW.taken_by IS NOT OLD.taken_by)
BEGIN
  SELECT RAISE (ABORT, 'which picture it is never changes');
END;

CREATE TRIGGER photo_is_kept BEFORE DELETE ON photo
WHEN NOT EXISTS (SELECT 1 FROM repair_under_way)
BEGIN
  SELECT RAISE (ABORT, 'a picture is taken off and never deleted');
END;
