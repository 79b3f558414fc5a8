package org.halflight.export;

import java.util.ArrayList;
import java.util.List;
import org.halflight.session.Phase;
import org.halflight.session.Source;
import org.halflight.stats.Figure;
import org.halflight.stats.GeneralisedEsd;
import org.halflight.stats.MannKendall;
import org.halflight.stats.Sample;
import org.halflight.stats.TheilSen;
import org.halflight.stats.ToleranceInterval;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.RunStatistics;
import org.halflight.verdict.SpeedStatistics;

/** One row a statistic of a marked speed; docs/file-formats.md says what each column means. */
public final class StatisticTable {
  private record Row(
      Source source,
      SpeedStatistics speed,
      String name,
      String unit,
      int firings,
      int least,
      Figure<Double> figure) {
    String whyNot() {
      return figure instanceof Figure.Known
          ? ""
          : figure instanceof Figure.NoScatter ? "all-alike" : "too-few";
    }
  }

  private static final List<Column<Row>> COLUMNS =
      List.of(
          Column.text("source", row -> Source.WORDS.word(row.source)),
          Column.text("phase", row -> Phase.WORDS.word(row.speed.summary().phase())),
          Column.text("marked_speed", row -> row.speed.summary().speed().label()),
          Column.text("statistic", Row::name),
          Column.text("unit", Row::unit),
          Column.number("value", row -> Column.optional(row.figure.known())),
          Column.count("firings", Row::firings),
          Column.count("least_firings", Row::least),
          Column.text("why_not", Row::whyNot));

  /** Names of its columns. */
  public static List<String> headings() {
    return Column.names(COLUMNS);
  }

  private StatisticTable() {}

  /** The table of some runs, phase by phase, slow to fast. */
  public static CsvTable of(Source source, List<RunStatistics> runs) {
    List<Row> rows = new ArrayList<>();
    for (RunStatistics run : runs) {
      run.speeds().forEach(speed -> new Rows(rows, source, speed).all());
    }
    return CsvTable.of(COLUMNS, rows);
  }

  /** The unit of a figure of curtains in a table. */
  static String unit(CurtainFigure figure) {
    return switch (figure.unit()) {
      case SECONDS -> "ms";
      case STOPS -> "stops";
      case MILLIMETRES -> "mm";
      case RATIO -> "";
    };
  }

  private record Rows(List<Row> rows, Source source, SpeedStatistics speed) {
    void all() {
      add("mean_error", "stops", Sample.LEAST_FOR_MEAN, speed.mean());
      add("median_error", "stops", Sample.LEAST_FOR_MEAN, speed.median());
      add("scatter", "stops", Sample.LEAST_FOR_SCATTER, speed.scatter());
      add("robust_scatter", "stops", Sample.LEAST_FOR_ROBUST_SPREAD, speed.robustScatter());
      int two = Sample.LEAST_FOR_SCATTER;
      add("mean_low", "stops", two, speed.meanInterval().map(i -> i.low()));
      add("mean_high", "stops", two, speed.meanInterval().map(i -> i.high()));
      add("mean_interval_level", "", two, speed.meanInterval().map(i -> i.level()));
      int least = ToleranceInterval.LEAST;
      add("one_exposure_low", "stops", least, speed.oneExposure().map(i -> i.low()));
      add("one_exposure_high", "stops", least, speed.oneExposure().map(i -> i.high()));
      add("one_exposure_content", "", least, speed.oneExposure().map(i -> i.content()));
      add("one_exposure_confidence", "", least, speed.oneExposure().map(i -> i.confidence()));
      creep();
      curtains();
      add(
          "outliers",
          "firings",
          GeneralisedEsd.LEAST,
          speed.outliers().map(esd -> (double) esd.outliers()));
      speed
          .summary()
          .afterRestStops()
          .ifPresent(
              stops ->
                  rows.add(
                      new Row(
                          source,
                          speed,
                          "after_rest_error",
                          "stops",
                          1,
                          1,
                          new Figure.Known<>(stops))));
    }

    private void curtains() {
      for (CurtainFigure figure : CurtainFigure.values()) {
        speed
            .summary()
            .curtains()
            .flatMap(its -> its.sample(figure))
            .ifPresent(sample -> curtains(figure, sample));
      }
    }

    private void curtains(CurtainFigure figure, Sample sample) {
      String name = "curtain_" + CurtainFigure.WORDS.word(figure).replace('-', '_');
      String unit = unit(figure);
      double times = figure.unit() == CurtainFigure.Unit.SECONDS ? 1e3 : 1;
      rows.add(row(name, unit, sample, Sample.LEAST_FOR_MEAN, sample.mean().map(m -> m * times)));
      rows.add(
          row(
              name + "_scatter",
              unit,
              sample,
              Sample.LEAST_FOR_SCATTER,
              sample.sd().map(sd -> sd * times)));
    }

    private Row row(String name, String unit, Sample sample, int least, Figure<Double> figure) {
      return new Row(source, speed, name, unit, sample.n(), least, figure);
    }

    private void creep() {
      int least = TheilSen.LEAST;
      add("creep", "stops/firing", least, speed.creep().map(TheilSen::slope));
      add("creep_low", "stops/firing", least, speed.creep().map(t -> t.slopeInterval().low()));
      add("creep_high", "stops/firing", least, speed.creep().map(t -> t.slopeInterval().high()));
      add("creep_level", "", least, speed.creep().map(t -> t.slopeInterval().level()));
      add("creep_p", "", MannKendall.LEAST, speed.creepTest().map(MannKendall::p));
    }

    private void add(String name, String unit, int least, Figure<Double> figure) {
      int firings = speed.summary().errors().n();
      rows.add(new Row(source, speed, name, unit, firings, least, figure));
    }
  }
}
