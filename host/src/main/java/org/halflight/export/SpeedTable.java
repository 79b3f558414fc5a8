package org.halflight.export;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.halflight.exposure.DecidedBy;
import org.halflight.session.Measurand;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.Source;
import org.halflight.speeds.Reference;
import org.halflight.stats.Interval;
import org.halflight.uncertainty.UncertaintyBudget;
import org.halflight.verdict.Decision;
import org.halflight.verdict.DecisionRule;
import org.halflight.verdict.ReboundAtSpeed;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.Verdict;

/** One row a marked speed and phase; docs/file-formats.md says what each column means. */
public final class SpeedTable {
  private static final List<String> HEADINGS =
      List.of(
          "source",
          "phase",
          "marked_speed",
          "reference",
          "reference_ms",
          "releases",
          "timed_and_counted",
          "never_fully_open",
          "stuck_open",
          "did_not_open",
          "double",
          "rejected",
          "unusable",
          "mean_ms",
          "mean_error_stops",
          "median_error_stops",
          "scatter_stops",
          "robust_scatter_stops",
          "mean_low_stops",
          "mean_high_stops",
          "interval_level",
          "after_rest_error_stops",
          "tolerance_slow_stops",
          "tolerance_fast_stops",
          "placement",
          "expanded_ms",
          "expanded_stops",
          "expanded_low_stops",
          "expanded_high_stops",
          "combined_stops",
          "effective_degrees",
          "coverage_factor",
          "guard_stops",
          "conformity",
          "decision_rule",
          "rig_calibrated",
          "decided_on",
          "main_ms",
          "early_light_ms",
          "rebound_ms",
          "rebound_by_curve_ms",
          "rebound_look",
          "reads_short_stops",
          "reads_long_stops",
          "guard_above_stops",
          "guard_below_stops",
          "beyond_slow",
          "beyond_fast",
          "odd_ones",
          "odd_ones_of",
          "odd_ones_not_excluded",
          "decided_by");

  /** Names of its columns. */
  public static List<String> headings() {
    return HEADINGS;
  }

  private SpeedTable() {}

  /** The table of some runs, phase by phase, slow to fast. */
  public static CsvTable of(Source source, List<RunSummary> runs) {
    return new CsvTable(
        HEADINGS,
        runs.stream()
            .flatMap(run -> run.speeds().stream())
            .map(speed -> row(source, speed))
            .toList());
  }

  private static List<String> row(Source source, SpeedSummary speed) {
    var interval = speed.meanIntervalStops();
    List<String> row =
        new ArrayList<>(
            List.of(
                Source.WORDS.word(source),
                Phase.WORDS.word(speed.phase()),
                speed.speed().label(),
                Reference.WORDS.word(speed.reference()),
                Cells.millis(speed.referenceSeconds()),
                String.valueOf(speed.tries()),
                String.valueOf(speed.errors().n()),
                String.valueOf(speed.count(Outcome.NEVER_FULLY_OPEN)),
                String.valueOf(speed.count(Outcome.STUCK_OPEN)),
                String.valueOf(speed.count(Outcome.DID_NOT_OPEN)),
                String.valueOf(speed.count(Outcome.DOUBLE)),
                String.valueOf(speed.rejected()),
                String.valueOf(speed.unusable()),
                Cells.millis(speed.meanSeconds()),
                Cells.number(speed.meanStops()),
                Cells.number(speed.medianStops()),
                Cells.number(speed.scatterStops()),
                Cells.number(speed.robustScatterStops()),
                interval.map(Interval::low).map(Cells::number).orElse(""),
                interval.map(Interval::high).map(Cells::number).orElse(""),
                interval.map(Interval::level).map(Cells::number).orElse(""),
                Cells.number(speed.afterRestStops()),
                Cells.number(OptionalDouble.of(speed.tolerance().slowStops())),
                Cells.number(OptionalDouble.of(speed.tolerance().fastStops())),
                Verdict.WORDS.word(speed.placement())));
    double level = SpeedSummary.LEVEL;
    row.addAll(
        List.of(
            Cells.millis(figure(speed, b -> b.expandedSeconds(level))),
            Cells.number(speed.expandedStops()),
            speed.expandedIntervalStops().map(Interval::low).map(Cells::number).orElse(""),
            speed.expandedIntervalStops().map(Interval::high).map(Cells::number).orElse(""),
            Cells.number(figure(speed, UncertaintyBudget::combinedStops)),
            Cells.number(figure(speed, UncertaintyBudget::degrees)),
            Cells.number(figure(speed, b -> b.coverageFactor(level))),
            Cells.number(speed.guardStops()),
            speed.decision().map(Decision::conformity).map(Cells::number).orElse(""),
            DecisionRule.WORDS.word(speed.judging().rule()),
            speed.judging().rig().isCalibrated() ? "yes" : "no",
            Measurand.WORDS.word(speed.judging().measurand())));
    row.addAll(parts(speed.rebound()));
    row.addAll(
        List.of(
            Cells.number(figure(speed, UncertaintyBudget::readsShortStops)),
            Cells.number(figure(speed, UncertaintyBudget::readsLongStops)),
            Cells.number(speed.guardAboveStops()),
            Cells.number(speed.guardBelowStops()),
            String.valueOf(speed.beyond().slow()),
            String.valueOf(speed.beyond().fast()),
            speed.oddOnes().map(odd -> String.valueOf(odd.odd())).orElse(""),
            speed.oddOnes().map(odd -> String.valueOf(odd.releases())).orElse(""),
            speed.oddOnes().map(odd -> Cells.number(odd.upperShare())).orElse(""),
            speed.deciding().kinds().stream()
                .map(DecidedBy.WORDS::word)
                .collect(Collectors.joining(" "))));
    return List.copyOf(row);
  }

  private static List<String> parts(ReboundAtSpeed rebound) {
    return rebound.mainSeconds().isEmpty()
        ? List.of("", "", "", "", "")
        : List.of(
            Cells.millis(rebound.mainSeconds()),
            Cells.millis(rebound.earlySeconds()),
            Cells.millis(rebound.reboundSeconds()),
            Cells.millis(rebound.addedSeconds()),
            ReboundAtSpeed.Look.WORDS.word(rebound.look()));
  }

  private static OptionalDouble figure(
      SpeedSummary speed, ToDoubleFunction<UncertaintyBudget> figure) {
    return speed.budget().stream().mapToDouble(figure).filter(Double::isFinite).findFirst();
  }
}
