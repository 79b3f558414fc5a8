package org.halflight.export;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.Decided;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.ExposureMethodVersion;
import org.halflight.exposure.LeafExposure;
import org.halflight.profile.ProfileFit;
import org.halflight.profile.ProfileId;
import org.halflight.record.KeptFiring;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringCurve;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.Source;
import org.halflight.signal.Firing;
import org.halflight.speeds.Stops;

/** One row a firing; docs/file-formats.md says what each column means. */
public final class FiringTable {
  private static final List<String> HEADINGS =
      List.of(
          "firing",
          "rig_serial",
          "boot_count",
          "first_ticks",
          "source",
          "phase",
          "marked_speed",
          "reference_ms",
          "outcome",
          "counted",
          "after_rest",
          "not_counted_because",
          "moved_from",
          "effective_ms",
          "error_stops",
          "lowest_ms",
          "highest_ms",
          "width_low_ms",
          "width_high_ms",
          "half_width_area_linear_ms",
          "half_width_radius_linear_ms",
          "opening_area_linear_ms",
          "opening_radius_linear_ms",
          "closing_area_linear_ms",
          "closing_radius_linear_ms",
          "total_area_linear_ms",
          "total_radius_linear_ms",
          "efficiency_area_linear",
          "efficiency_radius_linear",
          "late_light_share",
          "release_delay_ms",
          "plateau_share",
          "remarks",
          "damage",
          "method_version",
          "curve_effective_ms",
          "curve_error_stops",
          "curve_minus_edges_ms",
          "curve_tolerance_ms",
          "curve_half_width_ms",
          "curve_opening_ms",
          "curve_opening_power",
          "curve_closing_ms",
          "curve_closing_power",
          "curve_total_ms",
          "curve_efficiency",
          "curve_peak",
          "curve_plateau_light",
          "curve_refused",
          "profile",
          "not_calibrated_because",
          "main_ms",
          "early_light_ms",
          "rebound_ms",
          "outside_light_bound_ms",
          "decided_by",
          "edges_ms",
          "widths_apart_ms",
          "full_light_after_share");

  private static final int CURVE_FIGURES = 14;

  private static final int FIGURES = 17;

  /** Names of its columns. */
  public static List<String> headings() {
    return HEADINGS;
  }

  private FiringTable() {}

  /** The table of some firings that were worked out now, in their order. */
  public static CsvTable of(List<FiringResult> firings) {
    return new CsvTable(
        HEADINGS,
        firings.stream().map(firing -> row(firing, ExposureMethodVersion.CURRENT)).toList());
  }

  /** The table of some firings of the record, each with the method that worked it out. */
  public static CsvTable ofKept(List<KeptFiring> firings) {
    return new CsvTable(
        HEADINGS, firings.stream().map(kept -> row(kept.result(), kept.methodVersion())).toList());
  }

  private static List<String> row(FiringResult firing, int methodVersion) {
    List<String> row = new ArrayList<>();
    row.add(String.valueOf(firing.number()));
    row.add(firing.key().rigSerial());
    row.add(String.valueOf(firing.key().bootCount()));
    row.add(String.valueOf(firing.key().firstTicks()));
    row.add(Source.WORDS.word(Source.of(firing.key().rigSerial())));
    row.add(firing.phase().map(Phase.WORDS::word).orElse(""));
    row.add(firing.setting().map(DialSetting::label).orElse(""));
    row.add(Cells.millis(firing.referenceSeconds()));
    row.add(Outcome.WORDS.word(firing.outcome()));
    row.add(firing.isGood() ? "yes" : "no");
    row.add(firing.afterRest() ? "yes" : "no");
    row.add(firing.rejection().orElse(""));
    row.add(firing.notes().movedFrom().map(Object::toString).orElse(""));
    row.addAll(figures(firing));
    row.add(Cells.millis(firing.releaseDelaySeconds()));
    row.add(Cells.number(firing.notes().plateauShare()));
    row.add(remarks(firing));
    row.add(
        firing.firing().damage().stream()
            .map(Firing.Damage.WORDS::word)
            .collect(Collectors.joining(" ")));
    row.add(String.valueOf(methodVersion));
    row.addAll(curve(firing));
    row.add(firing.profileUse().id().map(ProfileId::label).orElse(""));
    row.add(
        firing.profileUse().mismatches().stream()
            .map(ProfileFit.Mismatch.WORDS::word)
            .collect(Collectors.joining(" ")));
    row.addAll(parts(firing));
    row.add(firing.decidedBy().map(DecidedBy.WORDS::word).orElse(""));
    row.add(
        firing.exposure() instanceof LeafExposure.Timed timed
            ? Cells.millis(timed.effectiveSeconds())
            : "");
    row.add(
        Cells.millis(firing.decided().map(Decided::apartSeconds).orElse(OptionalDouble.empty())));
    row.add(
        Cells.number(
            firing.curve().map(FiringCurve::fullLightAfter).orElse(OptionalDouble.empty())));
    return row;
  }

  /** Of what the effective time is made, and how far off all but the main opening may be. */
  private static List<String> parts(FiringResult firing) {
    return firing.exposure() instanceof LeafExposure.Timed timed
        ? List.of(
            Cells.millis(timed.mainSeconds()),
            Cells.millis(timed.earlySeconds()),
            Cells.millis(timed.reboundSeconds()),
            Cells.millis(timed.outsideBoundSeconds()))
        : List.of("", "", "", "");
  }

  private static List<String> curve(FiringResult firing) {
    List<String> cells = new ArrayList<>(Collections.nCopies(CURVE_FIGURES, ""));
    if (firing.curveExposure().isEmpty()) {
      return cells;
    }
    if (firing.curveExposure().get() instanceof CurveExposure.Refused refused) {
      cells.set(CURVE_FIGURES - 1, CurveExposure.Reason.WORDS.word(refused.reason()));
      return cells;
    }
    CurveExposure.Measured curve = (CurveExposure.Measured) firing.curveExposure().get();
    List<String> known =
        List.of(
            Cells.millis(curve.effectiveSeconds()),
            firing.referenceSeconds().isPresent()
                ? Cells.number(
                    Stops.between(
                        curve.effectiveSeconds(), firing.referenceSeconds().getAsDouble()))
                : "",
            firing.exposure() instanceof LeafExposure.Timed timed
                ? Cells.millis(curve.effectiveSeconds() - timed.effectiveSeconds())
                : "",
            Cells.millis(curve.toleranceSeconds()),
            Cells.millis(curve.halfWidthSeconds()),
            curve.opening().map(ramp -> Cells.millis(ramp.seconds())).orElse(""),
            curve.opening().map(ramp -> Cells.number(ramp.power())).orElse(""),
            curve.closing().map(ramp -> Cells.millis(ramp.seconds())).orElse(""),
            curve.closing().map(ramp -> Cells.number(ramp.power())).orElse(""),
            Cells.millis(curve.totalSeconds()),
            Cells.number(curve.efficiency()),
            Cells.number(curve.peak()),
            Cells.number(curve.plateauLight()));
    Collections.copy(cells, known);
    return cells;
  }

  private static List<String> figures(FiringResult firing) {
    List<String> cells = new ArrayList<>(Collections.nCopies(FIGURES, ""));
    if (firing.exposure() instanceof LeafExposure.Timed timed) {
      List<String> known =
          List.of(
              Cells.millis(
                  firing.decided().isPresent()
                      ? firing.effectiveSeconds()
                      : OptionalDouble.of(timed.effectiveSeconds())),
              Cells.number(firing.errorStops()),
              "",
              "",
              Cells.millis(timed.widthLowSeconds()),
              Cells.millis(timed.widthHighSeconds()),
              Cells.millis(timed.halfWidthSeconds().areaLinear()),
              Cells.millis(timed.halfWidthSeconds().radiusLinear()),
              Cells.millis(timed.openingSeconds().areaLinear()),
              Cells.millis(timed.openingSeconds().radiusLinear()),
              Cells.millis(timed.closingSeconds().areaLinear()),
              Cells.millis(timed.closingSeconds().radiusLinear()),
              Cells.millis(timed.totalSeconds().areaLinear()),
              Cells.millis(timed.totalSeconds().radiusLinear()),
              Cells.number(timed.efficiency().areaLinear()),
              Cells.number(timed.efficiency().radiusLinear()),
              Cells.number(timed.lateLightShare()));
      Collections.copy(cells, known);
    } else if (firing.exposure() instanceof LeafExposure.NeverFullyOpen bounds) {
      cells.set(0, Cells.millis(bounds.effectiveSeconds()));
      cells.set(1, Cells.number(firing.errorStops()));
      cells.set(2, Cells.millis(bounds.lowestSeconds()));
      cells.set(3, Cells.millis(bounds.highestSeconds()));
      cells.set(4, Cells.millis(bounds.widthLowSeconds()));
      cells.set(5, Cells.millis(bounds.widthHighSeconds()));
    } else if (firing.exposure() instanceof LeafExposure.StuckOpen stuck) {
      cells.set(2, Cells.millis(stuck.lowestSeconds()));
    }
    return cells;
  }

  private static String remarks(FiringResult firing) {
    List<String> remarks = new ArrayList<>();
    if (firing.exposure() instanceof LeafExposure.Timed timed) {
      timed.flags().stream().sorted().map(LeafExposure.Flag.WORDS::word).forEach(remarks::add);
    } else if (firing.exposure() instanceof LeafExposure.Unusable unusable) {
      remarks.add(LeafExposure.Reason.WORDS.word(unusable.reason()));
    }
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
