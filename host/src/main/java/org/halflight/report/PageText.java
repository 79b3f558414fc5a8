package org.halflight.report;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.halflight.exposure.DecidedBy;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.Measurand;
import org.halflight.session.Outcome;
import org.halflight.session.Source;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerance;
import org.halflight.verdict.DecisionBasis;
import org.halflight.verdict.DecisionRule;
import org.halflight.verdict.Pattern;
import org.halflight.verdict.Patterns;
import org.halflight.verdict.ReboundAtSpeed;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.RunStatistics;
import org.halflight.verdict.ShutterTrouble;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.Verdict;
import org.halflight.words.ComparisonWords;
import org.halflight.words.ConditionWords;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Numbers;
import org.halflight.words.PatternWords;
import org.halflight.words.ProfileWords;
import org.halflight.words.Sentences;
import org.halflight.words.SpeedNames;
import org.halflight.words.StatisticWords;
import org.halflight.words.Words;

/** What the page says, section by section, before anything is drawn. */
final class PageText {
  private static final Map<String, String> VERDICT_KEYS =
      Map.of(
          "WITHIN", "within",
          "SLOW", "slow",
          "FAST", "fast",
          "SOME_FAILED", "someFailed",
          "TOO_CLOSE_TO_CALL", "tooClose",
          "FEWER_THAN_PLANNED", "fewer",
          "TOO_FEW", "tooFew",
          "CHECK_RIG", "checkRig",
          "FULL_LIGHT_AGAIN", "fullLightAgain");

  /** What a page without lists says of each: nobody has tried it. */
  private static final List<CheckItem> NAMED_WHERE_NOT_LISTED =
      List.of(CheckItem.B_AND_T, CheckItem.SELF_TIMER, CheckItem.FLASH_CONTACT);

  private final PageInput input;
  private final Optional<RunComparison> comparison;

  PageText(PageInput input) {
    this.input = input;
    this.comparison =
        input.asFound().isPresent() && input.asLeft().isPresent()
            ? Optional.of(
                RunComparison.of(
                    input.asFound().get().run(),
                    input.asLeft().get().run(),
                    input.asFound().get().setup(),
                    input.asLeft().get().setup()))
            : Optional.empty();
  }

  Optional<RunComparison> comparison() {
    return comparison;
  }

  String title() {
    return input.camera().isBlank()
        ? Words.say("page.title.nameless")
        : Words.say("page.title", input.camera());
  }

  /** Words across every page; empty for a shutter that exists. */
  Optional<String> stamp() {
    return PageFoot.stamp(input.source());
  }

  /** The whole in a few sentences; outcomes without a time come first. */
  List<String> inShort() {
    List<String> said = new ArrayList<>();
    parts().forEach(part -> troubles(part, said));
    input.asFound().ifPresent(part -> pattern(part, said));
    if (comparison.isPresent()) {
      said.addAll(ComparisonWords.summary(comparison.get()));
    }
    said.addAll(verdicts(input.last()));
    reboundOpen(input.last(), said);
    if (input.asLeft().isPresent() && input.asFound().isEmpty()) {
      said.add(Words.say("page.noAsFound"));
    }
    if (input.asLeft().isEmpty()) {
      said.add(Words.say("page.noAsLeft"));
    }
    if (input.stillWet()) {
      said.add(Words.say("page.wet"));
    }
    return said;
  }

  private static void troubles(RunPart part, List<String> said) {
    for (ShutterTrouble trouble : RunStatistics.troubles(part.run())) {
      said.add(
          Words.say(
              "page.trouble",
              Sentences.phase(part.run().phase()),
              StatisticWords.trouble(trouble)));
    }
  }

  /** What stands out; releases without a time are in sentences of their own. */
  private static void pattern(RunPart part, List<String> said) {
    Pattern pattern = Patterns.of(part.run());
    if (pattern.kind() == Pattern.Kind.NOTHING_STANDS_OUT) {
      return;
    }
    List<String> sentences = PatternWords.besideOutcomes(pattern, speeds(part));
    if (!sentences.isEmpty()) {
      said.add(
          Words.say(
              "page.pattern", Sentences.phase(part.run().phase()), String.join(" ", sentences)));
    }
  }

  private static List<String> verdicts(RunPart part) {
    List<SpeedSummary> speeds = part.run().speeds();
    String phase = Sentences.phase(part.run().phase());
    if (speeds.stream().allMatch(s -> s.verdict() == Verdict.WITHIN)) {
      return List.of(
          speeds.size() == 1
              ? Words.say("page.oneWithin", phase)
              : Words.say("page.allWithin", phase, speeds.size()));
    }
    List<String> said = new ArrayList<>();
    for (Verdict verdict :
        List.of(
            Verdict.WITHIN,
            Verdict.SLOW,
            Verdict.FAST,
            Verdict.SOME_FAILED,
            Verdict.TOO_CLOSE_TO_CALL,
            Verdict.FEWER_THAN_PLANNED,
            Verdict.TOO_FEW,
            Verdict.CHECK_RIG,
            Verdict.FULL_LIGHT_AGAIN)) {
      List<MarkedSpeed> those =
          speeds.stream().filter(s -> s.verdict() == verdict).map(SpeedSummary::speed).toList();
      if (!those.isEmpty()) {
        said.add(
            Words.say(
                "page." + VERDICT_KEYS.get(verdict.name()),
                phase,
                SpeedNames.of(those, speeds(part)),
                errors(speeds.stream().filter(s -> s.verdict() == verdict))));
      }
    }
    return said;
  }

  private static void reboundOpen(RunPart part, List<String> said) {
    List<MarkedSpeed> open = named(part.run().speeds(), SpeedSummary::isReboundOpen);
    if (!open.isEmpty()) {
      said.add(Words.say("page.reboundOpen", SpeedNames.of(open, speeds(part))));
    }
  }

  /** From the least to the greatest error, as sizes; empty where there is none. */
  private static String errors(Stream<SpeedSummary> speeds) {
    DoubleSummaryStatistics sizes =
        speeds
            .flatMapToDouble(speed -> speed.meanStops().stream())
            .map(Math::abs)
            .summaryStatistics();
    return sizes.getCount() == 0 ? "" : Numbers.stopsRange(sizes.getMin(), sizes.getMax());
  }

  /** How it is after the work, for the owner; before it, where there is nothing else. */
  List<String> outcome() {
    return said(input.last());
  }

  /** How it was before the work, where that was measured too. */
  List<String> before() {
    return input.asLeft().flatMap(left -> input.asFound()).map(this::said).orElse(List.of());
  }

  private List<String> said(RunPart part) {
    List<String> said = new ArrayList<>();
    troubles(part, said);
    said.addAll(verdicts(part));
    reboundOpen(part, said);
    if (part.equals(input.last()) && input.asLeft().isEmpty()) {
      said.add(Words.say("page.noAsLeft"));
    }
    return said;
  }

  /** What is known of the uncertainty, and what the tolerance is. */
  List<String> howSure() {
    List<String> said = new ArrayList<>();
    if (input.standing().isCalibrated()) {
      input.standing().uses().stream()
          .flatMap(use -> use.id().stream())
          .forEach(id -> said.add(Words.say("page.sure.calibrated", id.date(), id.label())));
      said.add(
          Words.say(
              input.standing().rigChecked() ? "page.sure.rigChecked" : "page.sure.rigNotChecked"));
    } else {
      said.add(Words.say("page.sure.notCalibrated"));
      input.standing().uses().stream()
          .filter(use -> !use.mismatches().isEmpty())
          .flatMap(use -> ProfileWords.standing(use).stream())
          .distinct()
          .forEach(said::add);
    }
    if (input.standing().liveClock()) {
      said.add(Words.say("page.sure.liveClock"));
    }
    decided(said);
    comparison.ifPresent(runs -> said.addAll(ComparisonWords.warnings(runs)));
    if (comparison.filter(runs -> !runs.speeds().isEmpty()).isPresent()) {
      said.add(Words.say("compare.chance"));
    }
    said.add(tolerance());
    criteria(said);
    String reference = Sentences.reference(input.last().run().speeds().get(0).reference());
    said.add(sentence(reference));
    said.add(Words.say("page.sure.measured"));
    if (input.source() != Source.RIG) {
      said.add(sentence(input.sourceWords()));
    }
    return said;
  }

  /** What the times are by, where light curves had a say. */
  private void decided(List<String> said) {
    for (RunPart part : parts()) {
      for (DecidedBy by : List.of(DecidedBy.EDGES_CORRECTED, DecidedBy.CURVE)) {
        List<MarkedSpeed> those =
            named(part.run().speeds(), speed -> speed.timingBasis().count(by) > 0);
        if (!those.isEmpty()) {
          said.add(
              Words.say(
                  by == DecidedBy.CURVE ? "page.sure.byCurve" : "page.sure.corrected",
                  Sentences.phase(part.run().phase()),
                  SpeedNames.of(those, speeds(part))));
        }
      }
    }
  }

  /** How it was decided, where that is not the usual way. */
  private void criteria(List<String> said) {
    DecisionBasis basis = input.last().run().speeds().get(0).decisionBasis();
    if (basis.measurand() == Measurand.ONE_EXPOSURE) {
      said.add(Words.say("tolerance.about.one-exposure"));
    }
    if (basis.rule() == DecisionRule.UNTIL_DECIDED) {
      said.add(Words.say("tolerance.rule.until-decided"));
    }
    if (parts().stream()
        .flatMap(part -> part.run().speeds().stream())
        .anyMatch(speed -> speed.decisionBasis().rule() == DecisionRule.QUICK)) {
      said.add(Words.say("page.sure.quick"));
    }
  }

  private String tolerance() {
    List<SpeedSummary> speeds = input.last().run().speeds();
    if (input.last().run().holdsTradeCustom()) {
      return Words.say("tolerance.custom");
    }
    Set<Tolerance> kinds = new LinkedHashSet<>();
    speeds.forEach(s -> kinds.add(s.tolerance()));
    List<String> each = new ArrayList<>();
    for (Tolerance kind : kinds) {
      each.add(
          Words.say(
              "page.tolerance.each",
              Numbers.plainStops(kind.slowStops()),
              Numbers.plainStops(kind.fastStops()),
              SpeedNames.of(
                  speeds.stream()
                      .filter(s -> s.tolerance().equals(kind))
                      .map(SpeedSummary::speed)
                      .toList(),
                  speeds(input.last()))));
    }
    return Words.say("page.tolerance.chosen", String.join("; ", each));
  }

  List<String> cautions() {
    List<String> said = ownCautions();
    said.add(Words.say("page.caution.drift"));
    return said;
  }

  /** Those that matter to whoever takes pictures with it. */
  List<String> ownCautions() {
    List<String> said = new ArrayList<>();
    List<SpeedSummary> last = input.last().run().speeds();
    if (input.stillWet()) {
      said.add(Words.say("page.wet"));
    }
    if (last.stream()
        .anyMatch(s -> s.count(Outcome.STUCK_OPEN) + s.count(Outcome.DID_NOT_OPEN) > 0)) {
      said.add(Words.say("page.caution.hung"));
    }
    List<MarkedSpeed> uneven = named(last, SpeedSummary::isUneven);
    if (!uneven.isEmpty()) {
      said.add(Words.say("page.caution.uneven", SpeedNames.of(uneven, speeds(input.last()))));
    }
    said.add(Words.say("page.caution.rest"));
    return said;
  }

  List<String> notTested() {
    List<String> said = new ArrayList<>();
    Set<MarkedSpeed> fired = new LinkedHashSet<>(speeds(input.last()));
    List<MarkedSpeed> left = input.dial().stream().filter(s -> !fired.contains(s)).toList();
    if (!left.isEmpty()) {
      said.add(Words.say("page.notTested.speeds", SpeedNames.of(left, input.dial())));
    }
    List<String> items =
        input.lists().stream()
            .filter(line -> line.last() == CheckState.NOT_TESTED)
            .map(CheckLine::item)
            .toList();
    if (!items.isEmpty()) {
      said.add(Words.say("page.notTested.items", String.join(", ", items)));
    }
    List<CheckItem> listed = input.lists().stream().flatMap(l -> l.known().stream()).toList();
    List<String> also = new ArrayList<>();
    for (CheckItem item : NAMED_WHERE_NOT_LISTED) {
      if (!listed.contains(item)) {
        also.add(ExtraTestWords.item(item));
      }
    }
    also.add(Words.say("page.notTested.field"));
    also.addAll(input.notTested());
    said.add(Words.say("page.notTested.also", String.join(", ", also)));
    return said;
  }

  /** What the star beside a verdict means, and of which parts the times with a rebound are. */
  List<String> rebounds() {
    List<String> said = new ArrayList<>();
    if (input.last().run().speeds().stream().anyMatch(SpeedSummary::isReboundOpen)) {
      said.add(Words.say("page.table.reboundOpen"));
    }
    for (RunPart part : parts()) {
      for (SpeedSummary speed : part.run().speeds()) {
        double main = speed.rebound().mainSeconds().orElse(0);
        double rebound = speed.rebound().reboundSeconds();
        if (main > 0 && rebound > ReboundAtSpeed.SAID_SHARE * main) {
          said.add(
              Words.say(
                  "page.table.rebound",
                  Sentences.phase(part.run().phase()),
                  speed.speed(),
                  Numbers.time(main),
                  Numbers.time(rebound)));
        }
      }
    }
    return said;
  }

  /** The first firings after rest, one sentence each. */
  List<String> afterRest() {
    List<String> said = new ArrayList<>();
    for (RunPart part : parts()) {
      for (SpeedSummary speed : part.run().speeds()) {
        speed
            .afterRestStops()
            .ifPresent(
                stops ->
                    said.add(
                        Words.say(
                            "page.table.afterRest",
                            Sentences.phaseWithin(part.run().phase()),
                            speed.speed(),
                            Numbers.stopsInWords(stops))));
      }
    }
    return said;
  }

  /** Light past the flap of a body with reflex viewing, one sentence a speed. */
  List<String> flap() {
    List<String> said = new ArrayList<>();
    for (RunPart part : parts()) {
      for (SpeedSummary speed : part.run().speeds()) {
        if (speed.flapLight() > 0) {
          double early = speed.rebound().earlySeconds();
          said.add(
              Words.say(
                  "page.table.flap",
                  Sentences.phase(part.run().phase()),
                  speed.speed(),
                  Numbers.time(early),
                  Numbers.percent(early / speed.rebound().mainSeconds().orElseThrow())));
        }
      }
    }
    return said;
  }

  /** What was fired under special conditions, one sentence each. */
  List<String> conditions() {
    List<String> said = new ArrayList<>();
    for (RunPart part : parts()) {
      String phase = Sentences.phase(part.run().phase());
      for (SpeedSummary speed : part.run().speeds()) {
        speed
            .conditions()
            .ofMean()
            .filter(shared -> !shared.isEmpty())
            .ifPresent(
                shared ->
                    said.add(
                        Words.say(
                            "page.table.under",
                            phase,
                            speed.speed(),
                            ConditionWords.list(shared))));
        speed
            .conditions()
            .apart()
            .forEach(
                (conditions, errors) ->
                    said.add(
                        Words.say(
                            "page.table.apart",
                            phase,
                            speed.speed(),
                            ConditionWords.list(conditions),
                            ConditionWords.mean(errors),
                            errors.n())));
      }
    }
    return said;
  }

  /** The speeds that may read long because nobody tested the light over the lens. */
  List<String> lightOverTheLens() {
    List<String> each = new ArrayList<>();
    for (SpeedSummary speed : input.last().run().speeds()) {
      speed
          .untestedPupilStops()
          .ifPresent(
              stops ->
                  each.add(
                      Words.say(
                          "page.table.pupil.speed", speed.speed(), Numbers.signedStops(stops))));
    }
    return each.isEmpty()
        ? List.of()
        : List.of(Words.say("page.table.pupil", String.join("; ", each)));
  }

  List<RunPart> parts() {
    List<RunPart> parts = new ArrayList<>();
    input.asFound().ifPresent(parts::add);
    input.asLeft().ifPresent(parts::add);
    return parts;
  }

  static List<MarkedSpeed> speeds(RunPart part) {
    return part.run().speeds().stream().map(SpeedSummary::speed).toList();
  }

  private static List<MarkedSpeed> named(List<SpeedSummary> of, Predicate<SpeedSummary> which) {
    return of.stream().filter(which).map(SpeedSummary::speed).toList();
  }

  static String sentence(String words) {
    return words.isEmpty()
        ? words
        : Character.toUpperCase(words.charAt(0))
            + words.substring(1)
            + (words.endsWith(".") ? "" : ".");
  }
}
