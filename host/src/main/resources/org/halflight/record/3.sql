-- From schema version 2 to 3: where the one threshold of a small rig stood, and the gap that completes its firing.
-- Never edited once a release has written it; docs/record.md tells what each column means.

ALTER TABLE firing ADD COLUMN one_level TEXT CHECK (one_level IN ('low', 'high'));

ALTER TABLE firing ADD COLUMN level_gap_seconds REAL;
