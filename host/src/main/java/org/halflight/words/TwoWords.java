package org.halflight.words;

import org.halflight.verdict.TwoAtOnce;
import org.halflight.verdict.TwoAtOnce.Change;

/** Two speeds that are adjusted at once, in words. */
public final class TwoWords {
  private TwoWords() {}

  /** Both in one line, and whether that is enough. */
  public static String line(TwoAtOnce two) {
    String both = Words.say("two.lines", side(two.first()), side(two.second()));
    return two.isEnough() ? both + " " + Words.say("two.enough") : both;
  }

  private static String side(TwoAtOnce.Side side) {
    String error =
        side.errorStops().isEmpty()
            ? Words.say("two.side.none", side.speed())
            : Words.say(
                "two.side",
                side.speed(),
                Numbers.signedStops(side.errorStops().getAsDouble()),
                plusMinus(side));
    return side.change() == Change.NOT_YET
        ? error
        : Words.say("two.line", error, Words.of("two.change", side.change()));
  }

  /** How far its mean may be off, by the scatter; empty where that is not known. */
  private static String plusMinus(TwoAtOnce.Side side) {
    return side.plusMinusStops().isPresent()
        ? Words.say("two.plusMinus", Numbers.bareSize(side.plusMinusStops().getAsDouble()))
        : "";
  }

  /** What the last adjustment did; empty where that is not known yet. */
  public static String change(TwoAtOnce.Side side) {
    return side.change() == Change.NOT_YET ? "" : Words.of("two.change", side.change());
  }
}
