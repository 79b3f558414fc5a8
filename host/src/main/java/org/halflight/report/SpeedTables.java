package org.halflight.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedComparison;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** The table of the speeds: one run by itself, or two side by side with the change. */
final class SpeedTables {
  private static final float SIZE = 8;

  private SpeedTables() {}

  static Columns columns(List<RunPart> parts) {
    if (parts.size() == 1) {
      return new Columns(
          words(
              "marked",
              "shouldBe",
              "time",
              "error",
              "interval",
              "scatter",
              "firings",
              "verdict",
              "odd"),
          List.of(),
          List.of(16f, 18f, 17f, 14f, 32f, 15f, 17f, 24f, 24f),
          List.of(false, true, true, true, true, true, true, false, false),
          SIZE);
    }
    return new Columns(
        words(
            "marked",
            "shouldBe",
            "time",
            "error",
            "scatter",
            "time",
            "error",
            "scatter",
            "verdict",
            "odd",
            "change"),
        List.of(
            new Columns.Group("", 2),
            new Columns.Group(Sentences.phase(parts.get(0).run().phase()), 3),
            new Columns.Group(Sentences.phase(parts.get(1).run().phase()), 5)),
        List.of(16f, 19f, 15f, 13f, 14f, 15f, 13f, 14f, 20f, 25f, 28f),
        List.of(false, true, true, true, true, true, true, true, false, false, false),
        SIZE);
  }

  static List<List<String>> rows(List<RunPart> parts, Optional<RunComparison> comparison) {
    List<List<String>> rows = new ArrayList<>();
    if (parts.size() == 1) {
      parts.get(0).run().speeds().forEach(speed -> rows.add(alone(speed)));
      return rows;
    }
    RunSummary found = parts.get(0).run();
    RunSummary left = parts.get(1).run();
    Set<MarkedSpeed> speeds = new LinkedHashSet<>();
    found.speeds().forEach(s -> speeds.add(s.speed()));
    left.speeds().forEach(s -> speeds.add(s.speed()));
    speeds.stream()
        .sorted(java.util.Comparator.comparingDouble(s -> -s.literalSeconds()))
        .forEach(
            speed ->
                rows.add(
                    both(
                        speed,
                        of(found, speed),
                        of(left, speed),
                        comparison.flatMap(runs -> runs.at(speed)))));
    return rows;
  }

  private static List<String> alone(SpeedSummary speed) {
    List<String> row = new ArrayList<>();
    row.add(speed.speed().label());
    row.add(Numbers.millis(speed.referenceSeconds()));
    row.add(time(speed));
    row.add(error(speed));
    row.add(
        speed
            .expandedIntervalStops()
            .map(
                i ->
                    Words.say(
                        "table.fromTo", Numbers.bareStops(i.low()), Numbers.bareStops(i.high())))
            .orElseGet(SpeedTables::nothing));
    row.add(scatter(speed));
    row.add(Words.say("table.countOf", speed.errors().n(), speed.tries()));
    row.add(verdict(speed));
    row.add(odd(speed));
    return row;
  }

  private static List<String> both(
      MarkedSpeed speed,
      Optional<SpeedSummary> found,
      Optional<SpeedSummary> left,
      Optional<SpeedComparison> comparison) {
    List<String> row = new ArrayList<>();
    row.add(speed.label());
    row.add(Numbers.millis(found.or(() -> left).orElseThrow().referenceSeconds()));
    for (Optional<SpeedSummary> run : List.of(found, left)) {
      row.add(run.map(SpeedTables::time).orElseGet(SpeedTables::nothing));
      row.add(run.map(SpeedTables::error).orElseGet(SpeedTables::nothing));
      row.add(run.map(SpeedTables::scatter).orElseGet(SpeedTables::nothing));
    }
    row.add(left.map(SpeedTables::verdict).orElseGet(SpeedTables::nothing));
    row.add(left.map(SpeedTables::odd).orElseGet(SpeedTables::nothing));
    row.add(comparison.map(SpeedTables::change).orElseGet(SpeedTables::nothing));
    return row;
  }

  private static Optional<SpeedSummary> of(RunSummary run, MarkedSpeed speed) {
    return run.speeds().stream().filter(s -> s.speed().equals(speed)).findFirst();
  }

  private static String time(SpeedSummary speed) {
    return speed.meanSeconds().isPresent()
        ? Numbers.millis(speed.meanSeconds().getAsDouble())
        : nothing();
  }

  private static String error(SpeedSummary speed) {
    return speed.meanStops().isPresent()
        ? Numbers.bareStops(speed.meanStops().getAsDouble())
        : nothing();
  }

  private static String scatter(SpeedSummary speed) {
    return speed.scatterStops().isPresent()
        ? Numbers.bareSize(speed.scatterStops().getAsDouble())
        : nothing();
  }

  private static String verdict(SpeedSummary speed) {
    return speed.isReboundOpen()
        ? Words.say("page.verdict.within.reboundOpen")
        : Words.of("page.verdict", speed.verdict());
  }

  private static String odd(SpeedSummary speed) {
    return speed
        .oddOnes()
        .map(
            odd ->
                Words.say(
                    "odd.ones.short", odd.odd(), odd.releases(), Numbers.percent(odd.upperShare())))
        .orElseGet(SpeedTables::nothing);
  }

  private static String change(SpeedComparison speed) {
    String amount =
        speed
            .shift()
            .known()
            .map(
                shift ->
                    Words.say(
                        shift.shift() < 0 ? "page.change.faster" : "page.change.slower",
                        Numbers.bareSize(Math.abs(shift.shift()))))
            .orElse("");
    return Words.of("page.change", speed.finding(), amount);
  }

  private static String nothing() {
    return Words.say("table.nothing");
  }

  private static List<String> words(String... keys) {
    List<String> words = new ArrayList<>();
    for (String key : keys) {
      words.add(Words.say("page.table." + key));
    }
    return words;
  }
}
