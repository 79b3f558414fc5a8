package org.halflight.words;

import java.util.Locale;
import java.util.OptionalDouble;
import org.halflight.exposure.CurtainNote;
import org.halflight.exposure.CurtainTravel;
import org.halflight.session.CurtainStep;
import org.halflight.verdict.CurtainAdvice;
import org.halflight.verdict.CurtainChange;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.CurtainOffset;
import org.halflight.verdict.CurtainSign;
import org.halflight.verdict.Evenness;

/** Curtains, in sentences: what stands out, and what to do next. */
public final class CurtainWords {
  /** What shows in the second decimal. */
  private static final double LEAST_STOPS = 0.005;

  private CurtainWords() {}

  /** What to do next and why, in one line. */
  public static String next(CurtainAdvice advice) {
    String act = Words.say("curtain.next." + Words.key(advice.act()));
    return advice.why().map(sign -> Words.say("curtain.next", act, of(sign))).orElse(act);
  }

  /** Something that stands out, as a sentence. */
  public static String of(CurtainSign sign) {
    boolean never = sign.kind() == CurtainSign.Kind.NO_WINDOW && sign.size() < 0;
    boolean isLatch =
        sign.kind() == CurtainSign.Kind.LATCH_LATE || sign.kind() == CurtainSign.Kind.LATCH_EARLY;
    return Words.say(
        "curtain.sign."
            + Words.key(sign.kind())
            + (never ? ".never" : isLatch && sign.speed().isPresent() ? ".at" : ""),
        size(sign),
        sign.speed().map(Numbers::speed).orElse(""));
  }

  /** A step of the work, in a few words. */
  public static String step(CurtainStep step) {
    return Words.say("curtain.step." + Words.key(step));
  }

  /** What is turned in a step, what is watched, and when it is done. */
  public static String how(CurtainStep step) {
    return Words.say("curtain.how." + Words.key(step));
  }

  /** A figure's name. */
  public static String name(CurtainFigure figure) {
    return Words.say("curtain.figure." + Words.key(figure));
  }

  /** A figure's value in its unit, such as {@code 12.9 ms} or {@code 0.21 stop}. */
  public static String value(CurtainFigure figure, double value) {
    return switch (figure.unit()) {
      case SECONDS ->
          Math.abs(value) < 1e-3
              ? Words.say("curtain.milliseconds", hundredths(value * 1e3))
              : Numbers.time(value);
      case STOPS -> Numbers.signedStops(value);
      case MILLIMETRES ->
          Words.say("curtain.millimetres", String.format(Locale.ROOT, "%.1f", value));
      case RATIO -> Numbers.percent(value);
    };
  }

  /**
   * Even, or which end is darker or brighter.
   *
   * @param stops its size, as it is to be written
   */
  public static String of(Evenness evenness, String stops) {
    return switch (evenness.kind()) {
      case EVEN -> Words.say("curtain.even");
      case END_DARKER -> Words.say("curtain.endDarker", stops);
      case END_BRIGHTER -> Words.say("curtain.endBrighter", stops);
      case UNEVEN -> Words.say("curtain.uneven", stops);
    };
  }

  /** The curtains of one firing in a line: both travels, the end against the start, the slit. */
  public static String firing(CurtainTravel travel) {
    String none = Words.say("table.nothing");
    OptionalDouble slope = travel.slopeStops();
    OptionalDouble range = travel.rangeStops();
    return Words.say(
        "curtain.firing",
        travel.first().map(run -> Numbers.time(run.edgeSeconds())).orElse(none),
        travel.second().map(run -> Numbers.time(run.edgeSeconds())).orElse(none),
        slope.isPresent() && range.isPresent()
            ? inStops(Evenness.of(slope.getAsDouble(), range.getAsDouble(), LEAST_STOPS))
            : none);
  }

  private static String inStops(Evenness evenness) {
    return of(evenness, Numbers.plainStops(evenness.stops()));
  }

  /** What to know about the travel of curtains, and what to do. */
  public static String note(CurtainNote note) {
    return Words.of("curtain.note", note);
  }

  /** What is alike at all slit speeds, and what grows with the time. */
  public static String offset(CurtainOffset offset) {
    return Words.say(
        "curtain.offset",
        Numbers.time(offset.offsetSeconds()),
        Numbers.time(offset.offsetPlusMinusSeconds()),
        Numbers.percent(offset.rateShare()),
        Numbers.percent(offset.ratePlusMinusShare()));
  }

  /** What became of a figure between two runs, in a sentence. */
  public static String change(CurtainChange change) {
    String name =
        change
            .speed()
            .map(speed -> Words.say("curtain.figureAt", name(change.figure()), speed))
            .orElse(name(change.figure()));
    String key = change.adjustedP().isEmpty() ? "few" : change.isChanged() ? "changed" : "same";
    return Words.say(
        "curtain.compare." + key,
        name,
        value(change.figure(), change.before()),
        value(change.figure(), change.after()));
  }

  /** Curtains are not known better than to a hundredth of a millisecond. */
  private static String hundredths(double milliseconds) {
    return String.format(Locale.ROOT, "%.2f", Numbers.withoutNegativeZero(milliseconds, 2));
  }

  private static String size(CurtainSign sign) {
    return switch (sign.kind()) {
      case CAPPED_AT_END,
          CAPPED_AT_START,
          FIRST_SLOW,
          FIRST_QUICK,
          SECOND_SLOW,
          SECOND_QUICK,
          BOTH_SLOW,
          BOTH_QUICK,
          SLOW_AFTER_REST ->
          Numbers.percent(sign.size());
      case LATCH_LATE, LATCH_EARLY, FIRST_BOUNCES, NO_WINDOW, CONTACT_EARLY, CONTACT_LATE ->
          Numbers.time(Math.abs(sign.size()));
      case WEDGE_END_DARKER,
          WEDGE_END_BRIGHTER,
          FIRST_DRAGS,
          SECOND_DRAGS,
          START_DIFFERS,
          SECOND_BOUNCES ->
          Numbers.plainStops(sign.size());
    };
  }
}
