package org.halflight.record;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.CurveExposure.HalfLight;
import org.halflight.exposure.CurveExposure.Measured;
import org.halflight.exposure.CurveExposure.Refused;
import org.halflight.exposure.Decided;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.Ramp;
import org.halflight.session.FiringCurve;
import org.halflight.session.FiringResult;
import org.halflight.signal.SampledLight;

/** The light curve of a firing in columns: raw beside its edges, worked out beside its result. */
final class CurveColumns {
  private CurveColumns() {}

  /** The raw curve and the light that was set, for the row of the firing. */
  static void setRaw(Columns columns, FiringResult result) {
    if (result.curve().isEmpty()) {
      return;
    }
    FiringCurve curve = result.curve().get();
    columns.set("curve", CurveBlob.of(curve.sampled(), result.key().firstTicks()));
    curve
        .light()
        .ifPresent(
            light ->
                columns
                    .set("curve_dark_counts", light.darkCounts())
                    .set("curve_full_counts", light.fullCounts())
                    .set("curve_low_counts", light.lowCounts())
                    .set("curve_high_counts", light.highCounts()));
  }

  /** What it comes to, for the row of the result. */
  static void setFigures(Columns columns, Optional<CurveExposure> exposure) {
    if (exposure.isEmpty()) {
      return;
    }
    if (exposure.get() instanceof Refused refused) {
      columns.set("curve_reason", CurveExposure.Reason.WORDS, refused.reason());
      return;
    }
    Measured measured = (Measured) exposure.get();
    columns
        .set("curve_effective_seconds", measured.effectiveSeconds())
        .set("curve_main_seconds", measured.mainSeconds())
        .set("curve_tolerance_seconds", measured.toleranceSeconds())
        .set("curve_added_seconds", measured.addedSeconds())
        .set("curve_total_seconds", measured.totalSeconds())
        .set("curve_peak", measured.peak())
        .set("curve_opened_fully", measured.openedFully())
        .set("curve_plateau_light", measured.plateauLight())
        .set("curve_first_light_seconds", measured.firstLightSeconds())
        .set("curve_other_light_share", measured.otherLightShare());
    measured.opening().ifPresent(ramp -> set(columns, "curve_opening_", ramp));
    measured.closing().ifPresent(ramp -> set(columns, "curve_closing_", ramp));
    measured
        .halfLight()
        .ifPresent(
            half ->
                columns
                    .set("curve_half_rise_seconds", half.riseSeconds())
                    .set("curve_half_fall_seconds", half.fallSeconds()));
  }

  /** What it comes to together with the edges, likewise. */
  static void setDecided(Columns columns, Optional<Decided> decided) {
    decided.ifPresent(
        known ->
            columns
                .set("decided_by", DecidedBy.WORDS, known.by())
                .set("decided_seconds", known.effectiveSeconds())
                .set("decided_method_seconds", known.methodSeconds())
                .set("decided_apart_seconds", known.apartSeconds()));
  }

  static Optional<FiringCurve> read(ResultSet row, long firstTicks) throws SQLException {
    byte[] blob = row.getBytes("curve");
    if (blob == null) {
      return Optional.empty();
    }
    SampledLight sampled =
        CurveBlob.read(blob, firstTicks).orElseThrow(() -> new EdgeBlob.Unreadable(firstTicks));
    return Optional.of(
        new FiringCurve(
            sampled, light(row), exposure(row), Row.real(row, "full_light_after"), decided(row)));
  }

  private static Optional<Decided> decided(ResultSet row) throws SQLException {
    Optional<DecidedBy> by = Row.optionalWord(row, "decided_by", DecidedBy.WORDS);
    return by.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Decided(
                by.get(),
                Row.real(row, "decided_seconds"),
                row.getDouble("decided_method_seconds"),
                Row.real(row, "decided_apart_seconds")));
  }

  private static Optional<LightLevels> light(ResultSet row) throws SQLException {
    OptionalDouble dark = Row.real(row, "curve_dark_counts");
    return dark.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new LightLevels(
                dark.getAsDouble(),
                row.getDouble("curve_full_counts"),
                row.getDouble("curve_low_counts"),
                row.getDouble("curve_high_counts")));
  }

  private static Optional<CurveExposure> exposure(ResultSet row) throws SQLException {
    Optional<CurveExposure.Reason> reason =
        Row.optionalWord(row, "curve_reason", CurveExposure.Reason.WORDS);
    if (reason.isPresent()) {
      return Optional.of(new Refused(reason.get()));
    }
    OptionalDouble effective = Row.real(row, "curve_effective_seconds");
    if (effective.isEmpty()) {
      return Optional.empty();
    }
    OptionalDouble rise = Row.real(row, "curve_half_rise_seconds");
    return Optional.of(
        new Measured(
            effective.getAsDouble(),
            // Before it was kept, the main opening was all of it.
            Row.real(row, "curve_main_seconds").orElse(effective.getAsDouble()),
            row.getDouble("curve_tolerance_seconds"),
            row.getDouble("curve_added_seconds"),
            row.getDouble("curve_total_seconds"),
            row.getDouble("curve_peak"),
            row.getBoolean("curve_opened_fully"),
            Row.real(row, "curve_plateau_light"),
            row.getDouble("curve_first_light_seconds"),
            ramp(row, "curve_opening_"),
            ramp(row, "curve_closing_"),
            rise.isPresent()
                ? Optional.of(
                    new HalfLight(rise.getAsDouble(), row.getDouble("curve_half_fall_seconds")))
                : Optional.empty(),
            row.getDouble("curve_other_light_share")));
  }

  private static void set(Columns columns, String before, Ramp ramp) {
    columns
        .set(before + "power", ramp.power())
        .set(before + "dark_seconds", ramp.darkSeconds())
        .set(before + "seconds", ramp.seconds())
        .set(before + "misfit", ramp.misfit())
        .set(before + "readings", ramp.readings());
  }

  private static Optional<Ramp> ramp(ResultSet row, String before) throws SQLException {
    OptionalDouble power = Row.real(row, before + "power");
    return power.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Ramp(
                power.getAsDouble(),
                row.getDouble(before + "dark_seconds"),
                row.getDouble(before + "seconds"),
                row.getDouble(before + "misfit"),
                row.getInt(before + "readings")));
  }
}
