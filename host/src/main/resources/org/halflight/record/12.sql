-- From schema version 11 to 12: curtain shutters.
-- Never edited once a release has written it; docs/record.md tells what each column means.

-- What a camera's curtains are to do by its own figure, and what can be adjusted. A travel has its distance.
ALTER TABLE camera ADD COLUMN own_travel_ms REAL CHECK (own_travel_ms > 0);

ALTER TABLE camera ADD COLUMN own_travel_span_mm REAL CHECK ((own_travel_span_mm IS NULL) = (own_travel_ms IS NULL) AND own_travel_span_mm > 0);

ALTER TABLE camera ADD COLUMN x_speed TEXT CHECK (x_speed <> '');

ALTER TABLE camera ADD COLUMN adjusters TEXT CHECK (adjusters <> '');

-- Lengths that a run notes are in mm and above 0.
CREATE TRIGGER curtain_lengths_are_lengths BEFORE INSERT ON run_condition
WHEN (NEW.name IN ('outer-sensors', 'sensor-slit', 'curtain-gap', 'lamp-size') OR (NEW.name = 'lamp-distance' AND NEW.words <> 'parallel'))
  AND (NEW.words GLOB '*[^0-9.]*' OR CAST (NEW.words AS REAL) <= 0)
BEGIN
  SELECT RAISE (ABORT, 'a length of a curtain run is in mm, above 0');
END;

-- What was known of the outer sensors when a firing was measured.
ALTER TABLE firing ADD COLUMN centre_light_counts REAL;

ALTER TABLE firing ADD COLUMN outer_a_level REAL;

ALTER TABLE firing ADD COLUMN outer_a_light_counts REAL;

ALTER TABLE firing ADD COLUMN outer_b_level REAL;

ALTER TABLE firing ADD COLUMN outer_b_light_counts REAL;

ALTER TABLE firing ADD COLUMN outer_seen TEXT CHECK (outer_seen <> '');

ALTER TABLE firing ADD COLUMN travel_learnt TEXT CHECK (travel_learnt IN ('a-to-b', 'b-to-a'));

-- How both curtains passed the frame in a firing; empty for blades.
ALTER TABLE firing_result ADD COLUMN travel_direction TEXT CHECK (travel_direction IN ('a-to-b', 'b-to-a'));

ALTER TABLE firing_result ADD COLUMN travel_zero_ticks INTEGER;

ALTER TABLE firing_result ADD COLUMN frame_mm REAL;

ALTER TABLE firing_result ADD COLUMN outer_mm REAL;

ALTER TABLE firing_result ADD COLUMN sensor_slit_mm REAL;

ALTER TABLE firing_result ADD COLUMN curtain_gap_mm REAL;

ALTER TABLE firing_result ADD COLUMN lamp_distance_mm REAL;

ALTER TABLE firing_result ADD COLUMN lamp_mm REAL;

ALTER TABLE firing_result ADD COLUMN distances_said INTEGER;

ALTER TABLE firing_result ADD COLUMN start_at_mm REAL;

ALTER TABLE firing_result ADD COLUMN start_opens_seconds REAL;

ALTER TABLE firing_result ADD COLUMN start_covers_seconds REAL;

ALTER TABLE firing_result ADD COLUMN start_effective_seconds REAL;

ALTER TABLE firing_result ADD COLUMN start_plus_minus_seconds REAL;

ALTER TABLE firing_result ADD COLUMN start_bounce_seconds REAL;

ALTER TABLE firing_result ADD COLUMN start_bounce_after_seconds REAL;

ALTER TABLE firing_result ADD COLUMN start_dip_seconds REAL;

ALTER TABLE firing_result ADD COLUMN centre_at_mm REAL;

ALTER TABLE firing_result ADD COLUMN centre_opens_seconds REAL;

ALTER TABLE firing_result ADD COLUMN centre_covers_seconds REAL;

ALTER TABLE firing_result ADD COLUMN centre_effective_seconds REAL;

ALTER TABLE firing_result ADD COLUMN centre_plus_minus_seconds REAL;

ALTER TABLE firing_result ADD COLUMN centre_bounce_seconds REAL;

ALTER TABLE firing_result ADD COLUMN centre_bounce_after_seconds REAL;

ALTER TABLE firing_result ADD COLUMN centre_dip_seconds REAL;

ALTER TABLE firing_result ADD COLUMN end_at_mm REAL;

ALTER TABLE firing_result ADD COLUMN end_opens_seconds REAL;

ALTER TABLE firing_result ADD COLUMN end_covers_seconds REAL;

ALTER TABLE firing_result ADD COLUMN end_effective_seconds REAL;

ALTER TABLE firing_result ADD COLUMN end_plus_minus_seconds REAL;

ALTER TABLE firing_result ADD COLUMN end_bounce_seconds REAL;

ALTER TABLE firing_result ADD COLUMN end_bounce_after_seconds REAL;

ALTER TABLE firing_result ADD COLUMN end_dip_seconds REAL;

ALTER TABLE firing_result ADD COLUMN first_outer_seconds REAL;

ALTER TABLE firing_result ADD COLUMN first_edge_seconds REAL;

ALTER TABLE firing_result ADD COLUMN first_plus_minus_seconds REAL;

ALTER TABLE firing_result ADD COLUMN first_first_half_metres_per_second REAL;

ALTER TABLE firing_result ADD COLUMN first_last_half_metres_per_second REAL;

ALTER TABLE firing_result ADD COLUMN second_outer_seconds REAL;

ALTER TABLE firing_result ADD COLUMN second_edge_seconds REAL;

ALTER TABLE firing_result ADD COLUMN second_plus_minus_seconds REAL;

ALTER TABLE firing_result ADD COLUMN second_first_half_metres_per_second REAL;

ALTER TABLE firing_result ADD COLUMN second_last_half_metres_per_second REAL;

ALTER TABLE firing_result ADD COLUMN travel_difference_plus_minus_seconds REAL;

ALTER TABLE firing_result ADD COLUMN slit_mm REAL;

ALTER TABLE firing_result ADD COLUMN window_opens_seconds REAL;

ALTER TABLE firing_result ADD COLUMN window_shuts_seconds REAL;

ALTER TABLE firing_result ADD COLUMN window_plus_minus_seconds REAL;

ALTER TABLE firing_result ADD COLUMN unlit_places TEXT;

ALTER TABLE firing_result ADD COLUMN travel_notes TEXT;
