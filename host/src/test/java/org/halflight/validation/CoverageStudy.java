package org.halflight.validation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Interval;
import org.halflight.uncertainty.Basis;
import org.halflight.uncertainty.Distribution;
import org.halflight.uncertainty.Doubt;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.verdict.DecisionRule;
import org.halflight.verdict.Placement;
import org.halflight.verdict.SpeedSummary;

/** How often stated intervals hold the truth, and how often 'within' is said wrongly. */
final class CoverageStudy {
  static final int SESSIONS = 2000;
  static final int FIRINGS = 5;
  static final int MOST_FIRINGS = 20;
  static final List<MarkedSpeed> DIAL = Dial.find("leaf").orElseThrow().speeds();

  /** A rig whose calibration left normal doubts, as one of {@code RigKnowledge.of} does. */
  static final RigKnowledge CALIBRATED =
      new RigKnowledge(
          Doubt.normal(0.002, Basis.CALIBRATION),
          Doubt.within(0.01, Basis.ALLOWANCE),
          Doubt.normal(0.1e-6, Basis.CALIBRATION),
          Doubt.normal(0.003, Basis.CALIBRATION),
          RigKnowledge.UNCALIBRATED.quantisationSeconds(),
          new Doubt(Distribution.NORMAL, 30e-6, 20, Basis.CALIBRATION));

  private CoverageStudy() {}

  /**
   * How often the interval held the truth, speed by speed.
   *
   * @param held of the sessions
   * @param meanExpandedStops mean half width
   */
  record Coverage(List<Integer> held, List<Double> meanExpandedStops, int sessions) {
    double pooled() {
      return held.stream().mapToInt(Integer::intValue).sum() / (double) (held.size() * sessions);
    }

    double share(int place) {
      return held.get(place) / (double) sessions;
    }
  }

  static Coverage coverage(RigKnowledge rig, int sessions, long seed) {
    int[] held = new int[DIAL.size()];
    double[] wide = new double[DIAL.size()];
    for (int i = 0; i < sessions; i++) {
      BudgetedSessions session = new BudgetedSessions(rig, seed * 1_000_003 + i);
      SplittableRandom shutter = new SplittableRandom(seed * 7_000_003 + i);
      for (int place = 0; place < DIAL.size(); place++) {
        BudgetedSessions.AtSpeed speed =
            session.new AtSpeed(DIAL.get(place), 0.3 * shutter.nextGaussian()).fire(FIRINGS);
        Interval stated =
            speed.summary(DecisionRule.FIXED_NUMBER).expandedIntervalStops().orElseThrow();
        held[place] += stated.contains(speed.trueStops) ? 1 : 0;
        wide[place] += (stated.high() - stated.low()) / 2 / sessions;
      }
    }
    return new Coverage(
        Arrays.stream(held).boxed().toList(), Arrays.stream(wide).boxed().toList(), sessions);
  }

  /**
   * How often a speed whose truth lies on its slow limit is called within tolerance.
   *
   * @param fixed with {@link #FIRINGS} firings
   * @param bounded fired until decided, by the bounds for that
   * @param naive fired until decided, with a fixed number's guard band at each look
   */
  record FalseWithin(int fixed, int bounded, int naive, int sessions) {}

  static FalseWithin falseWithin(RigKnowledge rig, MarkedSpeed at, int sessions, long seed) {
    int fixed = 0;
    int bounded = 0;
    int naive = 0;
    for (int i = 0; i < sessions; i++) {
      BudgetedSessions.AtSpeed speed =
          new BudgetedSessions(rig, seed * 1_000_003 + i).new AtSpeed(at, 1 / 3.0).fire(FIRINGS);
      boolean boundedOpen = true;
      boolean naiveOpen = true;
      for (int n = FIRINGS; n <= MOST_FIRINGS && (boundedOpen || naiveOpen); n++) {
        if (n > FIRINGS) {
          speed.fire(1);
        }
        SpeedSummary plain = speed.summary(DecisionRule.FIXED_NUMBER);
        boolean within = plain.placement() == Placement.WITHIN;
        fixed += n == FIRINGS && within ? 1 : 0;
        if (naiveOpen && plain.placement() != Placement.TOO_CLOSE_TO_CALL) {
          naive += within ? 1 : 0;
          naiveOpen = false;
        }
        Placement careful = speed.summary(DecisionRule.UNTIL_DECIDED).placement();
        if (boundedOpen && careful != Placement.TOO_CLOSE_TO_CALL) {
          bounded += careful == Placement.WITHIN ? 1 : 0;
          boundedOpen = false;
        }
      }
    }
    return new FalseWithin(fixed, bounded, naive, sessions);
  }

  static List<String> page() {
    List<String> page = new ArrayList<>();
    page.add("## Do stated intervals hold the truth?");
    page.add("");
    page.add(
        "**Simulated**: "
            + SESSIONS
            + " sessions each of "
            + FIRINGS
            + " firings at every speed. Shutter and rig are invented anew");
    page.add(
        "for each session; what the rig is off by is drawn from what the uncertainty budget holds");
    page.add(
        "possible. Edges are made, stamped and measured by the program's own method. The interval is");
    page.add(
        "that of the mean of a setting, with the rig in it, stated as 95 %. By chance alone each of the");
    page.add(
        "ten speeds would lie between 93.6 and 96.4 %. What no budget holds, light that does not");
    page.add(
        "fill the lens evenly, is not in it. Degrees of freedom are cut to whole numbers (JCGM 100,");
    page.add("G.4.1); that was decided after first figures of this table had been seen.");
    page.add("");
    Coverage any = coverage(RigKnowledge.UNCALIBRATED, SESSIONS, Validation.SEED);
    Coverage known = coverage(CALIBRATED, SESSIONS, Validation.SEED + 1);
    page.add("| speed | any rig | interval, +- stop | calibrated rig | interval, +- stop |");
    page.add("|---|---|---|---|---|");
    for (int i = 0; i < DIAL.size(); i++) {
      page.add(
          String.format(
              Locale.ROOT,
              "| %s | %.1f %% | %.3f | %.1f %% | %.3f |",
              DIAL.get(i).label(),
              100 * any.share(i),
              any.meanExpandedStops().get(i),
              100 * known.share(i),
              known.meanExpandedStops().get(i)));
    }
    page.add(
        String.format(
            Locale.ROOT,
            "| all | **%.1f %%** | | **%.1f %%** | |",
            100 * any.pooled(),
            100 * known.pooled()));
    page.add("");
    page.add(
        "Outside of that: any rig "
            + outside(any)
            + "; calibrated rig "
            + outside(known)
            + ". The rig that nobody calibrated has");
    page.add("rectangular parts, for which Student's factor with few firings is an approximation.");
    page.add("");
    page.add(
        "'Within tolerance' said of a speed whose truth lies on its limit; at most 5 % are stated. 'Until");
    page.add(
        "decided' looks after each firing from "
            + FIRINGS
            + " to "
            + MOST_FIRINGS
            + ", by the bounds for that and, for contrast,");
    page.add("without them:");
    page.add("");
    page.add("| rig | speed | number fixed | until decided | without bounds |");
    page.add("|---|---|---|---|---|");
    for (String label : List.of("1/8", "1/60", "1/500")) {
      page.add(line("any", RigKnowledge.UNCALIBRATED, label));
      page.add(line("calibrated", CALIBRATED, label));
    }
    page.add("");
    return page;
  }

  /** The speeds whose share lies beyond the limits of chance for ten speeds (Bonferroni, 5 %). */
  private static String outside(Coverage found) {
    List<String> speeds = new ArrayList<>();
    for (int i = 0; i < DIAL.size(); i++) {
      if (found.share(i) < 0.936 || found.share(i) > 0.964) {
        speeds.add(DIAL.get(i).label());
      }
    }
    return speeds.isEmpty() ? "none" : String.join(", ", speeds);
  }

  private static String line(String name, RigKnowledge rig, String label) {
    FalseWithin said = falseWithin(rig, MarkedSpeed.parse(label), SESSIONS, Validation.SEED + 2);
    return String.format(
        Locale.ROOT,
        "| %s | %s | %.1f %% | %.1f %% | %.1f %% |",
        name,
        label,
        100.0 * said.fixed() / SESSIONS,
        100.0 * said.bounded() / SESSIONS,
        100.0 * said.naive() / SESSIONS);
  }

  /** Writes the section alone, for a look at it. */
  public static void main(String[] args) {
    System.out.println(String.join("\n", page()));
  }
}
