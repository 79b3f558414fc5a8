package org.halflight.workflow;

import java.util.regex.Pattern;
import org.halflight.session.PlungerReading;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** Two readings of a screw plunger as they are typed, in mm. */
public final class TypedPlunger {
  /** No release button has a longer stroke; our own limit. */
  private static final double MOST_MM = 20;

  private static final Pattern NUMBER = Pattern.compile("\\d{1,2}([.,]\\d{1,4})?");

  private TypedPlunger() {}

  /**
   * Reads them.
   *
   * @param advance where the film advance unlocks
   * @param shutter where the shutter trips
   * @throws Trouble where one is no number of mm: what, and what to do
   */
  public static PlungerReading read(String advance, String shutter) {
    double advanceMm = millimetres(advance);
    double shutterMm = millimetres(shutter);
    if (!(advanceMm <= MOST_MM && shutterMm <= MOST_MM)) {
      throw new Trouble(
          Words.say("linkage.plunger.bad", (advance.strip() + " " + shutter.strip()).strip()));
    }
    return new PlungerReading(advanceMm, shutterMm);
  }

  private static double millimetres(String typed) {
    String number = typed.strip();
    return NUMBER.matcher(number).matches()
        ? Double.parseDouble(number.replace(',', '.'))
        : Double.NaN;
  }
}
