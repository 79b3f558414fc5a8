package org.halflight.validation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.validation.DrawnRuns.Law;
import org.halflight.verdict.Patterns;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.PatternWords;

/**
 * What is said of runs with a known fault, counted on runs drawn by {@link DrawnRuns}: how often it
 * names a part of the shutter, and how often nothing is said to stand out.
 */
final class PatternStudy {
  static final int RUNS = 1000;
  private static final int FIRINGS = 5;

  private PatternStudy() {}

  public static void main(String[] args) {
    page(Validation.SEED).forEach(System.out::println);
  }

  /** A shutter with a fault. All figures are invented. */
  enum Fault {
    NONE("none", 0.05),
    WEAK_MAIN_SPRING("every speed 0.2 stop slow", 0.05),
    DRAG("slow by 0.30 stop at 1 s, less and less, 0.12 stop at 1/500", 0.05),
    NEVER_FULLY_OPEN("1/250 and 1/500 never fully open", 0.05),
    DOUBLES("2 of 5 opened twice at 1/250 and 1/500", 0.05),
    SCATTER("slow speeds scatter by 0.35 stop", 0.05),
    REST("first firing after rest 1.5 stop slow", 0.05);

    final String name;
    private final double sd;

    Fault(String name, double sd) {
      this.name = name;
      this.sd = sd;
    }

    /** The next run of such a shutter. */
    RunSummary run(DrawnRuns runs) {
      int speeds = DrawnRuns.DIAL.size();
      double[] sds = new double[speeds];
      Arrays.fill(sds, sd);
      if (this == SCATTER) {
        Arrays.fill(sds, 0, 5, 0.35);
      }
      double[][] errors = runs.errors(Law.INDEPENDENT, sds, FIRINGS);
      List<SpeedSummary> all = new ArrayList<>();
      for (int i = 0; i < speeds; i++) {
        double off =
            this == WEAK_MAIN_SPRING ? 0.2 : this == DRAG ? 0.30 - 0.18 * i / (speeds - 1) : 0;
        double[] own = Arrays.stream(errors[i]).map(error -> error + off).toArray();
        boolean top = i >= speeds - 2;
        Map<Outcome, Integer> others = new EnumMap<>(Outcome.class);
        if (top && this == NEVER_FULLY_OPEN) {
          others.put(Outcome.NEVER_FULLY_OPEN, FIRINGS);
          own = new double[0];
        }
        if (top && this == DOUBLES) {
          others.put(Outcome.DOUBLE, 2);
          own = Arrays.copyOf(own, FIRINGS - 2);
        }
        OptionalDouble rest =
            i > 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(sd * runs.normal() + (this == REST ? 1.5 : 0));
        all.add(DrawnRuns.speed(Phase.AS_FOUND, DrawnRuns.DIAL.get(i), own, rest, others));
      }
      return new RunSummary(Phase.AS_FOUND, all);
    }
  }

  /** How many of so many runs. */
  record Message(int runs, int part, int nothing) {
    static Message of(Fault fault, long seed, int count) {
      DrawnRuns runs = new DrawnRuns(seed);
      int part = 0;
      int nothing = 0;
      for (int i = 0; i < count; i++) {
        String said =
            String.join(" ", PatternWords.of(Patterns.of(fault.run(runs)), DrawnRuns.DIAL));
        part += said.contains("slow-speed train") ? 1 : 0;
        nothing += said.contains("Nothing stands out") ? 1 : 0;
      }
      return new Message(count, part, nothing);
    }
  }

  static List<String> page(long seed) {
    List<String> lines = new ArrayList<>();
    lines.add("| fault | the slow-speed train is named | 'nothing stands out' |");
    lines.add("|---|---|---|");
    for (Fault fault : Fault.values()) {
      Message said = Message.of(fault, seed, RUNS);
      lines.add(
          String.format(
              Locale.ROOT,
              "| %s | %.1f %% | %.1f %% |",
              fault.name,
              100.0 * said.part() / RUNS,
              100.0 * said.nothing() / RUNS));
    }
    lines.add("");
    return lines;
  }
}
