package org.halflight.words;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Figure;
import org.halflight.stats.Interval;
import org.halflight.verdict.ChangeExtent;
import org.halflight.verdict.CommonShift;
import org.halflight.verdict.FindingPower;
import org.halflight.verdict.OutcomeChange;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.ScatterComparison;
import org.halflight.verdict.SetupDifference;
import org.halflight.verdict.ShiftFinding;
import org.halflight.verdict.SpeedComparison;

/** Two runs against each other, in sentences. */
public final class ComparisonWords {
  private ComparisonWords() {}

  /** What to know before believing any of it; empty when nothing was unlike. */
  public static List<String> warnings(RunComparison runs) {
    List<String> warnings = new ArrayList<>();
    for (SetupDifference setup : runs.setups()) {
      warnings.add(
          Words.say(
              "compare.setup",
              setup.name(),
              setup.before().orElseGet(() -> Words.say("compare.setup.notNoted")),
              setup.after().orElseGet(() -> Words.say("compare.setup.notNoted"))));
    }
    if (runs.otherRig()) {
      warnings.add(Words.say("compare.otherRig"));
    }
    if (runs.readings()) {
      warnings.add(Words.say("compare.readings"));
    }
    if (!runs.onlyBefore().isEmpty()) {
      warnings.add(Words.say("compare.onlyBefore", listed(runs.onlyBefore())));
    }
    if (!runs.onlyAfter().isEmpty()) {
      warnings.add(Words.say("compare.onlyAfter", listed(runs.onlyAfter())));
    }
    List<MarkedSpeed> cut =
        runs.speeds().stream()
            .filter(SpeedComparison::isCutToTheFirst)
            .map(SpeedComparison::speed)
            .toList();
    if (!cut.isEmpty()) {
      warnings.add(
          Words.say(
              "compare.unequal",
              SpeedNames.of(cut, runs.speeds().stream().map(SpeedComparison::speed).toList())));
    }
    return warnings;
  }

  /** The whole in a few sentences: what changed, what did not, and the evenness of both halves. */
  public static List<String> summary(RunComparison runs) {
    List<String> sentences = new ArrayList<>();
    if (runs.speeds().isEmpty()) {
      return List.of(Words.say("compare.none"));
    }
    List<MarkedSpeed> dial = runs.speeds().stream().map(SpeedComparison::speed).toList();
    for (OutcomeChange change : runs.outcomes()) {
      sentences.add(
          Words.say(
              "compare.outcome",
              Sentences.outcome(change.outcome()),
              change.countBefore(),
              change.triesBefore(),
              change.countAfter(),
              change.triesAfter(),
              Numbers.chance(change.p())));
    }
    sentences.add(reach(runs, dial));
    if (runs.reach() == ChangeExtent.WHOLE_DIAL) {
      List<MarkedSpeed> apart = runs.common().orElseThrow().apart();
      if (!apart.isEmpty()) {
        sentences.add(Words.say("compare.reach.apart", SpeedNames.of(apart, dial)));
      }
    } else if (runs.reach() != ChangeExtent.NOTHING) {
      rest(runs, dial, ShiftFinding.LESS_THAN_A_TENTH, "compare.rest.same", sentences);
      rest(runs, dial, ShiftFinding.NO_EVIDENCE, "compare.rest.nothing", sentences);
    }
    runs.curtains().stream().map(CurtainWords::change).forEach(sentences::add);
    group(runs.slowScatter(), "compare.slowScatter", sentences);
    group(runs.fastScatter(), "compare.fastScatter", sentences);
    return sentences;
  }

  /**
   * Everything: warnings, the summary, each speed. What single speeds cannot say about their
   * scatter is said once.
   */
  public static List<String> all(RunComparison runs) {
    List<String> lines = new ArrayList<>(warnings(runs));
    lines.addAll(summary(runs));
    if (runs.speeds().isEmpty()) {
      return lines;
    }
    Set<String> open = new LinkedHashSet<>();
    for (SpeedComparison speed : runs.speeds()) {
      List<String> own = new ArrayList<>(List.of(mean(speed)));
      ranks(speed).ifPresent(own::add);
      if (speed.scatter().found()) {
        own.add(scatter(speed.scatter()));
      } else if (speed.scatter().ratio().known().isPresent()) {
        open.add(unresolved(speed.scatter()));
      }
      lines.add(String.join(" ", own));
    }
    lines.addAll(open);
    advice(runs).ifPresent(lines::add);
    lines.add(Words.say(runs.byRepeatedRuns() ? "compare.chance.repeated" : "compare.chance"));
    return lines;
  }

  /** Whether more firings or another run would show more, where a speed's change is open. */
  public static Optional<String> advice(RunComparison runs) {
    OptionalInt fewest =
        runs.speeds().stream()
            .filter(speed -> speed.finding() == ShiftFinding.NO_EVIDENCE)
            .mapToInt(SpeedComparison::compared)
            .min();
    if (fewest.isEmpty()) {
      return Optional.empty();
    }
    FindingPower power = runs.speeds().get(0).power();
    int firings = fewest.getAsInt();
    return Optional.of(
        power.isMoreOfLittleUse(firings)
            ? Words.say("compare.more.repeat", firings)
            : Words.say(
                "compare.more.firings",
                2 * firings,
                Math.round(100 * (1 - power.shiftInSds(2 * firings) / power.shiftInSds(firings)))));
  }

  /** One speed: the change of its mean, what the ranks say, the change of its scatter. */
  public static List<String> speed(SpeedComparison speed) {
    List<String> sentences = new ArrayList<>();
    sentences.add(mean(speed));
    ranks(speed).ifPresent(sentences::add);
    sentences.add(scatter(speed.scatter()));
    return sentences;
  }

  /** A shift in words: {@code 0.94 stop faster than before}. */
  public static String shift(double stops) {
    double rounded = Math.round(stops * 100) / 100.0;
    return rounded == 0
        ? Words.say("compare.unmoved")
        : Words.say(
            rounded < 0 ? "compare.faster" : "compare.slower",
            Numbers.plainStops(Math.abs(rounded)));
  }

  private static Optional<String> ranks(SpeedComparison speed) {
    return speed
        .rankTest()
        .known()
        .map(
            test -> {
              boolean byRanks = test.p() <= RunComparison.SHIFT_ALPHA;
              String key = !byRanks ? "not" : speed.finding().isChange() ? "agrees" : "alone";
              return Words.say(
                  "compare.ranks." + key,
                  Numbers.chance(test.p()),
                  speed.rankShift().known().map(s -> shift(s.shift())).orElseThrow());
            });
  }

  private static String reach(RunComparison runs, List<MarkedSpeed> dial) {
    List<SpeedComparison> changed = runs.changed();
    List<MarkedSpeed> names = changed.stream().map(SpeedComparison::speed).toList();
    return switch (runs.reach()) {
      case NOTHING ->
          runs.speeds().stream().allMatch(s -> s.finding() == ShiftFinding.LESS_THAN_A_TENTH)
              ? Words.say("compare.reach.same")
              : Words.say("compare.reach.nothing");
      case ONE_SPEED ->
          Words.say(
              runs.isEverySpeedCompared() ? "compare.reach.one" : "compare.reach.oneCompared",
              names.get(0),
              shift(changed.get(0).shift().get().shift()));
      case SLOW_SPEEDS ->
          Words.say("compare.reach.slow", SpeedNames.of(names, dial), range(changed));
      case SOME_SPEEDS ->
          Words.say(
              "compare.reach.some",
              String.join(
                  ", ",
                  changed.stream()
                      .map(
                          s ->
                              Numbers.speed(s.speed())
                                  + " ("
                                  + shift(s.shift().get().shift())
                                  + ")")
                      .toList()));
      case WHOLE_DIAL -> dial(runs.common().orElseThrow());
    };
  }

  private static String dial(CommonShift common) {
    return Words.say(
        "compare.reach.dial",
        shift(common.stops()),
        Numbers.signedStops(common.interval().low()),
        Numbers.signedStops(common.interval().high()),
        Numbers.speed(common.leftOut()));
  }

  private static String range(List<SpeedComparison> changed) {
    double[] shifts = changed.stream().mapToDouble(s -> s.shift().get().shift()).sorted().toArray();
    double least = shifts[0];
    double most = shifts[shifts.length - 1];
    if (most < 0) {
      return Words.say("compare.faster", Numbers.stopsRange(-most, -least));
    }
    if (least > 0) {
      return Words.say("compare.slower", Numbers.stopsRange(least, most));
    }
    return Words.say("table.fromTo", shift(least), shift(most));
  }

  private static void rest(
      RunComparison runs,
      List<MarkedSpeed> dial,
      ShiftFinding finding,
      String key,
      List<String> sentences) {
    List<MarkedSpeed> speeds =
        runs.speeds().stream()
            .filter(speed -> speed.finding() == finding)
            .map(SpeedComparison::speed)
            .toList();
    if (!speeds.isEmpty()) {
      sentences.add(Words.say(key, SpeedNames.of(speeds, dial)));
    }
  }

  private static String mean(SpeedComparison speed) {
    if (speed.shift().known().isEmpty()) {
      return speed.shift() instanceof Figure.NotEnoughFirings
          ? Words.say(
              "compare.few", speed.speed(), speed.before().errors().n(), speed.after().errors().n())
          : Words.say("compare.alike", speed.speed());
    }
    Interval interval = speed.shift().get().interval();
    ShiftFinding finding = speed.finding();
    boolean hint = finding == ShiftFinding.NO_EVIDENCE && !interval.contains(0);
    OptionalDouble findable = speed.findableStops();
    String last =
        finding == ShiftFinding.NO_EVIDENCE && !hint
            ? Numbers.plainStops(findable.orElseThrow())
            : shift(speed.shift().get().shift());
    return Words.say(
        hint ? "compare.hint" : "compare." + Words.key(finding),
        speed.speed(),
        Numbers.stopsInWords(speed.meanBefore().orElseThrow()),
        Numbers.stopsInWords(speed.meanAfter().orElseThrow()),
        last,
        Numbers.signedStops(interval.low()),
        Numbers.signedStops(interval.high()));
  }

  private static String scatter(ScatterComparison scatter) {
    if (scatter.ratio().known().isEmpty()) {
      return scatter.ratio() instanceof Figure.NotEnoughFirings
          ? Words.count("compare.scatter.few", scatter.firings(), scatter.firings())
          : Words.say("stat.alike");
    }
    String before = Numbers.plainStops(scatter.before().get());
    String after = Numbers.plainStops(scatter.after().get());
    if (scatter.found()) {
      return Words.say("compare.scatter." + direction(scatter), before, after);
    }
    return Words.say("compare.scatter.wasAndIs", before, after, unresolved(scatter));
  }

  /** What so few firings can and cannot say about a scatter that is not shown to have changed. */
  private static String unresolved(ScatterComparison scatter) {
    OptionalInt wanted = scatter.power().scatterFirings();
    double chance =
        scatter.p().known().isEmpty() ? 0 : scatter.power().scatterChance(scatter.firings());
    if (chance >= FindingPower.POWER) {
      return Words.say(
          "compare.scatter.none", scatter.firings(), String.valueOf(Math.round(100 * chance)));
    }
    return wanted.isPresent()
        ? Words.say("compare.scatter.open", scatter.firings(), wanted.getAsInt())
        : Words.say("compare.scatter.openMany", scatter.firings());
  }

  private static void group(ScatterComparison scatter, String key, List<String> sentences) {
    if (scatter.found()) {
      sentences.add(
          Words.say(
              key + "." + direction(scatter),
              Numbers.plainStops(scatter.before().get()),
              Numbers.plainStops(scatter.after().get())));
    }
  }

  private static String direction(ScatterComparison scatter) {
    return scatter.after().get() < scatter.before().get() ? "less" : "more";
  }

  private static String listed(List<MarkedSpeed> speeds) {
    return String.join(", ", speeds.stream().map(Numbers::speed).toList());
  }
}
