-- From schema version 5 to 6: how the rig stood at a firing beside its profile: the rate of its clock by the pings of the session,
-- whether a rig check came before, and how much light was set.
-- Never edited once a release has written it; docs/record.md tells what each column means.

ALTER TABLE firing ADD COLUMN live_clock_fast_ppm REAL;

ALTER TABLE firing ADD COLUMN live_clock_uncertainty_ppm REAL;

ALTER TABLE firing ADD COLUMN rig_checked INTEGER NOT NULL DEFAULT 0 CHECK (rig_checked IN (0, 1));

ALTER TABLE firing ADD COLUMN light_span_counts REAL;
