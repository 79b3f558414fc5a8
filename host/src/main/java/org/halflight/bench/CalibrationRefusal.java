package org.halflight.bench;

import org.halflight.calibration.SlopeTest;
import org.halflight.signal.Channel;

/** Why a calibration or a rig check cannot be made. */
public sealed interface CalibrationRefusal {
  /** The reference LED brings no light to the sensor. */
  record NoLed(double darkCounts, double ledCounts) implements CalibrationRefusal {}

  /** The sensor reads less light with the LED on than with it off. */
  record Inverted(double darkCounts, double ledCounts) implements CalibrationRefusal {}

  /** The sensor is at the end of its scale with the LED on. */
  record Saturated(double ledCounts) implements CalibrationRefusal {}

  /** There is light on the sensor already. */
  record NotDark(double darkCounts) implements CalibrationRefusal {}

  /** The LED is too dim to place the levels. */
  record TooDim(double ledCounts) implements CalibrationRefusal {}

  /** A channel saw none of the pulses. */
  record NothingSeen(Channel channel) implements CalibrationRefusal {}

  /** A channel goes dark when the LED goes on. */
  record WrongPolarity(Channel channel) implements CalibrationRefusal {}

  /** A channel saw only some of the pulses. */
  record Disturbed(Channel channel, int missed) implements CalibrationRefusal {}

  /** Too few points for a line. */
  record TooFewPoints(Channel channel, int points) implements CalibrationRefusal {}

  /** Widths do not follow what the board made: LED and stamps disagree. */
  record SlopeNotOne(SlopeTest test) implements CalibrationRefusal {}

  /** The person stopped it. */
  record Stopped() implements CalibrationRefusal {}

  /** The rig started anew meanwhile. */
  record Restarted() implements CalibrationRefusal {}

  /** The rig did not answer, or refused a command. */
  record NoAnswer() implements CalibrationRefusal {}
}
