package org.halflight.words;

import java.util.OptionalDouble;
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
            : Words.say("two.side", side.speed(), error(side), plusMinus(side));
    return side.change() == Change.NOT_YET
        ? error
        : Words.say("two.line", error, Words.of("two.change", side.change()));
  }

  /** Mean error since the last adjustment; a hyphen where nothing was fired. */
  public static String error(TwoAtOnce.Side side) {
    OptionalDouble error = side.errorStops();
    return error.isPresent() ? Numbers.signedStops(error.getAsDouble()) : "";
  }

  /** How far its mean may be off, by the scatter; empty where that is not known. */
  public static String plusMinus(TwoAtOnce.Side side) {
    return side.plusMinusStops().isPresent()
        ? Words.say("two.plusMinus", Numbers.bareSize(side.plusMinusStops().getAsDouble()))
        : "";
  }

  /** What the last adjustment did; empty where that is not known yet. */
  public static String change(TwoAtOnce.Side side) {
    return side.change() == Change.NOT_YET ? "" : Words.of("two.change", side.change());
  }
}
