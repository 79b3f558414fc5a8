package org.halflight.export;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.halflight.session.Source;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Figure;
import org.halflight.stats.HodgesLehmann;
import org.halflight.stats.MeanShift;
import org.halflight.verdict.CommonShift;
import org.halflight.verdict.CurtainChange;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.ScatterComparison;
import org.halflight.verdict.ShiftFinding;
import org.halflight.verdict.SpeedComparison;

/**
 * Two runs against each other: one row a marked speed, then one for the whole dial and one for each
 * half of it; docs/file-formats.md says what each column means.
 */
public final class ComparisonTable {
  /** A row: of a speed, of the whole dial with its common shift, or of a half of the dial. */
  private record Row(
      Source source,
      String name,
      Optional<SpeedComparison> speed,
      Optional<RunComparison> dial,
      Optional<ScatterComparison> scatter,
      List<CurtainChange> curtains) {
    /** A figure of the curtains that is compared at this speed, or over the whole dial. */
    OptionalDouble curtains(CurtainFigure figure, Function<CurtainChange, OptionalDouble> part) {
      return curtains.stream()
          .filter(change -> change.figure() == figure)
          .findFirst()
          .map(part)
          .orElse(OptionalDouble.empty());
    }

    Optional<CommonShift> common() {
      return dial.flatMap(RunComparison::common);
    }

    /** A figure of the speed, or of the shift that all have in common. */
    OptionalDouble shift(
        Function<MeanShift, Double> ofSpeed, ToDoubleFunction<CommonShift> ofDial) {
      return speed.isPresent()
          ? known(speed.get().shift().map(ofSpeed))
          : common().stream().mapToDouble(ofDial).findFirst();
    }

    OptionalDouble adjustedP() {
      return speed
          .map(SpeedComparison::adjustedP)
          .or(() -> dial.filter(its -> its.common().isPresent()).map(its -> its.commonAdjustedP()))
          .orElse(OptionalDouble.empty());
    }

    OptionalDouble rank(Function<HodgesLehmann, Double> figure) {
      return figure(its -> its.rankShift().map(figure));
    }

    OptionalDouble figure(Function<SpeedComparison, Figure<Double>> figure) {
      return speed.map(its -> known(figure.apply(its))).orElse(OptionalDouble.empty());
    }

    OptionalDouble value(Function<SpeedComparison, OptionalDouble> figure) {
      return speed.map(figure).orElse(OptionalDouble.empty());
    }

    OptionalDouble scatter(Function<ScatterComparison, Figure<Double>> figure) {
      return scatter.map(its -> known(figure.apply(its))).orElse(OptionalDouble.empty());
    }

    Optional<String> count(Function<SpeedComparison, Integer> count) {
      return speed.map(count).map(String::valueOf);
    }

    private static OptionalDouble known(Figure<Double> figure) {
      return Column.optional(figure.known());
    }
  }

  private static final List<Column<Row>> OF_SPEEDS =
      List.of(
          Column.text("source", row -> Source.WORDS.word(row.source)),
          Column.text("marked_speed", Row::name),
          Column.word("firings_before", row -> row.count(its -> its.before().errors().n())),
          Column.word("firings_after", row -> row.count(its -> its.after().errors().n())),
          Column.number("mean_before_stops", row -> row.value(its -> its.before().meanStops())),
          Column.number("mean_after_stops", row -> row.value(its -> its.after().meanStops())),
          Column.number("shift_stops", row -> row.shift(s -> s.shift(), c -> c.stops())),
          Column.number(
              "shift_low_stops",
              row -> row.shift(s -> s.interval().low(), c -> c.interval().low())),
          Column.number(
              "shift_high_stops",
              row -> row.shift(s -> s.interval().high(), c -> c.interval().high())),
          Column.number(
              "shift_level",
              row -> row.shift(s -> s.interval().level(), c -> c.interval().level())),
          Column.number("shift_p", row -> row.shift(s -> s.p(), c -> c.p())),
          Column.number("shift_adjusted_p", Row::adjustedP),
          Column.word(
              "finding",
              row ->
                  row.speed
                      .map(its -> ShiftFinding.WORDS.word(its.finding()))
                      .or(() -> row.dial.map(its -> found(its.dialMoved())))),
          Column.number(
              "within_a_tenth_p", row -> row.figure(its -> its.withinATenth().map(t -> t.p()))),
          Column.number("findable_shift_stops", row -> row.value(its -> its.findableStops())),
          Column.number("rank_shift_stops", row -> row.rank(s -> s.shift())),
          Column.number("rank_shift_low_stops", row -> row.rank(s -> s.interval().low())),
          Column.number("rank_shift_high_stops", row -> row.rank(s -> s.interval().high())),
          Column.number("rank_shift_level", row -> row.rank(s -> s.interval().level())),
          Column.number("rank_p", row -> row.figure(its -> its.rankTest().map(t -> t.p()))),
          Column.number("scatter_before_stops", row -> row.scatter(its -> its.before())),
          Column.number("scatter_after_stops", row -> row.scatter(its -> its.after())),
          Column.number(
              "scatter_ratio", row -> row.scatter(its -> its.ratio().map(r -> r.ratio()))),
          Column.number(
              "scatter_ratio_low", row -> row.scatter(its -> its.ratio().map(r -> r.low()))),
          Column.number(
              "scatter_ratio_high", row -> row.scatter(its -> its.ratio().map(r -> r.high()))),
          Column.number("scatter_p", row -> row.scatter(its -> its.p())),
          Column.number(
              "scatter_adjusted_p",
              row -> row.scatter.map(its -> its.adjustedP()).orElse(OptionalDouble.empty())),
          Column.word("scatter_finding", row -> row.scatter.map(its -> found(its.found()))),
          Column.word(
              "threefold_scatter_firings",
              row -> row.speed.map(its -> Column.whole(its.power().scatterFirings()))),
          Column.word("firings_compared", row -> row.count(its -> its.compared())));

  private static final List<Column<Row>> COLUMNS =
      Stream.concat(
              OF_SPEEDS.stream(), CurtainChange.COMPARED.stream().flatMap(ComparisonTable::columns))
          .toList();

  /** A figure of the curtains before and after, and the chance of such a change by accident. */
  private static Stream<Column<Row>> columns(CurtainFigure figure) {
    String name = CurtainFigure.WORDS.word(figure).replace('-', '_');
    String unit = StatisticTable.unit(figure);
    double times = figure.unit() == CurtainFigure.Unit.SECONDS ? 1e3 : 1;
    return Stream.of(
        Column.number(
            name + "_before_" + unit,
            row -> row.curtains(figure, change -> OptionalDouble.of(change.before() * times))),
        Column.number(
            name + "_after_" + unit,
            row -> row.curtains(figure, change -> OptionalDouble.of(change.after() * times))),
        Column.number(name + "_adjusted_p", row -> row.curtains(figure, CurtainChange::adjustedP)));
  }

  /** Names of its columns. */
  public static List<String> headings() {
    return Column.names(COLUMNS);
  }

  private ComparisonTable() {}

  /** The table of a comparison. */
  public static CsvTable of(Source source, RunComparison runs) {
    List<Row> rows = new ArrayList<>();
    List<CurtainChange> curtains = runs.curtains();
    for (SpeedComparison speed : runs.speeds()) {
      rows.add(
          new Row(
              source,
              speed.speed().label(),
              Optional.of(speed),
              Optional.empty(),
              Optional.of(speed.scatter()),
              at(curtains, Optional.of(speed.speed()))));
    }
    rows.add(
        new Row(
            source,
            "whole-dial",
            Optional.empty(),
            Optional.of(runs),
            Optional.empty(),
            at(curtains, Optional.empty())));
    rows.add(half(source, "slow-speeds", runs.slowScatter()));
    rows.add(half(source, "fast-speeds", runs.fastScatter()));
    return CsvTable.of(COLUMNS, rows);
  }

  private static Row half(Source source, String name, ScatterComparison scatter) {
    return new Row(
        source, name, Optional.empty(), Optional.empty(), Optional.of(scatter), List.of());
  }

  private static List<CurtainChange> at(List<CurtainChange> all, Optional<MarkedSpeed> speed) {
    return all.stream().filter(change -> change.speed().equals(speed)).toList();
  }

  private static String found(boolean found) {
    return found ? "changed" : "not-shown";
  }
}
