package org.halflight.firstlight;

import org.halflight.exposure.ThresholdCodes;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;

/** Where the levels of a rig are while it is tested: at the codes after its start. */
final class Levels {
  /** The usual reference inside the chip, 1.1 V, at a supply of 5 V. */
  static final double REFERENCE_COUNTS = 1100 / BoardTraits.MILLIVOLTS_PER_COUNT;

  private Levels() {}

  /** The level of a channel that sees light, in counts. */
  static double counts(BoardTraits board, Channel level) {
    double low =
        board.fixedLevel() ? REFERENCE_COUNTS : ThresholdCodes.AFTER_START.lowCounts();
    double high = ThresholdCodes.AFTER_START.highCounts();
    return switch (level) {
      case CENTRE_HIGH -> high;
      case OUTER_A, OUTER_B -> (low + high) / 2;
      default -> low;
    };
  }
}
