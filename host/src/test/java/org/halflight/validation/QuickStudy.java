package org.halflight.validation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.QuickRepeat;
import org.halflight.session.QuickSpeeds;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.validation.invented.Draws;
import org.halflight.validation.invented.OldShutter;
import org.halflight.validation.invented.OldShutter.Fault;
import org.halflight.verdict.DecisionBasis;
import org.halflight.verdict.DecisionRule;
import org.halflight.verdict.HowMeasured;
import org.halflight.verdict.QuickAsFound;
import org.halflight.verdict.ReleaseCounts;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.Verdict;

/** What a quick look misses that five firings of each speed find, and what it saves. */
final class QuickStudy {
  private static final int SHUTTERS = 500;
  private static final int FIRINGS = 5;
  private static final double[] SIZES = {0.2, 0.35, 0.5, 0.75, 1};
  private static final Tolerance TOP = Tolerance.HALF;
  private static final Set<Verdict> BAD = Set.of(Verdict.SLOW, Verdict.FAST, Verdict.SOME_FAILED);

  private static final List<Fault> PLOTTED =
      List.of(
          Fault.SLOW_WITH_TAIL,
          Fault.STICKY_MIDDLE,
          Fault.TOP_SLOW,
          Fault.ONE_SPEED,
          Fault.TWO_HEAPS);

  private QuickStudy() {}

  /**
   * What one procedure comes to.
   *
   * @param called whether the fault got a verdict: slow, fast or failed at a speed that has it
   * @param isShown whether it is there to see: a verdict, a mean or single error beyond the
   *     tolerance, or firings that differ widely
   * @param elsewhere whether that is said of a speed that has no fault
   * @param windings that it took, with one for B
   */
  record Come(boolean called, boolean isShown, boolean elsewhere, int windings) {}

  /** Both procedures on two shutters that are the same as they come in. */
  record Both(Come quick, Come five) {}

  /** The firings of one speed as they come in. */
  private static final class At {
    private final int speed;
    private final DecisionRule rule;
    private final List<Double> errors = new ArrayList<>();
    private OptionalDouble afterRest = OptionalDouble.empty();
    private int failed;

    At(int speed, DecisionRule rule) {
      this.speed = speed;
      this.rule = rule;
    }

    void fire(OldShutter shutter, boolean isFirst) {
      double error = shutter.fire(speed);
      if (Double.isNaN(error)) {
        failed++;
      } else if (isFirst) {
        afterRest = OptionalDouble.of(error);
      } else {
        errors.add(error);
      }
    }

    SpeedSummary summary() {
      Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
      int timed = errors.size() + (afterRest.isPresent() ? 1 : 0);
      if (timed > 0) {
        outcomes.put(Outcome.TIMED, timed);
      }
      if (failed > 0) {
        outcomes.put(Outcome.STUCK_OPEN, failed);
      }
      return new SpeedSummary(
          MarkedSpeed.parse(OldShutter.DIAL.get(speed)),
          Reference.EXACT,
          Phase.AS_FOUND,
          new ReleaseCounts(timed + failed, outcomes),
          Sample.of(errors),
          afterRest,
          speed == OldShutter.DIAL.size() - 1 ? TOP : Tolerance.THIRD,
          new HowMeasured(Optional.empty(), new DecisionBasis(RigKnowledge.NO_RIG, rule)));
    }

    boolean isCalled() {
      return BAD.contains(summary().verdict());
    }

    boolean isShown() {
      SpeedSummary its = summary();
      OptionalDouble error = its.meanStops().isPresent() ? its.meanStops() : its.afterRestStops();
      return isCalled()
          || failed > 0
          || its.isUneven()
          || (error.isPresent() && !its.tolerance().contains(error.getAsDouble()));
    }

    /** Whether the first firing after rest is seen to be unlike the next ones. */
    boolean showsRest() {
      OptionalDouble mean = summary().meanStops();
      return mean.isPresent()
          && afterRest.isPresent()
          && afterRest.getAsDouble() - mean.getAsDouble() > SpeedSummary.UNEVEN_STOPS;
    }
  }

  static List<Both> both(Fault fault, double sizeStops, int shutters) {
    return IntStream.range(0, shutters)
        .mapToObj(
            i -> {
              long seed =
                  (Validation.SEED + 7919L * i + 104_729L * List.of(Fault.values()).indexOf(fault))
                          * 0x9E3779B97F4A7C15L
                      + Math.round(1000 * sizeStops);
              return new Both(
                  quick(new OldShutter(fault, sizeStops, new Draws(seed)), fault),
                  five(new OldShutter(fault, sizeStops, new Draws(seed)), fault));
            })
        .toList();
  }

  private static Come quick(OldShutter shutter, Fault fault) {
    List<At> all = new ArrayList<>();
    List<MarkedSpeed> dial = OldShutter.DIAL.stream().map(MarkedSpeed::parse).toList();
    for (MarkedSpeed speed : QuickSpeeds.of(dial)) {
      At at = new At(dial.indexOf(speed), DecisionRule.QUICK);
      at.fire(shutter, all.isEmpty());
      all.add(at);
    }
    // B comes before the repeats.
    int windings = all.size() + 1;
    Optional<QuickRepeat> next = next(all);
    while (next.isPresent()) {
      MarkedSpeed again = next.get().speed();
      all.stream()
          .filter(at -> dial.get(at.speed).equals(again))
          .forEach(at -> at.fire(shutter, false));
      windings++;
      next = next(all);
    }
    return come(all, shutter, fault, windings);
  }

  private static Optional<QuickRepeat> next(List<At> all) {
    return QuickAsFound.next(all.stream().map(At::summary).toList(), FIRINGS);
  }

  private static Come five(OldShutter shutter, Fault fault) {
    List<At> all = new ArrayList<>();
    int windings = 1;
    for (int speed = 0; speed < OldShutter.DIAL.size(); speed++) {
      At at = new At(speed, DecisionRule.FIXED_NUMBER);
      for (int i = 0; i < FIRINGS + (speed == 0 ? 1 : 0); i++) {
        at.fire(shutter, windings == 1);
        windings++;
      }
      all.add(at);
    }
    return come(all, shutter, fault, windings);
  }

  private static Come come(List<At> all, OldShutter shutter, Fault fault, int windings) {
    if (fault == Fault.AFTER_REST) {
      boolean seen = all.stream().anyMatch(At::showsRest);
      return new Come(seen, seen, all.stream().anyMatch(At::isCalled), windings);
    }
    List<At> faulty = all.stream().filter(at -> shutter.isAt(at.speed)).toList();
    return new Come(
        faulty.stream().anyMatch(At::isCalled),
        faulty.stream().anyMatch(At::isShown),
        all.stream().filter(at -> !shutter.isAt(at.speed)).anyMatch(At::isCalled),
        windings);
  }

  static double part(List<Both> all, Predicate<Both> holds) {
    return all.stream().filter(holds).count() / (double) all.size();
  }

  static double windings(List<Both> all) {
    return all.stream().mapToInt(each -> each.quick().windings()).average().orElseThrow();
  }

  static List<String> page() {
    List<String> page = new ArrayList<>();
    page.add("## Quick as found: what does it miss?");
    page.add("");
    page.add(
        "**Simulated.** "
            + SHUTTERS
            + " invented shutters of each fault and size, each taken through both procedures as it comes in. Five each: all ten speeds, slow to fast, 52 windings with B. Quick: one firing at 1/2, 1/30, 1/125 and 1/500, B, then the largest error again until it is known.");
    page.add("");
    page.add(
        "* Without a fault a speed is off by 0.08 stop (standard deviation; the top speed 0.1 stop slow besides) and scatters by 0.03 stop (median, up to 0.07), with firings further out now and then.");
    page.add(
        "* An old train runs in: its error falls from one and a quarter to three quarters of its size within twenty firings. Its scatter grows with its size.");
    page.add(
        "* Tolerance is a third of a stop, at the top speed half a stop. The rig is exact. All figures are our own.");
    page.add("");
    page.add(
        "'Verdict' counts shutters with a verdict slow, fast or some failed at a speed that has the fault. 'Shown' also counts a mean, or a single firing, beyond tolerance, one that fails, and a scatter above "
            + SpeedSummary.UNEVEN_STOPS
            + " stop. A rest effect is shown where the first firing is slower than the mean by more than that. Each cell has quick, then five each.");
    page.add("");
    StringBuilder head = new StringBuilder("| fault | |");
    for (double size : SIZES) {
      head.append(String.format(Locale.ROOT, " %.2f stop |", size));
    }
    page.add(head + " windings, quick |");
    page.add("|---|---|" + "---|".repeat(SIZES.length) + "---|");
    for (Fault fault : EnumSet.complementOf(EnumSet.of(Fault.NOTHING))) {
      List<List<Both>> all =
          Arrays.stream(SIZES)
              .limit(fault == Fault.HANGS ? 1 : SIZES.length)
              .mapToObj(size -> both(fault, size, SHUTTERS))
              .toList();
      String windings =
          String.format(
              Locale.ROOT,
              "%.1f",
              all.stream().mapToDouble(QuickStudy::windings).average().orElseThrow());
      page.add(
          row(fault, "verdict", all, both -> both.quick().called(), both -> both.five().called())
              + " "
              + windings
              + " |");
      page.add(
          row(fault, "shown", all, both -> both.quick().isShown(), both -> both.five().isShown())
              + " |");
      page.add(
          row(
                  fault,
                  "seen by one alone",
                  all,
                  both -> both.five().isShown() && !both.quick().isShown(),
                  both -> both.quick().isShown() && !both.five().isShown())
              + " |");
    }
    List<Both> sound = both(Fault.NOTHING, 0, SHUTTERS);
    page.add("");
    page.add(
        String.format(
            Locale.ROOT,
            "The third row of each fault has what five each shows and quick does not, then the other way round. The size plays no part in hanging. Shutters with nothing wrong get a verdict slow, fast or some failed at some speed in %.1f %% by quick and in %.1f %% by five each. Quick takes %.1f windings of them instead of 52.",
            100 * part(sound, each -> each.quick().elsewhere()),
            100 * part(sound, each -> each.five().elsewhere()),
            windings(sound)));
    page.add("");
    page.add("![Share of faults shown, against their size](images/quick-shown.svg)");
    page.add("");
    double[] sizes = IntStream.rangeClosed(1, 10).mapToDouble(i -> i / 10.0).toArray();
    PlotSvg plot =
        new PlotSvg(
            "Faults shown by a quick look (simulated)",
            "size of the fault, stops",
            "shown",
            0.1,
            1,
            0.1);
    for (Fault fault : PLOTTED) {
      plot.line(
          fault.words(),
          sizes,
          Arrays.stream(sizes)
              .map(size -> 100 * part(both(fault, size, SHUTTERS), each -> each.quick().isShown()))
              .toArray());
    }
    plot.write("quick-shown.svg");
    page.add(
        "So a quick look cannot see one speed off that it does not fire. It sees two heaps and failures only as often as they happen in the firings that it has. Fire all speeds where the owner names a speed, and before the camera goes back.");
    return page;
  }

  private static String row(
      Fault fault, String what, List<List<Both>> all, Predicate<Both> quick, Predicate<Both> five) {
    StringBuilder row = new StringBuilder("| " + fault.words() + " | " + what);
    for (List<Both> at : all) {
      row.append(
          String.format(
              Locale.ROOT, " | %.0f, %.0f %%", 100 * part(at, quick), 100 * part(at, five)));
    }
    return row + " |".repeat(SIZES.length - all.size()) + " |";
  }

  /** Prints the section alone. */
  public static void main(String[] args) {
    page().forEach(System.out::println);
  }
}
