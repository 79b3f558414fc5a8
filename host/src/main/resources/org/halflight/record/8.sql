-- From schema version 7 to 8: what decides a firing that edges and light curve both saw.
-- Never edited once a release has written it; docs/record.md tells what each column means.

ALTER TABLE firing ADD COLUMN full_light_after REAL;

ALTER TABLE firing_result ADD COLUMN decided_by TEXT CHECK (decided_by IN ('edges', 'edges-corrected', 'curve', 'check-rig', 'full-light-again'));

ALTER TABLE firing_result ADD COLUMN decided_seconds REAL;

ALTER TABLE firing_result ADD COLUMN decided_method_seconds REAL;

ALTER TABLE firing_result ADD COLUMN decided_apart_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_main_seconds REAL;
