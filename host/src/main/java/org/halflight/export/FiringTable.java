package org.halflight.export;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.halflight.exposure.BladeTravel;
import org.halflight.exposure.CurtainNote;
import org.halflight.exposure.CurtainRun;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.Decided;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.ExposureMethodVersion;
import org.halflight.exposure.Place;
import org.halflight.exposure.Ramp;
import org.halflight.profile.ProfileFit;
import org.halflight.profile.ProfileId;
import org.halflight.record.KeptFiring;
import org.halflight.session.AlikeFirings;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringCurve;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.Source;
import org.halflight.signal.Firing;
import org.halflight.speeds.Stops;

/** One row a firing; docs/file-formats.md says what each column means. */
public final class FiringTable {
  /**
   * A row.
   *
   * @param methodVersion the method that worked the firing out
   * @param counted whether it goes into the mean of its speed
   */
  private record Row(FiringResult firing, int methodVersion, boolean counted) {
    OptionalDouble timed(ToDoubleFunction<Exposure.Timed> figure) {
      return firing.exposure() instanceof Exposure.Timed timed
          ? OptionalDouble.of(figure.applyAsDouble(timed))
          : OptionalDouble.empty();
    }

    Optional<Exposure.NeverFullyOpen> bounds() {
      return firing.exposure() instanceof Exposure.NeverFullyOpen bounds
          ? Optional.of(bounds)
          : Optional.empty();
    }

    /** Of a firing that has an effective time, or bounds for it. */
    OptionalDouble either(
        ToDoubleFunction<Exposure.Timed> timed, ToDoubleFunction<Exposure.NeverFullyOpen> bounded) {
      return bounds().isPresent()
          ? OptionalDouble.of(bounded.applyAsDouble(bounds().get()))
          : timed(timed);
    }

    OptionalDouble effectiveSeconds() {
      return bounds().isPresent()
          ? bounds().get().effectiveSeconds()
          : firing.decided().isPresent() && firing.exposure() instanceof Exposure.Timed
              ? firing.effectiveSeconds()
              : timed(Exposure.Timed::effectiveSeconds);
    }

    OptionalDouble blades(ToDoubleFunction<BladeTravel> figure) {
      return firing.exposure() instanceof Exposure.Timed timed && timed.blades().isPresent()
          ? OptionalDouble.of(figure.applyAsDouble(timed.blades().get()))
          : OptionalDouble.empty();
    }

    OptionalDouble errorStops() {
      return bounds().isPresent() || firing.exposure() instanceof Exposure.Timed
          ? firing.errorStops()
          : OptionalDouble.empty();
    }

    OptionalDouble lowestSeconds() {
      return firing.exposure() instanceof Exposure.StuckOpen stuck
          ? OptionalDouble.of(stuck.lowestSeconds())
          : bounds().stream().mapToDouble(Exposure.NeverFullyOpen::lowestSeconds).findFirst();
    }

    Optional<CurveExposure.Measured> curve() {
      return firing
          .curveExposure()
          .filter(CurveExposure.Measured.class::isInstance)
          .map(CurveExposure.Measured.class::cast);
    }

    OptionalDouble curve(ToDoubleFunction<CurveExposure.Measured> figure) {
      return curve().stream().mapToDouble(figure).findFirst();
    }

    OptionalDouble curtains(Function<CurtainTravel, OptionalDouble> figure) {
      return firing.exposure().curtains().map(figure).orElse(OptionalDouble.empty());
    }

    /** From edge to edge of the frame. */
    OptionalDouble travel(Function<CurtainTravel, Optional<CurtainRun>> curtain) {
      return curtains(
          its -> curtain.apply(its).stream().mapToDouble(CurtainRun::edgeSeconds).findFirst());
    }

    OptionalDouble curveErrorStops() {
      return firing.referenceSeconds().isPresent()
          ? curve(
              its -> Stops.between(its.effectiveSeconds(), firing.referenceSeconds().getAsDouble()))
          : OptionalDouble.empty();
    }

    OptionalDouble curveMinusEdgesSeconds() {
      return firing.exposure() instanceof Exposure.Timed timed
          ? curve(its -> its.effectiveSeconds() - timed.effectiveSeconds())
          : OptionalDouble.empty();
    }
  }

  private static final List<Column<Row>> COLUMNS =
      List.of(
          Column.count("firing", row -> row.firing.number()),
          Column.text("rig_serial", row -> row.firing.key().rigSerial()),
          Column.count("boot_count", row -> row.firing.key().bootCount()),
          Column.count("first_ticks", row -> row.firing.key().firstTicks()),
          Column.text("source", row -> Source.WORDS.word(Source.of(row.firing.key().rigSerial()))),
          Column.word("phase", row -> row.firing.phase().map(Phase.WORDS::word)),
          Column.word("marked_speed", row -> row.firing.setting().map(DialSetting::label)),
          Column.millis("reference_ms", row -> row.firing.referenceSeconds()),
          Column.text("outcome", row -> Outcome.WORDS.word(row.firing.outcome())),
          Column.yesNo("counted", Row::counted),
          Column.yesNo("after_rest", row -> row.firing.afterRest()),
          Column.word("not_counted_because", row -> row.firing.rejection()),
          Column.word("moved_from", row -> row.firing.notes().movedFrom().map(Object::toString)),
          Column.millis("effective_ms", Row::effectiveSeconds),
          Column.number("error_stops", Row::errorStops),
          Column.millis("lowest_ms", Row::lowestSeconds),
          Column.millis(
              "highest_ms",
              row -> row.bounds().map(its -> its.highestSeconds()).orElse(OptionalDouble.empty())),
          Column.millis(
              "width_low_ms",
              row -> row.either(t -> t.widthLowSeconds(), n -> n.widthLowSeconds())),
          Column.millis(
              "width_high_ms",
              row -> row.either(t -> t.widthHighSeconds(), n -> n.widthHighSeconds())),
          Column.millis(
              "half_width_area_linear_ms",
              row -> row.blades(b -> b.halfWidthSeconds().areaLinear())),
          Column.millis(
              "half_width_radius_linear_ms",
              row -> row.blades(b -> b.halfWidthSeconds().radiusLinear())),
          Column.millis(
              "opening_area_linear_ms", row -> row.blades(b -> b.openingSeconds().areaLinear())),
          Column.millis(
              "opening_radius_linear_ms",
              row -> row.blades(b -> b.openingSeconds().radiusLinear())),
          Column.millis(
              "closing_area_linear_ms", row -> row.blades(b -> b.closingSeconds().areaLinear())),
          Column.millis(
              "closing_radius_linear_ms",
              row -> row.blades(b -> b.closingSeconds().radiusLinear())),
          Column.millis(
              "total_area_linear_ms", row -> row.blades(b -> b.totalSeconds().areaLinear())),
          Column.millis(
              "total_radius_linear_ms", row -> row.blades(b -> b.totalSeconds().radiusLinear())),
          Column.number(
              "efficiency_area_linear", row -> row.blades(b -> b.efficiency().areaLinear())),
          Column.number(
              "efficiency_radius_linear", row -> row.blades(b -> b.efficiency().radiusLinear())),
          Column.number("late_light_share", row -> row.timed(Exposure.Timed::lateLightShare)),
          Column.millis("release_delay_ms", row -> row.firing.releaseDelaySeconds()),
          Column.number("plateau_share", row -> row.firing.notes().plateauShare()),
          Column.text("remarks", row -> remarks(row.firing)),
          Column.text(
              "damage",
              row ->
                  row.firing.firing().damage().stream()
                      .map(Firing.Damage.WORDS::word)
                      .collect(Collectors.joining(" "))),
          Column.count("method_version", Row::methodVersion),
          Column.millis(
              "curve_effective_ms", row -> row.curve(CurveExposure.Measured::effectiveSeconds)),
          Column.number("curve_error_stops", Row::curveErrorStops),
          Column.millis("curve_minus_edges_ms", Row::curveMinusEdgesSeconds),
          Column.millis(
              "curve_tolerance_ms", row -> row.curve(CurveExposure.Measured::toleranceSeconds)),
          Column.millis(
              "curve_half_width_ms",
              row -> row.curve().map(its -> its.halfWidthSeconds()).orElse(OptionalDouble.empty())),
          Column.millis(
              "curve_opening_ms", row -> ramp(row, CurveExposure.Measured::opening, Ramp::seconds)),
          Column.number(
              "curve_opening_power",
              row -> ramp(row, CurveExposure.Measured::opening, Ramp::power)),
          Column.millis(
              "curve_closing_ms", row -> ramp(row, CurveExposure.Measured::closing, Ramp::seconds)),
          Column.number(
              "curve_closing_power",
              row -> ramp(row, CurveExposure.Measured::closing, Ramp::power)),
          Column.millis("curve_total_ms", row -> row.curve(CurveExposure.Measured::totalSeconds)),
          Column.number("curve_efficiency", row -> row.curve(CurveExposure.Measured::efficiency)),
          Column.number("curve_peak", row -> row.curve(CurveExposure.Measured::peak)),
          Column.number(
              "curve_plateau_light",
              row -> row.curve().map(its -> its.plateauLight()).orElse(OptionalDouble.empty())),
          Column.text(
              "curve_refused",
              row ->
                  row.firing.curveExposure().orElse(null) instanceof CurveExposure.Refused refused
                      ? CurveExposure.Reason.WORDS.word(refused.reason())
                      : ""),
          Column.word("profile", row -> row.firing.profileUse().id().map(ProfileId::label)),
          Column.text(
              "not_calibrated_because",
              row ->
                  row.firing.profileUse().mismatches().stream()
                      .map(ProfileFit.Mismatch.WORDS::word)
                      .collect(Collectors.joining(" "))),
          // Of what the effective time is made, and how far off all but the main opening may be.
          Column.millis("main_ms", row -> row.timed(Exposure.Timed::mainSeconds)),
          Column.millis("early_light_ms", row -> row.timed(Exposure.Timed::earlySeconds)),
          Column.millis("rebound_ms", row -> row.timed(Exposure.Timed::reboundSeconds)),
          Column.millis(
              "outside_light_bound_ms", row -> row.timed(Exposure.Timed::outsideBoundSeconds)),
          Column.word("decided_by", row -> row.firing.decidedBy().map(DecidedBy.WORDS::word)),
          Column.millis("edges_ms", row -> row.timed(Exposure.Timed::effectiveSeconds)),
          Column.millis(
              "widths_apart_ms",
              row ->
                  row.firing.decided().map(Decided::apartSeconds).orElse(OptionalDouble.empty())),
          Column.number(
              "full_light_after_share",
              row ->
                  row.firing
                      .curve()
                      .map(FiringCurve::fullLightAfter)
                      .orElse(OptionalDouble.empty())),
          Column.word("first_reason", row -> row.firing.notes().firstReason()),
          Column.text("conditions", row -> row.firing.conditions().words()),
          Column.millis("first_travel_ms", row -> row.travel(CurtainTravel::first)),
          Column.millis("second_travel_ms", row -> row.travel(CurtainTravel::second)),
          Column.millis(
              "travel_difference_ms", row -> row.curtains(its -> its.travelDifferenceSeconds())),
          Column.millis(
              "start_effective_ms",
              row -> row.curtains(its -> its.at(Place.START).effectiveSeconds())),
          Column.millis(
              "end_effective_ms", row -> row.curtains(its -> its.at(Place.END).effectiveSeconds())),
          Column.number("slope_stops", row -> row.curtains(CurtainTravel::slopeStops)),
          Column.number("range_stops", row -> row.curtains(CurtainTravel::rangeStops)),
          Column.number("slit_mm", row -> row.curtains(CurtainTravel::slitMillimetres)),
          Column.millis("window_ms", row -> row.curtains(CurtainTravel::windowSeconds)),
          Column.word("capped", row -> row.firing.exposure().curtains().map(FiringTable::capped)),
          Column.millis(
              "end_bounce_ms", row -> row.curtains(its -> its.at(Place.END).bounceSeconds())));

  /** Names of its columns. */
  public static List<String> headings() {
    return Column.names(COLUMNS);
  }

  private FiringTable() {}

  /** The table of some firings that were worked out now, in their order. */
  public static CsvTable of(List<FiringResult> firings) {
    Set<FiringKey> counted = AlikeFirings.inMeans(firings);
    return CsvTable.of(
        COLUMNS,
        firings.stream()
            .map(each -> new Row(each, ExposureMethodVersion.CURRENT, counted.contains(each.key())))
            .toList());
  }

  /** The table of some firings of the record, each with the method that worked it out. */
  public static CsvTable ofKept(List<KeptFiring> firings) {
    // Firings of different runs share no mean.
    Set<FiringKey> counted =
        firings.stream()
            .collect(
                Collectors.groupingBy(
                    KeptFiring::run, Collectors.mapping(KeptFiring::result, Collectors.toList())))
            .values()
            .stream()
            .flatMap(ofRun -> AlikeFirings.inMeans(ofRun).stream())
            .collect(Collectors.toSet());
    return CsvTable.of(
        COLUMNS,
        firings.stream()
            .map(
                kept ->
                    new Row(
                        kept.result(), kept.methodVersion(), counted.contains(kept.result().key())))
            .toList());
  }

  /** The places that stayed dark; {@code no} where none did. */
  private static String capped(CurtainTravel travel) {
    return travel.capped().isEmpty()
        ? "no"
        : travel.capped().stream().sorted().map(Place.WORDS::word).collect(Collectors.joining(" "));
  }

  private static OptionalDouble ramp(
      Row row,
      Function<CurveExposure.Measured, Optional<Ramp>> which,
      ToDoubleFunction<Ramp> figure) {
    return row.curve().flatMap(which).stream().mapToDouble(figure).findFirst();
  }

  private static String remarks(FiringResult firing) {
    List<String> remarks = new ArrayList<>();
    if (firing.exposure() instanceof Exposure.Timed timed) {
      timed.flags().stream().sorted().map(Exposure.Flag.WORDS::word).forEach(remarks::add);
    } else if (firing.exposure() instanceof Exposure.Unusable unusable) {
      remarks.add(Exposure.Reason.WORDS.word(unusable.reason()));
    }
    firing.exposure().curtains().stream()
        .flatMap(travel -> travel.notes().stream())
        .sorted()
        .map(CurtainNote.WORDS::word)
        .forEach(remarks::add);
    addIf(firing.isBySelfTimer(), "self-timer", remarks);
    addIf(firing.notes().lightDoubtful(), "light-doubtful", remarks);
    addIf(firing.notes().leak(), "leak", remarks);
    addIf(firing.notes().capOn(), "lens-cap-on", remarks);
    return String.join(" ", remarks);
  }

  private static void addIf(boolean holds, String remark, List<String> remarks) {
    if (holds) {
      remarks.add(remark);
    }
  }
}
