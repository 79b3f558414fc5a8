package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.halflight.session.FiringConditions;
import org.halflight.stats.Figure;
import org.halflight.stats.GeneralisedEsd;
import org.halflight.stats.Interval;
import org.halflight.stats.MannKendall;
import org.halflight.stats.Sample;
import org.halflight.stats.TheilSen;
import org.halflight.stats.ToleranceInterval;
import org.halflight.verdict.RunStatistics;
import org.halflight.verdict.ShutterTrouble;
import org.halflight.verdict.SpeedStatistics;

/** The statistics of a run in numbers and sentences. */
public final class StatisticWords {
  private StatisticWords() {}

  /** What went wrong, in the order of the run's troubles; these head every result. */
  public static List<String> troubles(RunStatistics run) {
    return run.troubles().stream().map(StatisticWords::trouble).toList();
  }

  /** Releases without a time, in one sentence. */
  public static String trouble(ShutterTrouble trouble) {
    String key = "trouble." + Words.key(trouble.outcome());
    return Words.has(key)
        ? Words.say(key, trouble.speed(), trouble.count(), trouble.tries())
        : Words.say(
            "trouble.other",
            trouble.speed(),
            trouble.count(),
            trouble.tries(),
            Sentences.outcome(trouble.outcome()));
  }

  /** All statistics of one speed. The first firing after rest has a line of its own, at the end. */
  public static List<StatisticLine> lines(SpeedStatistics speed) {
    int n = speed.summary().errors().n();
    List<StatisticLine> lines = new ArrayList<>();
    lines.add(
        line(
            "mean",
            n,
            Sample.LEAST_FOR_MEAN,
            speed.mean(),
            Numbers::signedStops,
            mean -> Words.say("stat.mean.says", n, Numbers.stopsInWords(mean))));
    lines.add(
        line(
            "median",
            n,
            Sample.LEAST_FOR_MEAN,
            speed.median(),
            Numbers::signedStops,
            median -> Words.say("stat.median.says", Numbers.signedStops(median))));
    lines.add(
        line(
            "scatter",
            n,
            Sample.LEAST_FOR_SCATTER,
            speed.scatter(),
            Numbers::plainStops,
            sd -> Words.say("stat.scatter.says", Numbers.plainStops(sd))));
    lines.add(
        line(
            "robust-scatter",
            n,
            Sample.LEAST_FOR_ROBUST_SPREAD,
            speed.robustScatter(),
            Numbers::plainStops,
            sd -> Words.say("stat.robust-scatter.says", Numbers.plainStops(sd))));
    lines.add(
        line(
            "mean-interval",
            n,
            Sample.LEAST_FOR_SCATTER,
            speed.meanInterval(),
            i -> fromTo(i.low(), i.high()),
            StatisticWords::meanInterval));
    lines.add(
        line(
            "one-exposure",
            n,
            ToleranceInterval.LEAST,
            speed.oneExposure(),
            i -> fromTo(i.low(), i.high()),
            StatisticWords::oneExposure));
    lines.add(
        line(
            "creep",
            n,
            MannKendall.LEAST,
            speed.creep(),
            line -> Words.say("stat.perFiring", Numbers.signedStops(line.slope())),
            line -> creep(speed, line)));
    lines.add(
        line(
            "outliers",
            n,
            GeneralisedEsd.LEAST,
            speed.outliers(),
            esd -> String.valueOf(esd.outliers()),
            esd ->
                esd.outliers() == 0
                    ? Words.say("stat.outliers.none")
                    : Words.count("stat.outliers", esd.outliers(), esd.outliers())));
    speed
        .summary()
        .afterRestStops()
        .ifPresent(
            stops ->
                lines.add(
                    new StatisticLine(
                        Words.say("stat.after-rest"),
                        Numbers.signedStops(stops),
                        Words.say("stat.firings", 1, 1),
                        Words.say("stat.after-rest.says", Numbers.stopsInWords(stops)))));
    speed
        .summary()
        .conditions()
        .apart()
        .forEach((conditions, errors) -> lines.add(apart(conditions, errors)));
    return lines;
  }

  private static StatisticLine apart(FiringConditions conditions, Sample errors) {
    return new StatisticLine(
        ConditionWords.list(conditions),
        Numbers.signedStops(errors.mean().known().orElseThrow()),
        Words.say("stat.firings", errors.n(), 1),
        Words.say("stat.apart.says", ConditionWords.mean(errors)));
  }

  private static <T> StatisticLine line(
      String key,
      int n,
      int least,
      Figure<T> figure,
      Function<T, String> number,
      Function<T, String> sentence) {
    String known =
        figure
            .known()
            .map(sentence)
            .orElseGet(
                () ->
                    figure instanceof Figure.NotEnoughFirings<T> few
                        ? Words.count("stat.few", few.firings(), few.firings(), few.least())
                        : Words.say("stat.alike"));
    return new StatisticLine(
        Words.say("stat." + key),
        figure.known().map(number).orElseGet(() -> Words.say("table.nothing")),
        Words.say("stat.firings", n, least),
        known);
  }

  private static String meanInterval(Interval interval) {
    return Words.say(
        "stat.mean-interval.says",
        Numbers.signedStops(interval.low()),
        Numbers.signedStops(interval.high()),
        Numbers.percent(interval.level()));
  }

  private static String oneExposure(ToleranceInterval interval) {
    return Words.say(
        "stat.one-exposure.says",
        Numbers.signedStops(interval.low()),
        Numbers.signedStops(interval.high()),
        Numbers.percent(interval.content()),
        Numbers.percent(interval.confidence()));
  }

  private static String creep(SpeedStatistics speed, TheilSen line) {
    return speed
        .creepTest()
        .known()
        .map(
            test ->
                !speed.creeps()
                    ? Words.say("stat.creep.none", Numbers.chance(test.p()))
                    : Words.say(
                        test.s() > 0 ? "stat.creep.slower" : "stat.creep.faster",
                        Numbers.plainStops(Math.abs(line.slope())),
                        Numbers.chance(test.p())))
        .orElseGet(() -> Words.say("stat.alike"));
  }

  private static String fromTo(double low, double high) {
    return Words.say("table.fromTo", Numbers.signedStops(low), Numbers.signedStops(high));
  }
}
