package org.halflight.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.halflight.uncertainty.BudgetRow;
import org.halflight.uncertainty.UncertaintyBudget;
import org.halflight.verdict.BeyondLimits;
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
        part(row),
        Words.of("budget.distribution", row.doubt().distribution()),
        Numbers.millis(row.sensitivity()),
        Numbers.millis(row.standardSeconds()),
        small(row.standardStops()),
        degrees(row.doubt().degrees()),
        Numbers.percent(budget.share(row)),
        Words.of("budget.basis", row.doubt().basis()));
  }

  /** The name of a part. */
  public static String part(BudgetRow row) {
    return Words.of("budget.part", row.part());
  }

  /** What a part comes to in one line: time, stops, share. */
  public static String size(UncertaintyBudget budget, BudgetRow row) {
    return Words.say(
        "budget.size",
        Numbers.time(row.standardSeconds()),
        small(row.standardStops()),
        Numbers.percent(budget.share(row)));
  }

  /** What the bars of a budget are of. */
  public static String title(SpeedSummary speed) {
    UncertaintyBudget budget = speed.budget().orElseThrow();
    return Words.say(
        "budget.title",
        Numbers.speed(speed.speed()),
        Sentences.phaseWithin(speed.phase()),
        stops(budget),
        Numbers.percent(SpeedSummary.LEVEL));
  }

  /** The axis of the bars of a budget. */
  public static String axis() {
    return Words.say("budget.axis");
  }

  /** What full bars are. */
  public static String measured() {
    return Words.say("budget.measured");
  }

  /** What hatched bars are. */
  public static String allowed() {
    return Words.say("budget.allowed");
  }

  /** What the largest part is, whether it was measured, and what would lessen it. */
  public static String improve(UncertaintyBudget budget) {
    BudgetRow largest =
        budget.rows().stream().max(Comparator.comparingDouble(budget::share)).orElseThrow();
    return Words.say(
        "budget.improve",
        part(largest),
        Numbers.percent(budget.share(largest)),
        Words.of("budget.basis", largest.doubt().basis()),
        Words.of("budget.improve", largest.part()));
  }

  /** Everything that one speed is decided by, a figure a row: what it is, and its value. */
  public static List<List<String>> figures(SpeedSummary speed) {
    List<List<String>> figures = new ArrayList<>();
    figures.add(
        figure("measurand", Words.of("run.option.about", speed.decisionBasis().measurand())));
    figures.add(figure("rule", rule(speed)));
    figures.add(figure("verdict", Sentences.verdict(speed)));
    if (!speed.timingBasis().kinds().isEmpty()) {
      figures.add(figure("decidedBy", Sentences.decidedBy(speed)));
    }
    figures.add(
        figure(
            "tolerance",
            Words.say(
                "table.fromTo",
                Numbers.signedStops(-speed.tolerance().fastStops()),
                Numbers.signedStops(speed.tolerance().slowStops()))));
    if (speed.budget().isEmpty()) {
      return figures;
    }
    UncertaintyBudget budget = speed.budget().get();
    Decision decision = speed.decision().orElseThrow();
    double level = SpeedSummary.LEVEL;
    figures.add(figure("combined", both(budget.combinedSeconds(), budget.combinedStops())));
    figures.add(
        figure(
            "bias",
            Words.say(
                "details.bias.says",
                small(budget.readsShortStops()),
                small(budget.readsLongStops()))));
    figures.add(figure("degrees", degrees(budget.degrees())));
    figures.add(figure("factor", String.format(Locale.ROOT, "%.2f", budget.coverageFactor(level))));
    figures.add(
        List.of(
            Words.say("details.expanded", Numbers.percent(level)),
            Words.say("details.both", times(budget), stops(budget))));
    figures.add(
        figure(
            "guard",
            Words.say(
                "details.guard.says",
                small(speed.guardAboveStops().orElseThrow()),
                small(speed.guardBelowStops().orElseThrow()),
                Numbers.percent(speed.decisionBasis().rule().risk(speed.errors().n())))));
    figures.add(figure("beyond", beyond(speed.beyond())));
    figures.add(figure("odd", Sentences.oddOnes(speed.oddOnes().orElseThrow())));
    figures.add(figure("conformity", Numbers.percent(decision.conformity())));
    figures.add(figure("further", further(decision)));
    return figures;
  }

  private static String beyond(BeyondLimits beyond) {
    return beyond.firings() < BeyondLimits.LEAST
        ? Words.say("details.beyond.few", beyond.either(), beyond.firings(), BeyondLimits.LEAST)
        : Words.say(
            "details.beyond.says",
            beyond.either(),
            beyond.firings(),
            BeyondLimits.most(beyond.firings()));
  }

  private static String rule(SpeedSummary speed) {
    return speed.decisionBasis().planned().isPresent()
        ? Words.say("details.rule.planned", speed.decisionBasis().planned().getAsInt())
        : Words.of("details.rule", speed.decisionBasis().rule());
  }

  private static String further(Decision decision) {
    return switch (decision.verdict()) {
      case FEWER_THAN_PLANNED ->
          Words.say("details.further.missing", decision.furtherFirings().getAsInt());
      case TOO_CLOSE_TO_CALL ->
          decision.furtherFirings().isPresent()
              ? Words.say("details.further.more", decision.furtherFirings().getAsInt())
              : Words.say("details.further.never", Decision.MOST);
      case CHECK_RIG, FULL_LIGHT_AGAIN -> Words.say("details.further.noVerdict");
      default -> Words.say("details.further.decided");
    };
  }

  private static List<String> figure(String key, String value) {
    return List.of(Words.say("details." + key), value);
  }

  private static String both(double seconds, double stops) {
    return Words.say(
        "details.both", Numbers.time(seconds), Words.say("numbers.stops", small(stops)));
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
            Words.say("numbers.stops", small(budget.combinedStops())),
            degrees(budget.degrees()),
            String.format(Locale.ROOT, "%.2f", budget.coverageFactor(level)),
            times(budget),
            stops(budget),
            Numbers.percent(level)));
    Decision decision = speed.decision().orElseThrow();
    said.add(
        Words.say(
            "budget.decision",
            small(speed.guardAboveStops().orElseThrow()),
            small(speed.guardBelowStops().orElseThrow()),
            Numbers.percent(speed.decisionBasis().rule().risk(speed.errors().n())),
            Numbers.percent(decision.conformity())));
    return said;
  }

  /** Where the truth lies against the mean, in stops. */
  private static String stops(UncertaintyBudget budget) {
    double half = budget.expandedStops(SpeedSummary.LEVEL);
    return Words.say(
        "budget.about",
        small(half - budget.middleStops()),
        Words.say("numbers.stops", small(half + budget.middleStops())));
  }

  /** The same in time. */
  private static String times(UncertaintyBudget budget) {
    double half = budget.expandedSeconds(SpeedSummary.LEVEL);
    double middle = (budget.readsShortSeconds() - budget.readsLongSeconds()) / 2;
    return Words.say("budget.about", Numbers.time(half - middle), Numbers.time(half + middle));
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
