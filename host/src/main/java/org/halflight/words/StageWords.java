package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.halflight.session.Assembly;
import org.halflight.session.Assembly.Part;
import org.halflight.session.Assembly.Switch;
import org.halflight.verdict.StageChange;
import org.halflight.verdict.StageChange.Failing;
import org.halflight.verdict.StageChange.OfSpeed;
import org.halflight.verdict.StageChange.Shown;

/** Stages of assembly in words. */
public final class StageWords {
  private StageWords() {}

  /** A stage by its three switches: {@code cover on, cells none, on the bench}. */
  public static String of(Assembly assembly) {
    return List.of(Switch.values()).stream()
        .map(each -> of(each, assembly))
        .collect(Collectors.joining(", "));
  }

  /** Where one switch is. */
  public static String of(Switch one, Assembly assembly) {
    return Words.say("stage." + Words.key(one) + "." + one.word(assembly));
  }

  /** What changed from one stage to the next: {@code with the ring, without the cover}. */
  public static String changed(StageChange change) {
    if (change.changed().isEmpty()) {
      return Words.say("stage.fitted-again");
    }
    List<Part> added = parts(change, true);
    List<Part> gone = parts(change, false);
    return added.isEmpty()
        ? Words.say("stage.without", listed(gone))
        : gone.isEmpty()
            ? Words.say("stage.with", listed(added))
            : Words.say("stage.withAndWithout", listed(added), listed(gone));
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
    change.suspects().forEach(each -> sentences.add(Words.of("stage.suspect", each)));
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
    double size = Math.abs(speed.stops());
    // So many digits that the change does not look as if it were within its uncertainty.
    boolean tenths = Math.round(10 * size) > Math.ceil(10 * speed.plusMinus());
    String stops =
        Words.say("numbers.stops", String.format(Locale.ROOT, tenths ? "%.1f" : "%.2f", size));
    String plusMinus =
        tenths ? up(speed.plusMinus()) : String.format(Locale.ROOT, "%.2f", speed.plusMinus());
    boolean costs =
        speed.shown() == Shown.SLOWER
            && !change.changed().isEmpty()
            && parts(change, false).isEmpty();
    return costs
        ? Words.count(
            "stage.costs",
            change.changed().size(),
            capital(listed(change.changed())),
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

  private static String up(double plusMinus) {
    return String.format(Locale.ROOT, "%.1f", Math.ceil(10 * plusMinus - 1e-9) / 10);
  }

  private static List<Part> parts(StageChange change, boolean there) {
    return change.changed().stream()
        .filter(part -> change.after().assembly().has(part) == there)
        .toList();
  }

  private static String listed(List<Part> parts) {
    Optional<String> all =
        parts.stream()
            .map(part -> Words.of("stage.part", part))
            .reduce((some, one) -> Words.say("stage.and", some, one));
    return all.orElseThrow();
  }

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
