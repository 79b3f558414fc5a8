package org.halflight.desk.view;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.Exposure;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringConditions;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.words.ConditionWords;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/**
 * The last firing as it is read from two metres: its error in stops with its word, then its time
 * beside the one that was wanted. An outcome without a time takes the place of the figure.
 *
 * @param large the error in stops, a time where no speed is shown, or the outcome
 * @param unit of a time; empty for stops, which the word names, and for words
 * @param figure whether {@code large} is a figure, or words, which may wrap
 * @param word what the figure means; empty where it needs none
 * @param time in ms beside the wanted time, or what is known instead
 * @param detail what else there is to know of the time; may be empty
 * @param note what the figure is of
 * @param tone how sure it is
 */
public record NumeralsText(
    String large,
    String unit,
    boolean figure,
    String word,
    String time,
    String detail,
    String note,
    Tone tone) {
  /**
   * An error of less is called on time: a twentieth of a stop is 3.5 % of the time, less than rigs
   * and films can tell apart from firing to firing. Our own limit.
   */
  static final double ON_TIME_STOPS = 0.05;

  /** How sure a figure stands there. */
  public enum Tone {
    /** Settled. */
    SETTLED,
    /** May still move a little. */
    PROVISIONAL,
    /** The shutter is open now. */
    OPEN,
    /** No time, but an outcome. */
    OUTCOME,
    /** Not counted by the person. */
    REJECTED,
    /** From a link that is lost since. */
    STALE,
    /** Nothing was fired yet. */
    NOTHING
  }

  /** Before the first view. */
  public static final NumeralsText NOTHING =
      new NumeralsText("", "", false, "", "", "", "", Tone.NOTHING);

  /** The numerals of a view. */
  public static NumeralsText of(BenchView view) {
    NumeralsText text = live(view);
    boolean stale = !view.link().isUp() && text.tone() != Tone.NOTHING;
    return stale
        ? new NumeralsText(
            text.large,
            text.unit,
            text.figure,
            text.word,
            text.time,
            text.detail,
            Words.say("desk.numerals.stale", text.note),
            Tone.STALE)
        : text;
  }

  /** The whole in one line, as it is read aloud. */
  public String spoken() {
    return String.join(
        ", ",
        java.util.stream.Stream.of(note, (large + " " + unit + " " + word).strip(), time, detail)
            .filter(part -> !part.isBlank())
            .toList());
  }

  private static NumeralsText live(BenchView view) {
    Optional<NumeralsText> ofTest =
        LightTestText.numerals(view).or(() -> LinkageText.numerals(view));
    if (ofTest.isPresent()) {
      return ofTest.get();
    }
    if (view.openSeconds().isPresent() && view.link().isUp()) {
      Numbers.InUnit running = Numbers.runningInUnits(view.openSeconds().getAsDouble());
      return new NumeralsText(
          running.figure(),
          running.unit(),
          true,
          Words.say("desk.numerals.open"),
          "",
          "",
          label(view.shown()),
          Tone.OPEN);
    }
    if (view.last().isEmpty()) {
      return new NumeralsText(
          Words.say("desk.numerals.nothing"), "", false, "", "", "", "", Tone.NOTHING);
    }
    LastFiring last = view.last().get();
    return last.over()
        .map(firing -> settled(view, firing))
        .orElseGet(() -> provisional(view, (LastFiring.Provisional) last));
  }

  private static NumeralsText provisional(BenchView view, LastFiring.Provisional firing) {
    String note =
        Words.say(
            "desk.numerals.settling",
            label(firing.shown()) + limit(view, firing.shown(), view.run()));
    return firing.exposure() instanceof Exposure.Timed timed
        ? timed(timed.effectiveSeconds(), timed, firing.errorStops(), note, Tone.PROVISIONAL)
        : words(Words.say("outcome.never-fully-open"), "", note, Tone.PROVISIONAL);
  }

  private static NumeralsText settled(BenchView view, FiringResult firing) {
    String note = label(firing.setting()) + limit(view, firing.setting(), firing.run());
    if (firing.rejection().isPresent()) {
      note = Words.say("desk.numerals.rejected", note);
    } else if (firing.afterRest()) {
      note = Words.say("desk.numerals.afterRest", note);
    }
    FiringConditions conditions = firing.conditions().besideRest();
    if (!conditions.isEmpty()) {
      note = Words.say("desk.numerals.under", note, ConditionWords.list(conditions));
    }
    Tone usual =
        firing.rejection().isPresent()
            ? Tone.REJECTED
            : firing.outcome() == Outcome.OPENS_HOLDS_CLOSES ? Tone.SETTLED : Tone.OUTCOME;
    String outcome = Words.of("outcome", firing.outcome());
    if (firing.decidedBy().equals(Optional.of(DecidedBy.CURVE))) {
      note = Words.say("desk.numerals.byCurve", note);
    }
    if (firing.effectiveSeconds().isPresent()) {
      return timed(
          firing.effectiveSeconds().getAsDouble(),
          firing.exposure(),
          firing.errorStops(),
          note,
          firing.rejection().isPresent() ? Tone.REJECTED : Tone.SETTLED);
    }
    String known = "";
    Optional<DecidedBy> nothing = firing.decidedBy().filter(by -> !by.givesTime());
    if (nothing.isPresent()) {
      outcome = Sentences.decidedBy(nothing.get());
    }
    if (firing.exposure() instanceof Exposure.StuckOpen stuck) {
      known = Words.say("desk.numerals.atLeast", Numbers.time(stuck.lowestSeconds()));
    } else if (firing.exposure() instanceof Exposure.NeverFullyOpen never) {
      known =
          never.highestSeconds().isPresent()
              ? Words.say(
                  "desk.numerals.between",
                  Numbers.time(never.lowestSeconds()),
                  Numbers.time(never.highestSeconds().getAsDouble()))
              : Words.say("desk.numerals.atLeast", Numbers.time(never.lowestSeconds()));
    } else if (firing.exposure() instanceof Exposure.Timed timed) {
      String key =
          switch (firing.outcome()) {
            case LIGHT_WHILE_COCKING -> "desk.numerals.lightFor";
            case DOUBLE -> "desk.numerals.firstOpening";
            default -> "desk.numerals.openFor";
          };
      known = Words.say(key, Numbers.time(timed.widthLowSeconds()));
    }
    return words(outcome, known, note, usual);
  }

  private static NumeralsText timed(
      double seconds, Exposure exposure, OptionalDouble error, String note, Tone tone) {
    Numbers.InUnit time = Numbers.timeInUnit(seconds);
    String parts =
        exposure instanceof Exposure.Timed timed && hasParts(timed)
            ? parts(timed, Numbers.time(seconds - timed.effectiveSeconds() + timed.mainSeconds()))
            : "";
    if (error.isEmpty()) {
      // By itself a fraction names a marking near; beside one that is set it would mislead.
      String fraction = Numbers.fraction(seconds);
      String near = fraction.startsWith("1/") ? fraction : "";
      return new NumeralsText(time.figure(), time.unit(), true, near, "", parts, note, tone);
    }
    double stops = error.getAsDouble();
    return new NumeralsText(
        Numbers.largeStops(stops),
        "",
        true,
        word(stops),
        Numbers.timeAndWanted(seconds, seconds * Math.pow(2, -stops)),
        parts,
        note,
        tone);
  }

  /** On which side it is, where that can be told. */
  private static String word(double stops) {
    return Words.say(
        Math.abs(stops) < ON_TIME_STOPS
            ? "stops.onTime"
            : stops > 0 ? "desk.numerals.slow" : "desk.numerals.fast");
  }

  private static boolean hasParts(Exposure.Timed timed) {
    return timed.flags().contains(Exposure.Flag.FLAP_LIGHT)
        || timed.flags().contains(Exposure.Flag.LATE_LIGHT);
  }

  private static String parts(Exposure.Timed timed, String main) {
    return timed.flags().contains(Exposure.Flag.FLAP_LIGHT)
        ? Words.say("desk.numerals.flap", main, Numbers.time(timed.earlySeconds()))
        : Words.say("desk.numerals.parts", main, Numbers.time(timed.reboundSeconds()));
  }

  private static NumeralsText words(String outcome, String known, String note, Tone tone) {
    return new NumeralsText(outcome, "", false, "", known, "", note, tone);
  }

  private static String label(Optional<DialSetting> setting) {
    return setting
        .map(
            its ->
                Words.say(
                    "desk.numerals.of",
                    its.speed().map(Numbers::speed).orElseGet(() -> Sentences.dial(its))))
        .orElseGet(() -> Words.say("desk.numerals.noSpeed"));
  }

  /** What the speed is judged by in its run; empty outside of one. */
  private static String limit(BenchView view, Optional<DialSetting> setting, int run) {
    return setting
        .flatMap(DialSetting::speed)
        .filter(speed -> run > 0)
        .map(speed -> ViewedRuns.tolerances(view, run).apply(speed).text())
        .map(limit -> Words.say("desk.numerals.limit", limit))
        .orElse("");
  }
}
