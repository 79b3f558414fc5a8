package org.halflight.record;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.CurtainGeometry;
import org.halflight.exposure.CurtainNote;
import org.halflight.exposure.CurtainRun;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Direction;
import org.halflight.exposure.OuterSensors;
import org.halflight.exposure.Place;
import org.halflight.exposure.PlacePassing;
import org.halflight.exposure.SensorLevel;
import org.halflight.signal.Channel;

/**
 * How curtains passed the frame, as columns of a result, and what was known of the outer sensors,
 * as columns of a firing.
 */
final class CurtainColumns {
  private static final String FIRST = "first";
  private static final String SECOND = "second";
  private static final String A = "outer_a_";
  private static final String B = "outer_b_";
  private static final String LEVEL = "level";
  private static final String LIGHT = "light_counts";

  private CurtainColumns() {}

  static void set(Columns columns, CurtainTravel travel) {
    CurtainGeometry geometry = travel.geometry();
    columns
        .set("travel_direction", Direction.WORDS, travel.direction())
        .set("travel_zero_ticks", travel.zeroTicks())
        .set("frame_mm", geometry.frameMillimetres())
        .set("outer_mm", geometry.outerMillimetres())
        .set("sensor_slit_mm", geometry.sensorSlitMillimetres())
        .set("curtain_gap_mm", geometry.curtainToSensorMillimetres())
        .set("lamp_distance_mm", geometry.lampToSensorMillimetres())
        .set("lamp_mm", geometry.lampMillimetres())
        .set("distances_said", geometry.isDepthSaid());
    travel.places().forEach(each -> set(columns, each));
    travel.first().ifPresent(run -> set(columns, FIRST, run));
    travel.second().ifPresent(run -> set(columns, SECOND, run));
    ResultRows.set(columns, "opening_", "_seconds", travel.openingSeconds());
    ResultRows.set(columns, "closing_", "_seconds", travel.closingSeconds());
    columns
        .set("travel_difference_plus_minus_seconds", travel.differencePlusMinusSeconds())
        .set("slit_mm", travel.slitMillimetres())
        .set("window_opens_seconds", travel.windowOpensSeconds())
        .set("window_shuts_seconds", travel.windowShutsSeconds())
        .set("window_plus_minus_seconds", travel.windowPlusMinusSeconds())
        .set("unlit_places", Word.all(Place.WORDS, travel.unlit()))
        .set("travel_notes", Word.all(CurtainNote.WORDS, travel.notes()));
  }

  private static void set(Columns columns, PlacePassing passing) {
    String place = Place.WORDS.word(passing.place());
    columns
        .set(place + "_at_mm", passing.millimetres())
        .set(place + "_opens_seconds", passing.opensSeconds())
        .set(place + "_covers_seconds", passing.coversSeconds())
        .set(place + "_effective_seconds", passing.effectiveSeconds())
        .set(place + "_plus_minus_seconds", passing.plusMinusSeconds())
        .set(place + "_bounce_seconds", passing.bounceSeconds())
        .set(place + "_bounce_after_seconds", passing.bounceAfterSeconds())
        .set(place + "_dip_seconds", passing.dipSeconds());
  }

  private static void set(Columns columns, String curtain, CurtainRun run) {
    columns
        .set(curtain + "_outer_seconds", run.outerSeconds())
        .set(curtain + "_edge_seconds", run.edgeSeconds())
        .set(curtain + "_plus_minus_seconds", run.plusMinusSeconds())
        .set(curtain + "_first_half_metres_per_second", run.firstHalfMetresPerSecond())
        .set(curtain + "_last_half_metres_per_second", run.lastHalfMetresPerSecond());
  }

  /** How the curtains passed; empty for blades, and where no outer sensor saw them. */
  static Optional<CurtainTravel> read(ResultSet row) throws SQLException {
    Optional<Direction> direction = Row.optionalWord(row, "travel_direction", Direction.WORDS);
    if (direction.isEmpty()) {
      return Optional.empty();
    }
    List<PlacePassing> places = new ArrayList<>();
    for (Place place : Place.values()) {
      places.add(passing(row, place));
    }
    return Optional.of(
        new CurtainTravel(
            row.getLong("travel_zero_ticks"),
            new CurtainGeometry(
                row.getDouble("frame_mm"),
                row.getDouble("outer_mm"),
                row.getDouble("sensor_slit_mm"),
                row.getDouble("curtain_gap_mm"),
                row.getDouble("lamp_distance_mm"),
                row.getDouble("lamp_mm"),
                row.getBoolean("distances_said")),
            direction.get(),
            places,
            run(row, FIRST),
            run(row, SECOND),
            row.getDouble("travel_difference_plus_minus_seconds"),
            Row.real(row, "slit_mm"),
            Row.real(row, "window_opens_seconds"),
            Row.real(row, "window_shuts_seconds"),
            row.getDouble("window_plus_minus_seconds"),
            ResultRows.byLaw(row, "opening_", "_seconds"),
            ResultRows.byLaw(row, "closing_", "_seconds"),
            Set.copyOf(Word.readAll(Place.WORDS, Row.given(row, "unlit_places"))),
            Set.copyOf(Word.readAll(CurtainNote.WORDS, Row.given(row, "travel_notes")))));
  }

  private static PlacePassing passing(ResultSet row, Place place) throws SQLException {
    String name = Place.WORDS.word(place);
    return new PlacePassing(
        place,
        row.getDouble(name + "_at_mm"),
        Row.real(row, name + "_opens_seconds"),
        Row.real(row, name + "_covers_seconds"),
        Row.real(row, name + "_effective_seconds"),
        row.getDouble(name + "_plus_minus_seconds"),
        Row.real(row, name + "_bounce_seconds"),
        Row.real(row, name + "_bounce_after_seconds"),
        Row.real(row, name + "_dip_seconds"));
  }

  private static Optional<CurtainRun> run(ResultSet row, String curtain) throws SQLException {
    OptionalDouble outer = Row.real(row, curtain + "_outer_seconds");
    return outer.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new CurtainRun(
                outer.getAsDouble(),
                row.getDouble(curtain + "_edge_seconds"),
                row.getDouble(curtain + "_plus_minus_seconds"),
                row.getDouble(curtain + "_first_half_metres_per_second"),
                row.getDouble(curtain + "_last_half_metres_per_second")));
  }

  /** What was known of the outer sensors; a firing of blades says nothing of them. */
  static void set(Columns columns, OuterSensors outer) {
    columns
        .set("centre_light_counts", outer.centreLightCounts())
        .setOptional(A + LEVEL, outer.a().map(SensorLevel::level))
        .setOptional(A + LIGHT, outer.a().map(SensorLevel::lightCounts))
        .setOptional(B + LEVEL, outer.b().map(SensorLevel::level))
        .setOptional(B + LIGHT, outer.b().map(SensorLevel::lightCounts))
        .setOptional(
            "outer_seen",
            Optional.of(Word.all(Channel.LABELS, outer.seen())).filter(words -> !words.isEmpty()))
        .setOptional("travel_learnt", Direction.WORDS, outer.direction());
  }

  static OuterSensors readOuter(ResultSet row) throws SQLException {
    return new OuterSensors(
        Row.real(row, "centre_light_counts"),
        level(row, A),
        level(row, B),
        Set.copyOf(Word.readAll(Channel.LABELS, Row.text(row, "outer_seen").orElse(""))),
        Row.optionalWord(row, "travel_learnt", Direction.WORDS));
  }

  private static Optional<SensorLevel> level(ResultSet row, String sensor) throws SQLException {
    OptionalDouble level = Row.real(row, sensor + LEVEL);
    OptionalDouble light = Row.real(row, sensor + LIGHT);
    return level.isPresent() && light.isPresent()
        ? Optional.of(new SensorLevel(level.getAsDouble(), light.getAsDouble()))
        : Optional.empty();
  }
}
