package org.halflight.rig.practice;

import java.util.OptionalLong;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/** The two thresholds of the practice board, which follow their codes with a filter's lag. */
final class Thresholds {
  private static final int START_LOW = ThresholdCodes.AFTER_START.low();

  private static final int START_HIGH = ThresholdCodes.AFTER_START.high();

  /** Fine codes of the whole supply. */
  private static final double FINE_CODES = 4096;

  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  /** One pole for the two stages of the filter, of 1 ms each. */
  private static final double LAG_SECONDS = 2e-3;

  /** The reference of a chip, which a starter rig compares with; invented, within 1.0 to 1.2 V. */
  private static final double REFERENCE_MILLIVOLTS = 1083;

  private int lowCode = START_LOW;
  private int highCode = START_HIGH;
  private double lowTo = startLowMillivolts();
  private double highTo = startHighMillivolts();
  private double lowFrom = startLowMillivolts();
  private double highFrom = startHighMillivolts();
  private long setTicks;
  private boolean lowIsFixed;

  /**
   * @param fixed whether the one level is the reference of the chip
   */
  Thresholds(boolean fixed) {
    if (fixed) {
      lowTo = REFERENCE_MILLIVOLTS;
      lowFrom = REFERENCE_MILLIVOLTS;
      highTo = REFERENCE_MILLIVOLTS;
      highFrom = REFERENCE_MILLIVOLTS;
      lowCode = (int) Math.round(REFERENCE_MILLIVOLTS * 256 / FrontEnd.SUPPLY_MILLIVOLTS) - 1;
      highCode = 255;
    }
  }

  /** The low threshold after a start. */
  static double startLowMillivolts() {
    return FrontEnd.thresholdMillivolts(START_LOW);
  }

  /** The high threshold after a start. */
  static double startHighMillivolts() {
    return FrontEnd.thresholdMillivolts(START_HIGH);
  }

  int lowCode() {
    return lowCode;
  }

  int highCode() {
    return highCode;
  }

  void set(int newLowCode, int newHighCode, long ticks) {
    lowCode = newLowCode;
    highCode = newHighCode;
    goTo(
        FrontEnd.thresholdMillivolts(newLowCode), FrontEnd.thresholdMillivolts(newHighCode), ticks);
  }

  /** Sets one of the two between codes, until both are set again. */
  void setFine(Channel channel, int fineCode, long ticks) {
    double millivolts = FrontEnd.SUPPLY_MILLIVOLTS * fineCode / FINE_CODES;
    goTo(
        channel == Channel.CENTRE_LOW ? millivolts : lowTo,
        channel == Channel.CENTRE_LOW ? highTo : millivolts,
        ticks);
  }

  /** The low threshold stays where it is, whatever is set, or follows again. */
  void fixLow(boolean fixed) {
    lowIsFixed = fixed;
  }

  private void goTo(double low, double high, long ticks) {
    lowFrom = lowMillivolts(ticks);
    highFrom = highMillivolts(ticks);
    lowTo = lowIsFixed ? lowFrom : low;
    highTo = high;
    setTicks = ticks;
  }

  double lowMillivolts(long ticks) {
    return following(lowFrom, lowTo, ticks);
  }

  double highMillivolts(long ticks) {
    return following(highFrom, highTo, ticks);
  }

  /** The threshold of a light channel. */
  double millivolts(Channel channel, long ticks) {
    return SensorSet.threshold(channel, lowMillivolts(ticks), highMillivolts(ticks));
  }

  /** When the threshold of a light channel, on its way to the codes, passes a steady voltage. */
  OptionalLong passes(Channel channel, double millivolts) {
    double from = SensorSet.threshold(channel, lowFrom, highFrom);
    double to = SensorSet.threshold(channel, lowTo, highTo);
    if (from < millivolts == to < millivolts || to == millivolts) {
      return OptionalLong.empty();
    }
    double seconds = LAG_SECONDS * StrictMath.log((from - to) / (millivolts - to));
    // One tick more, so that it has passed even where the rounding was for nothing.
    return OptionalLong.of(setTicks + (long) Math.ceil(seconds * RATE.ticksPerSecond()) + 1);
  }

  private double following(double from, double to, long ticks) {
    double seconds = Math.max(0, RATE.seconds(ticks - setTicks));
    return to + (from - to) * StrictMath.exp(-seconds / LAG_SECONDS);
  }
}
