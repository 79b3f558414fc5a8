package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.halflight.uncertainty.BudgetRow;
import org.halflight.uncertainty.UncertaintyBudget;
import org.halflight.verdict.Decision;
import org.halflight.verdict.SpeedSummary;

/** The uncertainty budget of a speed as a table and in sentences. */
public final class BudgetWords {
  private BudgetWords() {}

  /** Headings of the columns of {@link #rows}. */
  public static List<String> headings() {
    return List.of(
        Words.say("budget.part"),
        Words.say("budget.distribution"),
        Words.say("budget.sensitivity"),
        Words.say("budget.millis"),
        Words.say("budget.stops"),
        Words.say("budget.degrees"),
        Words.say("budget.share"),
        Words.say("budget.basis"));
  }

  /** One row a part, as {@link #headings} says. */
  public static List<List<String>> rows(UncertaintyBudget budget) {
    return budget.rows().stream().map(row -> row(budget, row)).toList();
  }

  private static List<String> row(UncertaintyBudget budget, BudgetRow row) {
    return List.of(
        Words.say("budget.part." + Sentences.key(row.part())),
        Words.say("budget.distribution." + Sentences.key(row.doubt().distribution())),
        Numbers.millis(row.sensitivity()),
        Numbers.millis(row.standardSeconds()),
        small(row.standardStops()),
        degrees(row.doubt().degrees()),
        Numbers.percent(budget.share(row)),
        Words.say("budget.basis." + Sentences.key(row.doubt().basis())));
  }

  /** What the rows come to, and what is decided by it. */
  public static List<String> sum(SpeedSummary speed) {
    List<String> said = new ArrayList<>();
    if (speed.budget().isEmpty()) {
      return said;
    }
    UncertaintyBudget budget = speed.budget().get();
    double level = SpeedSummary.LEVEL;
    said.add(
        Words.say(
            "budget.sum",
            Numbers.speed(speed.speed()),
            Numbers.time(budget.combinedSeconds()),
            small(budget.combinedStops()) + " stop",
            degrees(budget.degrees()),
            String.format(Locale.ROOT, "%.2f", budget.coverageFactor(level)),
            Numbers.time(budget.expandedSeconds(level)),
            small(budget.expandedStops(level)) + " stop",
            Numbers.percent(level)));
    Decision decision = speed.decision().orElseThrow();
    said.add(
        Words.say(
            "budget.decision",
            small(decision.guardStops()) + " stop",
            Numbers.percent(speed.judging().rule().risk(speed.errors().n())),
            Numbers.percent(decision.conformity())));
    return said;
  }

  private static String degrees(double degrees) {
    return Double.isInfinite(degrees)
        ? Words.say("budget.endless")
        : String.format(Locale.ROOT, "%.0f", Math.floor(degrees));
  }

  private static String small(double stops) {
    return String.format(Locale.ROOT, "%.4f", stops);
  }
}
