package org.halflight.export;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.halflight.session.Source;
import org.halflight.stats.Figure;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.ScatterComparison;
import org.halflight.verdict.ShiftFinding;
import org.halflight.verdict.SpeedComparison;

/**
 * Two runs against each other: one row a marked speed, then one for the whole dial and one for each
 * half of it; docs/file-formats.md says what each column means.
 */
public final class ComparisonTable {
  private static final List<String> HEADINGS =
      List.of(
          "source",
          "marked_speed",
          "firings_before",
          "firings_after",
          "mean_before_stops",
          "mean_after_stops",
          "shift_stops",
          "shift_low_stops",
          "shift_high_stops",
          "shift_level",
          "shift_p",
          "shift_adjusted_p",
          "finding",
          "within_a_tenth_p",
          "findable_shift_stops",
          "rank_shift_stops",
          "rank_shift_low_stops",
          "rank_shift_high_stops",
          "rank_shift_level",
          "rank_p",
          "scatter_before_stops",
          "scatter_after_stops",
          "scatter_ratio",
          "scatter_ratio_low",
          "scatter_ratio_high",
          "scatter_p",
          "scatter_adjusted_p",
          "scatter_finding",
          "threefold_scatter_firings",
          "firings_compared");

  private static final int SCATTER_FROM = 20;

  /** Names of its columns. */
  public static List<String> headings() {
    return HEADINGS;
  }

  private ComparisonTable() {}

  /** The table of a comparison. */
  public static CsvTable of(Source source, RunComparison runs) {
    List<List<String>> rows = new ArrayList<>();
    runs.speeds().forEach(speed -> rows.add(speed(source, speed)));
    rows.add(dial(source, runs));
    rows.add(half(source, "slow-speeds", runs.slowScatter()));
    rows.add(half(source, "fast-speeds", runs.fastScatter()));
    return new CsvTable(HEADINGS, rows);
  }

  private static List<String> speed(Source source, SpeedComparison speed) {
    List<String> row = new ArrayList<>();
    row.add(Source.WORDS.word(source));
    row.add(speed.speed().label());
    row.add(String.valueOf(speed.before().errors().n()));
    row.add(String.valueOf(speed.after().errors().n()));
    row.add(Cells.number(speed.before().meanStops()));
    row.add(Cells.number(speed.after().meanStops()));
    row.add(number(speed.shift().map(s -> s.shift())));
    row.add(number(speed.shift().map(s -> s.interval().low())));
    row.add(number(speed.shift().map(s -> s.interval().high())));
    row.add(number(speed.shift().map(s -> s.interval().level())));
    row.add(number(speed.shift().map(s -> s.p())));
    row.add(Cells.number(speed.adjustedP()));
    row.add(ShiftFinding.WORDS.word(speed.finding()));
    row.add(number(speed.withinATenth().map(t -> t.p())));
    row.add(Cells.number(speed.findableStops()));
    row.add(number(speed.rankShift().map(s -> s.shift())));
    row.add(number(speed.rankShift().map(s -> s.interval().low())));
    row.add(number(speed.rankShift().map(s -> s.interval().high())));
    row.add(number(speed.rankShift().map(s -> s.interval().level())));
    row.add(number(speed.rankTest().map(t -> t.p())));
    row.addAll(scatter(speed.scatter()));
    OptionalInt wanted = speed.power().scatterFirings();
    row.add(wanted.isPresent() ? String.valueOf(wanted.getAsInt()) : "");
    row.add(String.valueOf(speed.compared()));
    return row;
  }

  private static List<String> dial(Source source, RunComparison runs) {
    List<String> row = empty(source, "whole-dial");
    runs.common()
        .ifPresent(
            common -> {
              row.set(6, Cells.number(common.stops()));
              row.set(7, Cells.number(common.interval().low()));
              row.set(8, Cells.number(common.interval().high()));
              row.set(9, Cells.number(common.interval().level()));
              row.set(10, Cells.number(common.p()));
              row.set(11, Cells.number(runs.commonAdjustedP()));
            });
    row.set(12, runs.dialMoved() ? "changed" : "not-shown");
    return row;
  }

  private static List<String> half(Source source, String name, ScatterComparison scatter) {
    List<String> row = empty(source, name);
    List<String> cells = scatter(scatter);
    for (int i = 0; i < cells.size(); i++) {
      row.set(SCATTER_FROM + i, cells.get(i));
    }
    return row;
  }

  private static List<String> empty(Source source, String name) {
    List<String> row = new ArrayList<>(Collections.nCopies(HEADINGS.size(), ""));
    row.set(0, Source.WORDS.word(source));
    row.set(1, name);
    return row;
  }

  private static List<String> scatter(ScatterComparison scatter) {
    return List.of(
        number(scatter.before()),
        number(scatter.after()),
        number(scatter.ratio().map(r -> r.ratio())),
        number(scatter.ratio().map(r -> r.low())),
        number(scatter.ratio().map(r -> r.high())),
        number(scatter.p()),
        Cells.number(scatter.adjustedP()),
        scatter.found() ? "changed" : "not-shown");
  }

  private static String number(Figure<Double> figure) {
    return Cells.number(figure.known().map(OptionalDouble::of).orElseGet(OptionalDouble::empty));
  }
}
