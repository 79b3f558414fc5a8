-- From schema version 1 to 2. Never edited once a release has written it; docs/record.md tells what each column means.

ALTER TABLE firing ADD COLUMN one_level TEXT CHECK (one_level IN ('low', 'high'));

ALTER TABLE firing ADD COLUMN level_gap_seconds REAL;
