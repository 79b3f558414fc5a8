package org.halflight.workflow;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.session.PlungerReading;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * Two readings of a screw plunger as they are typed: in mm ({@code 1.60}), or as the hand reads
 * them, whole turns and divisions of the drum ({@code 3+4}).
 */
public final class TypedPlunger {
  /** No release button has a longer stroke; our own limit. */
  private static final double MOST_MM = 20;

  private static final Pattern NUMBER = Pattern.compile("\\d{1,2}([.,]\\d{1,4})?");

  private static final Pattern TURNS = Pattern.compile("(\\d{1,2})\\s*\\+\\s*(\\d{1,2})");

  private TypedPlunger() {}

  /**
   * Reads them.
   *
   * @param advance where the film advance unlocks
   * @param shutter where the shutter trips
   * @throws Trouble where one is neither: what, and what to do
   */
  public static PlungerReading read(String advance, String shutter) {
    return new PlungerReading(millimetres(advance), millimetres(shutter));
  }

  private static double millimetres(String typed) {
    String number = typed.strip();
    Matcher turns = TURNS.matcher(number);
    if (turns.matches() && Integer.parseInt(turns.group(2)) < PlungerReading.DIVISIONS) {
      return PlungerReading.millimetres(
          Integer.parseInt(turns.group(1)), Integer.parseInt(turns.group(2)));
    }
    double millimetres =
        NUMBER.matcher(number).matches()
            ? Double.parseDouble(number.replace(',', '.'))
            : Double.NaN;
    if (!(millimetres <= MOST_MM)) {
      throw new Trouble(Words.say("linkage.plunger.bad", number));
    }
    return millimetres;
  }
}
