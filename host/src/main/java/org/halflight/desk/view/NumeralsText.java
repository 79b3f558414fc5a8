package org.halflight.desk.view;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.LeafExposure;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringConditions;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.words.ConditionWords;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/**
 * The last firing as numerals: what is to be read from two metres, and what stands beside it.
 *
 * @param large the figure or the outcome
 * @param unit of the figure; empty for words
 * @param figure whether {@code large} is a figure, which keeps its size, or words, which may shrink
 * @param time the same as a fraction beside its target, or what is known instead
 * @param error against the marking, in stops; empty where there is none
 * @param note what the figure is of
 * @param tone how sure it stands there
 */
public record NumeralsText(
    String large, String unit, boolean figure, String time, String error, String note, Tone tone) {
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
      new NumeralsText("", "", false, "", "", "", Tone.NOTHING);

  /** The numerals of a view. */
  public static NumeralsText of(BenchView view) {
    NumeralsText text = live(view);
    boolean stale = !view.link().isUp() && text.tone() != Tone.NOTHING;
    return stale
        ? new NumeralsText(
            text.large,
            text.unit,
            text.figure,
            text.time,
            text.error,
            Words.say("desk.numerals.stale"),
            Tone.STALE)
        : text;
  }

  /** The whole in one line, as it is read aloud. */
  public String spoken() {
    return String.join(
        ", ",
        java.util.stream.Stream.of(note, (large + " " + unit).strip(), time, error)
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
          "",
          Words.say("desk.numerals.open"),
          label(view.shown()),
          Tone.OPEN);
    }
    if (view.last().isEmpty()) {
      return new NumeralsText(
          Words.say("desk.numerals.nothing"), "", false, "", "", "", Tone.NOTHING);
    }
    LastFiring last = view.last().get();
    return last.over()
        .map(NumeralsText::settled)
        .orElseGet(() -> provisional((LastFiring.Provisional) last));
  }

  private static NumeralsText provisional(LastFiring.Provisional firing) {
    return firing.exposure() instanceof LeafExposure.Timed timed
        ? timed(
            timed.effectiveSeconds(),
            timed,
            firing.errorStops(),
            label(firing.shown()),
            Tone.PROVISIONAL)
        : words(Words.say("outcome.never-fully-open"), "", label(firing.shown()), Tone.PROVISIONAL);
  }

  private static NumeralsText settled(FiringResult firing) {
    String note = label(firing.setting());
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
          firing.referenceSeconds().isPresent()
              ? Words.say(
                  "desk.numerals.right",
                  note,
                  Numbers.timeInUnit(firing.referenceSeconds().getAsDouble()).text())
              : note,
          firing.rejection().isPresent() ? Tone.REJECTED : Tone.SETTLED);
    }
    String known = "";
    Optional<DecidedBy> nothing = firing.decidedBy().filter(by -> !by.givesTime());
    if (nothing.isPresent()) {
      outcome = Sentences.decidedBy(nothing.get());
    }
    if (firing.exposure() instanceof LeafExposure.StuckOpen stuck) {
      known = Words.say("desk.numerals.atLeast", Numbers.time(stuck.lowestSeconds()));
    } else if (firing.exposure() instanceof LeafExposure.NeverFullyOpen never) {
      known =
          never.highestSeconds().isPresent()
              ? Words.say(
                  "desk.numerals.between",
                  Numbers.time(never.lowestSeconds()),
                  Numbers.time(never.highestSeconds().getAsDouble()))
              : Words.say("desk.numerals.atLeast", Numbers.time(never.lowestSeconds()));
    } else if (firing.exposure() instanceof LeafExposure.Timed timed) {
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
      double seconds, LeafExposure exposure, OptionalDouble error, String note, Tone tone) {
    Numbers.InUnit time = Numbers.timeInUnit(seconds);
    return new NumeralsText(
        time.figure(),
        time.unit(),
        true,
        exposure instanceof LeafExposure.Timed timed && hasParts(timed)
            ? parts(timed, Numbers.time(seconds - timed.effectiveSeconds() + timed.mainSeconds()))
            : error.isPresent()
                ? Numbers.fractionAndTarget(seconds, seconds * Math.pow(2, -error.getAsDouble()))
                : "",
        error.isPresent() ? Numbers.stopsInWords(error.getAsDouble()) : "",
        note,
        tone);
  }

  private static boolean hasParts(LeafExposure.Timed timed) {
    return timed.flags().contains(LeafExposure.Flag.FLAP_LIGHT)
        || timed.flags().contains(LeafExposure.Flag.LATE_LIGHT);
  }

  private static String parts(LeafExposure.Timed timed, String main) {
    return timed.flags().contains(LeafExposure.Flag.FLAP_LIGHT)
        ? Words.say("desk.numerals.flap", main, Numbers.time(timed.earlySeconds()))
        : Words.say("desk.numerals.parts", main, Numbers.time(timed.reboundSeconds()));
  }

  private static NumeralsText words(String outcome, String known, String note, Tone tone) {
    return new NumeralsText(outcome, "", false, known, "", note, tone);
  }

  private static String label(Optional<DialSetting> setting) {
    return setting
        .map(s -> Words.say("desk.numerals.of", Sentences.dial(s)))
        .orElseGet(() -> Words.say("desk.numerals.noSpeed"));
  }
}
