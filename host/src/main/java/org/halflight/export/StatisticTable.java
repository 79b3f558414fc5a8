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
import org.halflight.verdict.RunStatistics;
import org.halflight.verdict.SpeedStatistics;

/** One row a statistic of a marked speed; docs/file-formats.md says what each column means. */
public final class StatisticTable {
  private static final List<String> HEADINGS =
      List.of(
          "source",
          "phase",
          "marked_speed",
          "statistic",
          "unit",
          "value",
          "firings",
          "least_firings",
          "why_not");

  /** Names of its columns. */
  public static List<String> headings() {
    return HEADINGS;
  }

  private StatisticTable() {}

  /** The table of some runs, phase by phase, slow to fast. */
  public static CsvTable of(Source source, List<RunStatistics> runs) {
    List<List<String>> rows = new ArrayList<>();
    for (RunStatistics run : runs) {
      run.speeds().forEach(speed -> new Rows(rows, source, speed).all());
    }
    return new CsvTable(HEADINGS, rows);
  }

  private record Rows(List<List<String>> rows, Source source, SpeedStatistics speed) {
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
      add(
          "outliers",
          "firings",
          GeneralisedEsd.LEAST,
          speed.outliers().map(esd -> (double) esd.outliers()));
      speed
          .summary()
          .afterRestStops()
          .ifPresent(stops -> row("after_rest_error", "stops", Cells.number(stops), 1, 1, ""));
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
      row(
          name,
          unit,
          figure.known().map(Cells::number).orElse(""),
          speed.summary().errors().n(),
          least,
          figure.known().isPresent()
              ? ""
              : figure instanceof Figure.NoScatter ? "all-alike" : "too-few");
    }

    private void row(
        String name, String unit, String value, int firings, int least, String whyNot) {
      rows.add(
          List.of(
              Source.WORDS.word(source),
              Phase.WORDS.word(speed.summary().phase()),
              speed.summary().speed().label(),
              name,
              unit,
              value,
              String.valueOf(firings),
              String.valueOf(least),
              whyNot));
    }
  }
}
