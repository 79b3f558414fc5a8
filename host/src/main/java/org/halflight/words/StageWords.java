package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.halflight.session.Assembly;
import org.halflight.session.Assembly.Part;
import org.halflight.session.Assembly.Switch;
import org.halflight.session.FiringResult;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionEvent;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.Stage;
import org.halflight.verdict.Stage.Bulb;
import org.halflight.verdict.Stage.Fired;
import org.halflight.verdict.Stage.Seen;
import org.halflight.verdict.StageChange;
import org.halflight.verdict.StageChange.Failing;
import org.halflight.verdict.StageChange.OfSpeed;
import org.halflight.verdict.StageChange.Shown;
import org.halflight.verdict.StageRuns;

/** Stages of assembly in words. */
public final class StageWords {
  private StageWords() {}

  /** A stage by its three switches: {@code cover on, cells none, on the bench}. */
  public static String of(Assembly assembly) {
    return assembly.switches().stream()
        .map(each -> of(each, assembly))
        .collect(Collectors.joining(", "));
  }

  /** A stage begins: which it is, and what to mind before the first firing. */
  public static String begins(SessionEvent.StageBegins stage) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        Words.of(
            "stage.begins", stage.how(), stage.stage(), of(stage.assembly()), stage.earlier()));
    if (!stage.assembly().cover() && !stage.assembly().curtains()) {
      sentences.add(Words.say("stage.hold-plate"));
    }
    if (stage.lightAgain()) {
      sentences.add(Words.say("stage.light-again"));
    }
    return String.join(" ", sentences);
  }

  /** Where one switch is. */
  public static String of(Switch one, Assembly assembly) {
    return Words.say(group(assembly) + Words.key(one) + "." + one.word(assembly));
  }

  /**
   * The assembly that a typed word asks of a switch, by the word that is noted or a plainer one.
   */
  public static Optional<Assembly> typed(Switch one, Assembly now, String word) {
    return one.positions(now).stream()
        .filter(
            each ->
                word.equals(one.word(each))
                    || word.equals(
                        Words.say("stage.typed." + Words.key(one) + "." + one.word(each))))
        .findFirst();
  }

  /** What the last assembly of a session has come to: its last stage, against the one before. */
  public static List<String> last(List<FiringResult> firings, List<RunSetup> runs) {
    List<AssemblyStages> all = StageRuns.of(firings, runs);
    if (all.isEmpty()) {
      return List.of();
    }
    AssemblyStages last = all.get(all.size() - 1);
    int stage = last.stages().size();
    List<String> lines = new ArrayList<>(List.of(stage(last, stage)));
    if (stage > 1) {
      lines.addAll(sentences(last.changes().get(stage - 2)));
    }
    return lines;
  }

  /** What the last stage of a session shows, in a sentence; empty before there are two. */
  public static Optional<String> lastInShort(List<FiringResult> firings, List<RunSetup> runs) {
    return StageRuns.of(firings, runs).stream()
        .reduce((earlier, later) -> later)
        .flatMap(assembly -> assembly.change(assembly.stages().size()))
        .map(
            change ->
                !change.isFound()
                        && change.slow().shown() == Shown.NO_CHANGE
                        && change.top().shown() == Shown.NO_CHANGE
                    ? Words.say("stage.found.nothing")
                    : finding(change));
  }

  /** All stages of an assembly, each with what it shows against the one before. */
  public static List<String> lines(AssemblyStages assembly) {
    List<String> lines = new ArrayList<>();
    for (int stage = 1; stage <= assembly.stages().size(); stage++) {
      lines.add(stage(assembly, stage));
      if (stage > 1) {
        lines.addAll(sentences(assembly.changes().get(stage - 2)));
      }
    }
    lines.add(Words.say("stage.chance"));
    return lines;
  }

  /** An assembly in short: what was found on the way, or that nothing was. */
  public static String inOneLine(AssemblyStages assembly) {
    int stages = assembly.stages().size();
    List<String> found = new ArrayList<>();
    for (int stage = 2; stage <= stages; stage++) {
      int number = stage;
      assembly
          .change(stage)
          .filter(change -> change.isFound() || change.opticsDiffer())
          .ifPresent(change -> found.add(Words.say("stage.found.at", number, finding(change))));
    }
    return Words.count(
            "stage.found",
            stages,
            stages,
            stages > 1 && found.isEmpty()
                ? Words.say("stage.found.nothing")
                : String.join(" ", found))
        .strip();
  }

  /** The same with what it is about. */
  public static String onPage(AssemblyStages assembly) {
    return Words.say("stage.on-page", inOneLine(assembly));
  }

  /** Whether anything to look at was found in an assembly, in a word. */
  public static String state(AssemblyStages assembly) {
    boolean found = assembly.changes().stream().anyMatch(StageChange::isFound);
    return Words.say(found ? "stage.state.found" : "stage.state.none");
  }

  /** What to do when a stage is done. */
  public static String next(Assembly assembly) {
    return Words.say(group(assembly) + "next");
  }

  /** Parts of a shutter with curtains have names of their own. */
  private static String group(Assembly assembly) {
    return assembly.curtains() ? "stage.curtains." : "stage.";
  }

  private static String stage(AssemblyStages assembly, int number) {
    Stage stage = assembly.stages().get(number - 1);
    return Words.say(
        "stage.line",
        number,
        of(stage.assembly()),
        fired(stage.slow()),
        fired(stage.top()),
        stage.bulb().map(StageWords::bulb).orElseGet(() -> Words.say("stage.b.not-tried")));
  }

  private static String fired(Fired fired) {
    String times =
        fired.errors().mean().known().map(Numbers::signedStops).orElse(Words.say("stage.no-time"));
    return Words.say(
        fired.failed() > 0 ? "stage.fired.failed" : "stage.fired",
        fired.speed(),
        times,
        fired.errors().n(),
        fired.failed());
  }

  /** What to do at B, after so many presses of it. */
  public static String bulbAsked(int presses) {
    return Words.say(presses == 0 ? "stage.b.ask-tap" : "stage.b.ask-hold");
  }

  /** What the test of B showed. */
  public static String bulb(Bulb bulb) {
    List<String> wrong = new ArrayList<>();
    if (bulb.tap() == Seen.WRONG) {
      wrong.add(Words.say("stage.b.tap"));
    }
    if (bulb.hold() == Seen.WRONG) {
      wrong.add(Words.say("stage.b.hold"));
    }
    if (bulb.drop() == Seen.WRONG) {
      wrong.add(Words.say("stage.b.drop"));
    }
    if (!wrong.isEmpty()) {
      return String.join(", ", wrong);
    }
    return Words.say(bulb.drop() == Seen.RIGHT ? "stage.b.right" : "stage.b.right-so-far");
  }

  /** What changed from one stage to the next: {@code with the ring, without the cover}. */
  public static String changed(StageChange change) {
    if (change.changed().isEmpty()) {
      return Words.say("stage.fitted-again");
    }
    List<Part> added = parts(change, true);
    List<Part> gone = parts(change, false);
    return added.isEmpty()
        ? Words.say("stage.without", listed(change, gone))
        : gone.isEmpty()
            ? Words.say("stage.with", listed(change, added))
            : Words.say("stage.withAndWithout", listed(change, added), listed(change, gone));
  }

  /** A stage by what changed, short enough for the foot of a picture. */
  public static String inShort(AssemblyStages assembly, int stage) {
    return Words.say(
        "stage.short",
        stage,
        assembly
            .change(stage)
            .map(StageWords::changesInShort)
            .orElseGet(() -> Words.say("stage.short.first")));
  }

  private static String changesInShort(StageChange change) {
    return change.changed().isEmpty()
        ? Words.say("stage.fitted-again")
        : change.changed().stream()
            .map(
                part ->
                    Words.say(
                        change.after().assembly().has(part) ? "stage.short.on" : "stage.short.off",
                        Words.of(group(change.after().assembly()) + "short.part", part)))
            .collect(Collectors.joining(" "));
  }

  /** What was found in a stage, short enough for a picture; empty where nothing was. */
  public static Optional<String> mark(StageChange change) {
    if (change.slow().isChange()) {
      return Optional.of(signed(change.slow()));
    }
    if (change.top().isChange()) {
      return Optional.of(
          change.cellsChanged() ? Words.say("stage.mark.optics") : signed(change.top()));
    }
    if (change.firings() != Failing.NO) {
      return Optional.of(Words.of("stage.mark.firings", change.firings()));
    }
    return change.bulb() == Failing.NO
        ? Optional.empty()
        : Optional.of(Words.of("stage.mark.bulb", change.bulb()));
  }

  /** A stage compared with the one before, all that is known. */
  public static List<String> sentences(StageChange change) {
    List<String> sentences = new ArrayList<>();
    sentences.add(speed(change, change.slow()));
    if (change.opticsDiffer()) {
      sentences.add(Words.say("stage.optics-differ", change.top().speed()));
    } else if (!change.cellsChanged()) {
      sentences.add(speed(change, change.top()));
    }
    if (change.firings() != Failing.NO) {
      sentences.add(
          Words.say(
              "stage.firings." + Words.key(change.firings()),
              capital(changed(change)),
              change.firings() == Failing.BEGINS ? change.failedAfter() : change.failedBefore()));
    }
    if (change.bulb() != Failing.NO) {
      sentences.add(Words.say("stage.bulb." + Words.key(change.bulb()), capital(changed(change))));
    }
    change
        .suspects()
        .forEach(
            each -> sentences.add(Words.of(group(change.after().assembly()) + "suspect", each)));
    return sentences;
  }

  /** The first thing to say of a stage: what was found, or that no change is seen. */
  public static String finding(StageChange change) {
    if (change.slow().isChange()) {
      return speed(change, change.slow());
    }
    List<String> sentences = sentences(change);
    return change.isFound()
        ? sentences.get(sentences.size() - 1 - change.suspects().size())
        : sentences.get(0);
  }

  private static String speed(StageChange change, OfSpeed speed) {
    return switch (speed.shown()) {
      case NOT_KNOWN -> Words.say("stage.not-known", speed.speed());
      case NO_CHANGE -> Words.say("stage.no-change", speed.speed(), up(speed.plusMinus()));
      case SLOWER, FASTER -> moved(change, speed);
    };
  }

  private static String moved(StageChange change, OfSpeed speed) {
    String stops = Words.say("numbers.stops", size(speed));
    String plusMinus =
        inTenths(speed)
            ? up(speed.plusMinus())
            : String.format(Locale.ROOT, "%.2f", speed.plusMinus());
    boolean costs =
        speed.shown() == Shown.SLOWER
            && !change.changed().isEmpty()
            && parts(change, false).isEmpty();
    return costs
        ? Words.count(
            "stage.costs",
            change.changed().size(),
            capital(listed(change, change.changed())),
            stops,
            speed.speed(),
            plusMinus)
        : Words.say(
            "stage." + Words.key(speed.shown()),
            capital(changed(change)),
            stops,
            speed.speed(),
            plusMinus);
  }

  /** Whether a change in tenths does not look as if it were within its uncertainty. */
  private static boolean inTenths(OfSpeed speed) {
    return Math.round(10 * Math.abs(speed.stops())) > Math.ceil(10 * speed.plusMinus());
  }

  private static String size(OfSpeed speed) {
    return String.format(Locale.ROOT, inTenths(speed) ? "%.1f" : "%.2f", Math.abs(speed.stops()));
  }

  private static String signed(OfSpeed speed) {
    return Words.say("numbers.stops", (speed.stops() > 0 ? "+" : "\u2212") + size(speed));
  }

  private static String up(double plusMinus) {
    return String.format(Locale.ROOT, "%.1f", Math.ceil(10 * plusMinus - 1e-9) / 10);
  }

  private static List<Part> parts(StageChange change, boolean there) {
    return change.changed().stream()
        .filter(part -> change.after().assembly().has(part) == there)
        .toList();
  }

  private static String listed(StageChange change, List<Part> parts) {
    Optional<String> all =
        parts.stream()
            .map(part -> Words.of(group(change.after().assembly()) + "part", part))
            .reduce((some, one) -> Words.say("stage.and", some, one));
    return all.orElseThrow();
  }

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
