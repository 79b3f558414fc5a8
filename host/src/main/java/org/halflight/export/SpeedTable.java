package org.halflight.export;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.Place;
import org.halflight.session.FiringConditions;
import org.halflight.session.Measurand;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.Source;
import org.halflight.speeds.Reference;
import org.halflight.stats.Interval;
import org.halflight.uncertainty.UncertaintyBudget;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.Decision;
import org.halflight.verdict.DecisionRule;
import org.halflight.verdict.ReboundAtSpeed;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.Verdict;

/** One row a marked speed and phase; docs/file-formats.md says what each column means. */
public final class SpeedTable {
  private static final double LEVEL = SpeedSummary.LEVEL;

  private record Row(Source source, SpeedSummary speed) {
    OptionalDouble mean(ToDoubleFunction<Interval> end) {
      return speed.meanIntervalStops().stream().mapToDouble(end).findFirst();
    }

    OptionalDouble expanded(ToDoubleFunction<Interval> end) {
      return speed.expandedIntervalStops().stream().mapToDouble(end).findFirst();
    }

    OptionalDouble budget(ToDoubleFunction<UncertaintyBudget> figure) {
      return speed.budget().stream().mapToDouble(figure).filter(Double::isFinite).findFirst();
    }

    /** The light part by part, where it is known. */
    Optional<ReboundAtSpeed> parts() {
      return Optional.of(speed.rebound()).filter(its -> its.mainSeconds().isPresent());
    }

    OptionalDouble curtains(CurtainFigure figure) {
      return speed.curtains().map(its -> its.mean(figure)).orElse(OptionalDouble.empty());
    }

    /** At how many firings a place stayed dark while another saw light. */
    Optional<String> capped(Place place) {
      return speed.curtains().map(its -> String.valueOf(its.capped().getOrDefault(place, 0)));
    }

    OptionalDouble part(ToDoubleFunction<ReboundAtSpeed> part) {
      return parts().stream().mapToDouble(part).findFirst();
    }
  }

  private static final List<Column<Row>> COLUMNS =
      List.of(
          Column.text("source", row -> Source.WORDS.word(row.source)),
          Column.text("phase", row -> Phase.WORDS.word(row.speed.phase())),
          Column.text("marked_speed", row -> row.speed.speed().label()),
          Column.text("reference", row -> Reference.WORDS.word(row.speed.reference())),
          Column.millis("reference_ms", row -> OptionalDouble.of(row.speed.referenceSeconds())),
          Column.count("releases", row -> row.speed.tries()),
          Column.count("timed_and_counted", row -> row.speed.errors().n()),
          Column.count("never_fully_open", row -> row.speed.count(Outcome.NEVER_FULLY_OPEN)),
          Column.count("stuck_open", row -> row.speed.count(Outcome.STUCK_OPEN)),
          Column.count("did_not_open", row -> row.speed.count(Outcome.DID_NOT_OPEN)),
          Column.count("double", row -> row.speed.count(Outcome.DOUBLE)),
          Column.count("rejected", row -> row.speed.rejected()),
          Column.count("unusable", row -> row.speed.unusable()),
          Column.millis("mean_ms", row -> row.speed.meanSeconds()),
          Column.number("mean_error_stops", row -> row.speed.meanStops()),
          Column.number("median_error_stops", row -> row.speed.medianStops()),
          Column.number("scatter_stops", row -> row.speed.scatterStops()),
          Column.number("robust_scatter_stops", row -> row.speed.robustScatterStops()),
          Column.number("mean_low_stops", row -> row.mean(Interval::low)),
          Column.number("mean_high_stops", row -> row.mean(Interval::high)),
          Column.number("interval_level", row -> row.mean(Interval::level)),
          Column.number("after_rest_error_stops", row -> row.speed.afterRestStops()),
          Column.number(
              "tolerance_slow_stops", row -> OptionalDouble.of(row.speed.tolerance().slowStops())),
          Column.number(
              "tolerance_fast_stops", row -> OptionalDouble.of(row.speed.tolerance().fastStops())),
          Column.text("placement", row -> Verdict.WORDS.word(row.speed.verdict())),
          Column.millis("expanded_ms", row -> row.budget(its -> its.expandedSeconds(LEVEL))),
          Column.number("expanded_stops", row -> row.speed.expandedStops()),
          Column.number("expanded_low_stops", row -> row.expanded(Interval::low)),
          Column.number("expanded_high_stops", row -> row.expanded(Interval::high)),
          Column.number("combined_stops", row -> row.budget(UncertaintyBudget::combinedStops)),
          Column.number("effective_degrees", row -> row.budget(UncertaintyBudget::degrees)),
          Column.number("coverage_factor", row -> row.budget(its -> its.coverageFactor(LEVEL))),
          Column.number("guard_stops", row -> row.speed.guardStops()),
          Column.number(
              "conformity", row -> Column.optional(row.speed.decision().map(Decision::conformity))),
          Column.text(
              "decision_rule", row -> DecisionRule.WORDS.word(row.speed.decisionBasis().rule())),
          Column.yesNo("rig_calibrated", row -> row.speed.decisionBasis().rig().isCalibrated()),
          Column.text(
              "decided_on", row -> Measurand.WORDS.word(row.speed.decisionBasis().measurand())),
          Column.millis("main_ms", row -> row.speed.rebound().mainSeconds()),
          Column.millis("early_light_ms", row -> row.part(ReboundAtSpeed::earlySeconds)),
          Column.millis("rebound_ms", row -> row.part(ReboundAtSpeed::reboundSeconds)),
          Column.millis("rebound_by_curve_ms", row -> row.part(ReboundAtSpeed::addedSeconds)),
          Column.word(
              "rebound_look",
              row -> row.parts().map(its -> ReboundAtSpeed.Look.WORDS.word(its.look()))),
          Column.number("reads_short_stops", row -> row.budget(UncertaintyBudget::readsShortStops)),
          Column.number("reads_long_stops", row -> row.budget(UncertaintyBudget::readsLongStops)),
          Column.number("guard_above_stops", row -> row.speed.guardAboveStops()),
          Column.number("guard_below_stops", row -> row.speed.guardBelowStops()),
          Column.count("beyond_slow", row -> row.speed.beyond().slow()),
          Column.count("beyond_fast", row -> row.speed.beyond().fast()),
          Column.word("odd_ones", row -> row.speed.oddOnes().map(odd -> String.valueOf(odd.odd()))),
          Column.word(
              "odd_ones_of", row -> row.speed.oddOnes().map(odd -> String.valueOf(odd.releases()))),
          Column.number(
              "odd_ones_not_excluded",
              row -> Column.optional(row.speed.oddOnes().map(odd -> odd.upperShare()))),
          Column.text(
              "decided_by",
              row ->
                  row.speed.timingBasis().kinds().stream()
                      .map(DecidedBy.WORDS::word)
                      .collect(Collectors.joining(" "))),
          Column.word(
              "conditions", row -> row.speed.conditions().ofMean().map(FiringConditions::words)),
          Column.count("left_out", row -> row.speed.conditions().leftOut()),
          Column.millis("first_travel_ms", row -> row.curtains(CurtainFigure.FIRST_TRAVEL)),
          Column.millis("second_travel_ms", row -> row.curtains(CurtainFigure.SECOND_TRAVEL)),
          Column.millis(
              "travel_difference_ms", row -> row.curtains(CurtainFigure.TRAVEL_DIFFERENCE)),
          Column.number("start_error_stops", row -> row.curtains(CurtainFigure.START)),
          Column.number("end_error_stops", row -> row.curtains(CurtainFigure.END)),
          Column.number("slope_stops", row -> row.curtains(CurtainFigure.SLOPE)),
          Column.number("range_stops", row -> row.curtains(CurtainFigure.RANGE)),
          Column.number("slit_mm", row -> row.curtains(CurtainFigure.SLIT)),
          Column.millis("window_ms", row -> row.curtains(CurtainFigure.WINDOW)),
          Column.number("end_bounce_stops", row -> row.curtains(CurtainFigure.END_BOUNCE)),
          Column.word("capped_at_start", row -> row.capped(Place.START)),
          Column.word("capped_at_centre", row -> row.capped(Place.CENTRE)),
          Column.word("capped_at_end", row -> row.capped(Place.END)));

  /** Names of its columns. */
  public static List<String> headings() {
    return Column.names(COLUMNS);
  }

  private SpeedTable() {}

  /** The table of some runs, phase by phase, slow to fast. */
  public static CsvTable of(Source source, List<RunSummary> runs) {
    return CsvTable.of(
        COLUMNS,
        runs.stream()
            .flatMap(run -> run.speeds().stream())
            .map(speed -> new Row(source, speed))
            .toList());
  }
}
