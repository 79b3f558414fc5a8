package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.BladeTravel;
import org.halflight.exposure.ByLaw;
import org.halflight.exposure.Crossings;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.Exposure.Flag;
import org.halflight.exposure.Exposure.NeverFullyOpen;
import org.halflight.exposure.Exposure.Reason;
import org.halflight.exposure.Exposure.StuckOpen;
import org.halflight.exposure.Exposure.Timed;
import org.halflight.exposure.Exposure.Unusable;
import org.halflight.exposure.ExposureMethodVersion;
import org.halflight.session.FiringCurve;
import org.halflight.session.Outcome;
import org.halflight.signal.Firing;

/** What was worked out from firings, as rows of its own table: it may be worked out again. */
final class ResultRows {
  private ResultRows() {}

  static void keep(
      Connection connection,
      long firingId,
      Outcome outcome,
      Exposure exposure,
      Optional<FiringCurve> curve,
      OptionalDouble errorStops,
      int methodVersion)
      throws SQLException {
    Columns columns =
        new Columns()
            .set("firing_id", firingId)
            .set("method_version", methodVersion)
            .set("outcome", Outcome.WORDS, outcome)
            .set("exposure", kind(exposure))
            .set("error_stops", errorStops)
            .set("remarks", "")
            .set("reason_damage", "");
    if (exposure instanceof Timed timed) {
      setTimed(columns, timed);
    } else if (exposure instanceof NeverFullyOpen bounds) {
      columns
          .set("high_reached", bounds.highReached())
          .set("lowest_seconds", bounds.lowestSeconds())
          .set("highest_seconds", bounds.highestSeconds())
          .set("effective_seconds", bounds.effectiveSeconds())
          .set("width_low_seconds", bounds.widthLowSeconds())
          .set("width_high_seconds", bounds.widthHighSeconds())
          .set("low_rise_ticks", bounds.startTicks())
          .set("low_fall_ticks", bounds.endTicks());
    } else if (exposure instanceof StuckOpen stuck) {
      columns
          .set("lowest_seconds", stuck.lowestSeconds())
          .set("low_rise_ticks", stuck.startTicks());
    } else if (exposure instanceof Unusable unusable) {
      columns
          .set("reason", Reason.WORDS, unusable.reason())
          .set("reason_damage", Word.inOrder(Firing.Damage.WORDS, unusable.damage()));
    }
    exposure.curtains().ifPresent(travel -> CurtainColumns.set(columns, travel));
    CurveColumns.setFigures(columns, curve.flatMap(FiringCurve::exposure));
    CurveColumns.setDecided(columns, curve.flatMap(FiringCurve::decided));
    columns.replace(connection, "firing_result");
  }

  /** The word for a case of exposure. */
  static String kind(Exposure exposure) {
    if (exposure instanceof Timed) {
      return "timed";
    }
    if (exposure instanceof NeverFullyOpen) {
      return "never-fully-open";
    }
    return exposure instanceof StuckOpen ? "stuck-open" : "unusable";
  }

  static Exposure read(ResultSet row) throws SQLException {
    return switch (Row.given(row, "exposure")) {
      case "timed" -> readTimed(row);
      case "never-fully-open" ->
          new NeverFullyOpen(
              row.getBoolean("high_reached"),
              row.getDouble("lowest_seconds"),
              Row.real(row, "highest_seconds"),
              row.getDouble("width_low_seconds"),
              row.getDouble("width_high_seconds"),
              row.getLong("low_rise_ticks"),
              row.getLong("low_fall_ticks"),
              Row.real(row, "effective_seconds"),
              CurtainColumns.read(row));
      case "stuck-open" ->
          new StuckOpen(row.getDouble("lowest_seconds"), row.getLong("low_rise_ticks"));
      case "unusable" ->
          new Unusable(
              Row.word(row, "reason", Reason.WORDS),
              Word.readAll(Firing.Damage.WORDS, Row.given(row, "reason_damage")));
      default -> throw new Word.Unknown(Row.given(row, "exposure"));
    };
  }

  private static void setTimed(Columns columns, Timed timed) {
    columns
        .set("effective_seconds", timed.effectiveSeconds())
        .set("method_seconds", timed.methodSeconds())
        .set("width_low_seconds", timed.widthLowSeconds())
        .set("width_high_seconds", timed.widthHighSeconds());
    timed.blades().ifPresent(blades -> setBlades(columns, blades));
    columns
        .set("early_light_share", timed.earlyLightShare())
        .set("late_light_share", timed.lateLightShare())
        .set("low_rise_ticks", timed.crossings().lowRiseTicks())
        .set("high_rise_ticks", timed.crossings().highRiseTicks())
        .set("high_fall_ticks", timed.crossings().highFallTicks())
        .set("low_fall_ticks", timed.crossings().lowFallTicks())
        .set("remarks", Word.all(Flag.WORDS, timed.flags()));
  }

  private static void setBlades(Columns columns, BladeTravel blades) {
    set(columns, "half_width_", "_seconds", blades.halfWidthSeconds());
    set(columns, "fully_open_", "_seconds", blades.fullyOpenSeconds());
    set(columns, "opening_", "_seconds", blades.openingSeconds());
    set(columns, "closing_", "_seconds", blades.closingSeconds());
    set(columns, "total_", "_seconds", blades.totalSeconds());
    set(columns, "efficiency_", "", blades.efficiency());
  }

  static void set(Columns columns, String before, String after, ByLaw value) {
    columns
        .set(before + "area_linear" + after, value.areaLinear())
        .set(before + "radius_linear" + after, value.radiusLinear());
  }

  private static Timed readTimed(ResultSet row) throws SQLException {
    Optional<CurtainTravel> curtains = CurtainColumns.read(row);
    double early = row.getDouble("early_light_share");
    double late = row.getDouble("late_light_share");
    // Earlier versions kept the main opening alone, and the rest as shares of it.
    double kept = row.getDouble("effective_seconds");
    boolean isAllTheLight =
        row.getInt("method_version") >= ExposureMethodVersion.ALL_THE_LIGHT || early + late == 0;
    return new Timed(
        isAllTheLight ? kept : kept * (1 + early + late),
        row.getDouble("method_seconds"),
        row.getDouble("width_low_seconds"),
        row.getDouble("width_high_seconds"),
        early,
        late,
        new Crossings(
            row.getLong("low_rise_ticks"),
            row.getLong("high_rise_ticks"),
            row.getLong("high_fall_ticks"),
            row.getLong("low_fall_ticks")),
        Set.copyOf(Word.readAll(Flag.WORDS, Row.given(row, "remarks"))),
        curtains.isPresent() ? curtains.get() : readBlades(row));
  }

  private static BladeTravel readBlades(ResultSet row) throws SQLException {
    return new BladeTravel(
        byLaw(row, "half_width_", "_seconds"),
        byLaw(row, "fully_open_", "_seconds"),
        byLaw(row, "opening_", "_seconds"),
        byLaw(row, "closing_", "_seconds"),
        byLaw(row, "total_", "_seconds"),
        byLaw(row, "efficiency_", ""));
  }

  static ByLaw byLaw(ResultSet row, String before, String after) throws SQLException {
    return new ByLaw(
        row.getDouble(before + "area_linear" + after),
        row.getDouble(before + "radius_linear" + after));
  }
}
