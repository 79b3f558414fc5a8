package org.halflight.light;

import org.halflight.signal.BoardTraits;

/**
 * One millisecond of light: 16 readings of ten bits, 62.5 us apart.
 *
 * @param index number of the block within a request, 1 ms apart; gaps are blocks that were skipped
 * @param sum16 sum of the readings
 * @param least the least reading
 * @param most the greatest reading
 */
public record LightBlock(int index, int sum16, int least, int most) {
  /** Readings in a block. */
  public static final int READINGS = 16;

  public LightBlock {
    if (index < 0 || least < 0 || least > most || most > BoardTraits.FULL_SCALE_COUNTS) {
      throw new IllegalArgumentException(
          "not a light block: index " + index + ", least " + least + ", most " + most);
    }
    if (sum16 < READINGS * least || sum16 > READINGS * most) {
      throw new IllegalArgumentException(
          "the sum of a light block does not fit its extremes: " + sum16);
    }
  }

  /** The mean reading. */
  public double meanCounts() {
    return (double) sum16 / READINGS;
  }
}
