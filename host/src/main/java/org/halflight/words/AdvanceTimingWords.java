package org.halflight.words;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.AdvanceTrial;
import org.halflight.extratest.AdvanceTrial.NotTold;
import org.halflight.extratest.AdvanceTrial.Reason;
import org.halflight.extratest.OwnSounds;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;

/** Wind and release timing in sentences: how it stands, and what to do. */
public final class AdvanceTimingWords {
  private AdvanceTimingWords() {}

  static List<String> lines(AdvanceTiming linkage) {
    List<String> lines = new ArrayList<>();
    lines.add(verdict(linkage));
    linkage
        .scatterSeconds()
        .ifPresent(
            scatter ->
                lines.add(
                    Words.say(
                        "timing.scatter", millis(scatter, scatter), linkage.intervals().n())));
    if (linkage.verdict() != AdvanceTiming.Verdict.NOT_TOLD) {
      notTold(linkage).ifPresent(lines::add);
    }
    if (!linkage.own().isLearnt() && isByClicks(linkage)) {
      lines.add(Words.say("timing.ownNotHeard"));
    }
    if (linkage.own().from() == OwnSounds.From.TRIALS && isByClicks(linkage)) {
      lines.add(Words.say("timing.ownFromTrials"));
    }
    if (!linkage.releaseIsWired()) {
      lines.add(Words.say("timing.noRelease"));
    }
    return lines;
  }

  /** How the linkage stands; where there is no interval, why not. */
  private static String verdict(AdvanceTiming linkage) {
    if (linkage.verdict() == AdvanceTiming.Verdict.NOT_TOLD) {
      return reason(linkage, linkage.newest());
    }
    double plusMinus = linkage.plusMinusSeconds().orElseThrow();
    return Words.of(
        "timing",
        linkage.verdict(),
        interval(linkage.meanSeconds().orElseThrow(), plusMinus),
        millis(plusMinus, plusMinus),
        limit(linkage.limits().leastSeconds()),
        limit(linkage.limits().mostSeconds()));
  }

  /** The trials that came to nothing beside others that did not, with the commonest reason. */
  private static Optional<String> notTold(AdvanceTiming linkage) {
    Map<Reason, Integer> counts = new EnumMap<>(Reason.class);
    linkage.trials().stream()
        .flatMap(trial -> trial.reason().stream())
        .forEach(reason -> counts.merge(reason, 1, Integer::sum));
    int all = counts.values().stream().mapToInt(Integer::intValue).sum();
    return counts.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(
            most ->
                Words.count(
                    "timing.notTold",
                    all,
                    all,
                    linkage.trials().size(),
                    Words.of("timing.reason", most.getKey())));
  }

  /** Why a trial has no interval, and what to do. */
  private static String reason(AdvanceTiming linkage, AdvanceTrial trial) {
    NotTold not = (NotTold) trial.finding();
    String said =
        Words.of("timing.reason", not.reason())
            + linkage.way(trial).map(way -> " " + adjust(way)).orElse("");
    if (not.latestSeconds().isEmpty() || not.earliestSeconds().isEmpty()) {
      return said;
    }
    return said
        + " "
        + Words.say(
            "timing.between",
            interval(not.earliestSeconds().getAsDouble(), AdvanceTrial.CLICK_SECONDS),
            interval(not.latestSeconds().getAsDouble(), AdvanceTrial.CLICK_SECONDS));
  }

  /** The newest trial by itself: its interval, how it stands and which way to adjust. */
  public static String newest(AdvanceTiming linkage) {
    AdvanceTrial trial = linkage.newest();
    int number = linkage.trials().size();
    return trial
        .interval()
        .map(
            told ->
                Words.say(
                    "timing.trial",
                    number,
                    interval(told.seconds(), told.plusMinusSeconds()),
                    inShort(linkage, trial),
                    linkage.way(trial).map(way -> " " + adjust(way)).orElse("")))
        .orElseGet(() -> Words.say("timing.trialNotTold", number, reason(linkage, trial)));
  }

  /** Which way to adjust, as a sentence. */
  private static String adjust(AdvanceTiming.Way way) {
    return Words.of("timing.adjust", way);
  }

  /** Which way to turn, in a few words to be read from the bench; empty where there is no need. */
  public static String way(AdvanceTiming linkage, AdvanceTrial trial) {
    return linkage.way(trial).map(way -> Words.of("timing.way", way)).orElse("");
  }

  /**
   * What to do about sounds without a firing, where the click sensor listens for one; empty where
   * that is not what happened.
   */
  public static Optional<String> heardNothingOpen(FiringResult firing) {
    boolean listens = firing.untimedTest().filter(UntimedTest::isForTheEar).isPresent();
    boolean sound = !firing.firing().of(Channel.CLICK).isEmpty();
    return listens && sound && firing.outcome() == Outcome.NOT_A_SHUTTER_EVENT
        ? Optional.of(Words.say("timing.heardNothingOpen"))
        : Optional.empty();
  }

  /** How one trial stands, in a word or two. */
  public static String inShort(AdvanceTiming linkage, AdvanceTrial trial) {
    return trial
        .reason()
        .map(reason -> Words.of("timing.word", reason))
        .orElseGet(() -> Words.of("timing.word", linkage.verdict(trial)));
  }

  /** An interval: so long before the blades, or after. */
  static String interval(double seconds, double plusMinusSeconds) {
    return Words.say(
        seconds < 0 ? "timing.after" : "timing.before",
        millis(Math.abs(seconds), plusMinusSeconds));
  }

  /** What told the interval of a trial. */
  public static String by(AdvanceTrial trial) {
    return trial
        .interval()
        .map(told -> Words.say(told.byContact() ? "timing.by.contact" : "timing.by.click"))
        .orElse("");
  }

  /** With its sign, plus where the advance comes first. */
  public static String signed(AdvanceTrial.Interval told) {
    return signed(told.seconds(), decimals(told.plusMinusSeconds()));
  }

  /** A limit with its sign, in no more digits than it was given in. */
  public static String limit(double seconds) {
    double millis = Math.round(1e5 * seconds) / 1e2;
    DecimalFormat signed =
        new DecimalFormat("+0.##;-0.##", DecimalFormatSymbols.getInstance(Locale.ROOT));
    return millis == 0 ? "0 ms" : signed.format(millis) + " ms";
  }

  private static String signed(double seconds, int decimals) {
    double rounded = Math.round(1e5 * seconds) / 1e2;
    return rounded == 0 ? "0 ms" : String.format(Locale.ROOT, "%+." + decimals + "f ms", rounded);
  }

  /** The same for large numerals: a tenth of a millisecond is as much as a click tells. */
  public static String large(double seconds) {
    double rounded = Math.round(1e4 * seconds) / 1e1;
    return rounded == 0 ? "0.0" : String.format(Locale.ROOT, "%+.1f", rounded);
  }

  /** How far off an interval may be. */
  public static String plusMinus(AdvanceTrial.Interval told) {
    return Words.say("timing.plusMinus", millis(told.plusMinusSeconds(), told.plusMinusSeconds()));
  }

  /** Milliseconds with as many digits as their uncertainty supports. */
  private static String millis(double seconds, double plusMinusSeconds) {
    return String.format(Locale.ROOT, "%." + decimals(plusMinusSeconds) + "f ms", 1e3 * seconds);
  }

  private static int decimals(double plusMinusSeconds) {
    return plusMinusSeconds < 0.95e-4 ? 2 : 1;
  }

  private static boolean isByClicks(AdvanceTiming linkage) {
    return linkage.trials().stream()
        .anyMatch(
            trial ->
                !trial.heard().isEmpty() && trial.interval().filter(i -> i.byContact()).isEmpty());
  }
}
