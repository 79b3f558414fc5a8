-- From schema version 1 to 2: the light curve of a firing, raw beside its edges and worked out beside its result.
-- Never edited once a release has written it; docs/record.md tells what each column means.

ALTER TABLE firing ADD COLUMN curve BLOB;

ALTER TABLE firing ADD COLUMN curve_dark_counts REAL;

ALTER TABLE firing ADD COLUMN curve_full_counts REAL;

ALTER TABLE firing ADD COLUMN curve_low_counts REAL;

ALTER TABLE firing ADD COLUMN curve_high_counts REAL;

ALTER TABLE firing_result ADD COLUMN curve_reason TEXT;

ALTER TABLE firing_result ADD COLUMN curve_effective_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_tolerance_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_added_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_total_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_peak REAL;

ALTER TABLE firing_result ADD COLUMN curve_opened_fully INTEGER;

ALTER TABLE firing_result ADD COLUMN curve_plateau_light REAL;

ALTER TABLE firing_result ADD COLUMN curve_first_light_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_other_light_share REAL;

ALTER TABLE firing_result ADD COLUMN curve_half_rise_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_half_fall_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_opening_power REAL;

ALTER TABLE firing_result ADD COLUMN curve_opening_dark_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_opening_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_opening_misfit REAL;

ALTER TABLE firing_result ADD COLUMN curve_opening_readings INTEGER;

ALTER TABLE firing_result ADD COLUMN curve_closing_power REAL;

ALTER TABLE firing_result ADD COLUMN curve_closing_dark_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_closing_seconds REAL;

ALTER TABLE firing_result ADD COLUMN curve_closing_misfit REAL;

ALTER TABLE firing_result ADD COLUMN curve_closing_readings INTEGER;

-- A curve may come after its firing; from then on it stays.
CREATE TRIGGER firing_curve_stays BEFORE UPDATE OF curve, curve_dark_counts, curve_full_counts, curve_low_counts, curve_high_counts ON firing
WHEN OLD.curve IS NOT NULL AND (
  NEW.curve IS NOT OLD.curve
  OR NEW.curve_dark_counts IS NOT OLD.curve_dark_counts
  OR NEW.curve_full_counts IS NOT OLD.curve_full_counts
  OR NEW.curve_low_counts IS NOT OLD.curve_low_counts
  OR NEW.curve_high_counts IS NOT OLD.curve_high_counts
)
BEGIN
  SELECT RAISE (ABORT, 'what was measured is never changed');
END;
