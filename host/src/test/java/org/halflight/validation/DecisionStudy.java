package org.halflight.validation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.halflight.calibration.ControlLimits;
import org.halflight.calibration.RigCheck;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.halflight.stats.ShareLimit;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.verdict.DecisionBasis;
import org.halflight.verdict.DecisionRule;
import org.halflight.verdict.HowMeasured;
import org.halflight.verdict.ReleaseCounts;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.Verdict;

/**
 * How often a verdict is wrong where the usual exposure, the median, lies on a limit, and what is
 * lost for that: drawn errors, no rig in between, the program's own decision. 'By the mean' is the
 * rule of earlier versions on the same draws.
 */
final class DecisionStudy {
  static final int SAMPLES = 40_000;
  static final double LIMIT = Tolerance.THIRD.slowStops();

  /** Scatters that sound and worn shutters have, in stops. */
  static final List<Double> SCATTERS = List.of(0.02, 0.15);

  /** What the targets are about. */
  static final List<Scatter> TARGETED =
      List.of(
          Scatter.NORMAL,
          Scatter.T3,
          Scatter.SLOW_TAIL,
          Scatter.FAST_TAIL,
          Scatter.FAR_SLOW,
          Scatter.FAR_FAST,
          Scatter.FAR_EITHER);

  private static final List<Integer> NUMBERS = List.of(3, 4, 5, 6, 7, 8, 9, 10, 15, 20, 30);
  private static final int MOST_LOOKS = 20;
  private static final MarkedSpeed SPEED = MarkedSpeed.parse("1/60");
  private static final String SHARE = " %.1f %% (%.1f %%) |";

  private DecisionStudy() {}

  /**
   * How often something was claimed.
   *
   * @param now by the rule in force
   * @param byMean by the mean alone
   */
  record Shares(double now, double byMean) {}

  /** What the errors of some firings come to; some of the releases may have no time. */
  static SpeedSummary summary(DecisionRule rule, int hung, double... errors) {
    Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
    outcomes.put(Outcome.TIMED, errors.length);
    if (hung > 0) {
      outcomes.put(Outcome.STUCK_OPEN, hung);
    }
    return new SpeedSummary(
        SPEED,
        Reference.EXACT,
        Phase.AS_LEFT,
        new ReleaseCounts(errors.length + hung, outcomes),
        Sample.of(errors),
        OptionalDouble.empty(),
        Tolerance.THIRD,
        new HowMeasured(Optional.empty(), new DecisionBasis(RigKnowledge.NO_RIG, rule)));
  }

  /**
   * How often a claim is made of a speed whose median lies somewhere, after a number of firings
   * that was fixed beforehand.
   */
  static Shares claimed(
      Verdict claim,
      Scatter scatter,
      double medianStops,
      double sdStops,
      int firings,
      int samples,
      long seed) {
    RandomGenerator random = new Well19937c(seed);
    int now = 0;
    int byMean = 0;
    for (int i = 0; i < samples; i++) {
      double[] errors = new double[firings];
      for (int k = 0; k < firings; k++) {
        errors[k] = medianStops + sdStops * scatter.draw(random);
      }
      SpeedSummary speed = summary(DecisionRule.FIXED_NUMBER, 0, errors);
      if (speed.verdictOfMean().equals(Optional.of(claim))) {
        byMean++;
        now += speed.verdict() == claim ? 1 : 0;
      }
    }
    return new Shares((double) now / samples, (double) byMean / samples);
  }

  /** How often a speed whose median lies on the slow limit is called within. */
  static Shares falseWithin(Scatter scatter, double sdStops, int firings, int samples, long seed) {
    return claimed(Verdict.WITHIN, scatter, LIMIT, sdStops, firings, samples, seed);
  }

  /** The same where it is fired until it is decided, with looks after 5 to 20 firings. */
  static Shares untilDecided(Scatter scatter, double sdStops, int samples, long seed) {
    RandomGenerator random = new Well19937c(seed);
    int now = 0;
    int byMean = 0;
    for (int i = 0; i < samples; i++) {
      double[] errors = new double[0];
      boolean open = true;
      while (open && errors.length < MOST_LOOKS) {
        errors = java.util.Arrays.copyOf(errors, errors.length + 1);
        errors[errors.length - 1] = LIMIT + sdStops * scatter.draw(random);
        if (errors.length >= DecisionRule.FIRST_LOOK) {
          SpeedSummary speed = summary(DecisionRule.UNTIL_DECIDED, 0, errors);
          open = !speed.isMeanDecided();
          if (!open) {
            byMean += speed.verdictOfMean().equals(Optional.of(Verdict.WITHIN)) ? 1 : 0;
            now += speed.verdict() == Verdict.WITHIN ? 1 : 0;
          }
        }
      }
    }
    return new Shares((double) now / samples, (double) byMean / samples);
  }

  /** The most power that the count costs with normal scatter, over where the mean lies. */
  static double greatestLoss(int firings, int samples, long seed) {
    double worst = 0;
    for (int tenths = 0; tenths <= 24; tenths += 2) {
      double sd = 0.1;
      Shares said =
          claimed(
              Verdict.WITHIN, Scatter.NORMAL, LIMIT - sd * tenths / 10, sd, firings, samples, seed);
      worst = Math.max(worst, said.byMean() - said.now());
    }
    return worst;
  }

  /** How often a check of ten pulses signals where those from one on are shifted, in sd. */
  static double signalled(double shift, int from, int checks, long seed) {
    RandomGenerator random = new Well19937c(seed);
    int signals = 0;
    for (int i = 0; i < checks; i++) {
      double[] pulses = new double[10];
      for (int k = 0; k < pulses.length; k++) {
        pulses[k] = random.nextGaussian() + (k >= from ? shift : 0);
      }
      signals += RigCheck.of(new ControlLimits(0, 1), pulses).inControl() ? 0 : 1;
    }
    return (double) signals / checks;
  }

  /** The section as text. */
  static String table() {
    return String.join("\n", page());
  }

  static List<String> page() {
    List<String> page = new ArrayList<>();
    page.add("## Verdicts where the usual exposure lies on a limit");
    page.add("");
    page.add(
        "**Simulated**: "
            + SAMPLES
            + " samples a figure. Errors are drawn with their median on the slow limit of a third of a");
    page.add(
        "stop, with no rig in between. How often they are called 'within' by the rule in force, and in brackets by the mean alone, which was");
    page.add(
        "the rule until version 3 of the method. Targets: 6.5 % with 4 to 10 firings, 8.5 % with 3.");
    page.add("");
    for (double sd : SCATTERS) {
      page.add(String.format(Locale.ROOT, "Scatter (one sd of a sound firing) %.2f stop:", sd));
      page.add("");
      rows(page, Verdict.WITHIN, sd, TARGETED);
    }
    page.add("The same for 'slow', which is a claim about the median too (scatter 0.15 stop):");
    page.add("");
    rows(page, Verdict.SLOW, 0.15, List.of(Scatter.NORMAL, Scatter.T3, Scatter.SLOW_TAIL));
    page.add("What the count costs with normal scatter, at the worst place of the mean:");
    page.add("");
    page.add("| firings | power lost |");
    page.add("|---|---|");
    for (int n : NUMBERS) {
      page.add(
          String.format(
              Locale.ROOT, "| %d | %.3f |", n, greatestLoss(n, SAMPLES / 4, Validation.SEED)));
    }
    page.add("");
    page.add("Firing until decided, with checks after 5 to 20 firings, median on the limit:");
    page.add("");
    page.add("| scatter | 'within' (by the mean) |");
    page.add("|---|---|");
    for (Scatter scatter : Scatter.values()) {
      Shares said = untilDecided(scatter, 0.05, SAMPLES / 10, Validation.SEED);
      page.add(
          String.format(
              Locale.ROOT, "| %s |" + SHARE, scatter.words, 100 * said.now(), 100 * said.byMean()));
    }
    page.add("");
    page.add("Share of outliers not excluded if none was seen, and if one was:");
    page.add("");
    page.add("| releases | none | one |");
    page.add("|---|---|---|");
    for (int n : List.of(3, 5, 7, 10, 20, 30)) {
      page.add(
          String.format(
              Locale.ROOT,
              "| %d | %.0f %% | %.0f %% |",
              n,
              100 * ShareLimit.upper(0, n, SpeedSummary.LEVEL),
              100 * ShareLimit.upper(1, n, SpeedSummary.LEVEL)));
    }
    page.add("");
    page.addAll(rigCheck());
    return page;
  }

  private static void rows(List<String> page, Verdict claim, double sd, List<Scatter> scatters) {
    StringBuilder head = new StringBuilder("| scatter |");
    StringBuilder line = new StringBuilder("|---|");
    for (int n : NUMBERS) {
      head.append(' ').append(n).append(" |");
      line.append("---|");
    }
    page.add(head.toString());
    page.add(line.toString());
    for (Scatter scatter : scatters) {
      StringBuilder row = new StringBuilder("| " + scatter.words + " |");
      for (int n : NUMBERS) {
        Shares said = claimed(claim, scatter, LIMIT, sd, n, SAMPLES, Validation.SEED + n);
        row.append(String.format(Locale.ROOT, SHARE, 100 * said.now(), 100 * said.byMean()));
      }
      page.add(row.toString());
    }
    page.add("");
  }

  private static List<String> rigCheck() {
    List<String> page = new ArrayList<>();
    page.add("Rig checks of ten pulses that signal (until version 3: 7.8 % of the sound ones):");
    page.add("");
    page.add("| pulses | signal |");
    page.add("|---|---|");
    page.add(check("sound", 0, 0));
    for (double shift : List.of(1.0, 1.35, 2.0)) {
      page.add(check(String.format(Locale.ROOT, "all shifted by %.2f sd", shift), shift, 0));
    }
    page.add(check("the last five shifted by 2.25 sd", 2.25, 5));
    page.add(check("one off by 5.1 sd", 5.1, 9));
    page.add("");
    return page;
  }

  private static String check(String words, double shift, int from) {
    return String.format(
        Locale.ROOT,
        "| %s | %.1f %% |",
        words,
        100 * signalled(shift, from, SAMPLES, Validation.SEED));
  }

  /** Writes the section alone, for a look at it. */
  public static void main(String[] args) {
    System.out.println(table());
  }
}
