package org.halflight.shuttermodel;

import org.halflight.signal.Channel;

/** The comparators of the four light channels. */
public record LevelComparators(
    LevelComparator low, LevelComparator high, LevelComparator outerA, LevelComparator outerB) {
  /** All ideal. */
  public static final LevelComparators IDEAL =
      new LevelComparators(
          LevelComparator.IDEAL,
          LevelComparator.IDEAL,
          LevelComparator.IDEAL,
          LevelComparator.IDEAL);

  /**
   * Invented, of the size that data sheets of general-purpose comparators give (from memory: offset
   * some millivolts, 0.3 us at large overdrive and about 1 us at 5 mV).
   */
  public static final LevelComparators INVENTED =
      new LevelComparators(
          new LevelComparator(8, 12, 0.3, 5),
          new LevelComparator(-5, 12, 0.3, 5),
          new LevelComparator(3, 12, 0.3, 5),
          new LevelComparator(-2, 12, 0.3, 5));

  /** Drawn: offsets of some 4 mV either way, hysteresis of 8 to 16 mV, delays as invented. */
  public static LevelComparators drawn(long seed) {
    SeededDraws draws = new SeededDraws(SeededDraws.seedOf(seed, 4));
    return new LevelComparators(drawn(draws), drawn(draws), drawn(draws), drawn(draws));
  }

  private static LevelComparator drawn(SeededDraws draws) {
    return new LevelComparator(4 * draws.normal(), 8 + 8 * draws.uniform(), 0.3, 5);
  }

  /** The comparator of a light channel. */
  public LevelComparator of(Channel channel) {
    return switch (channel) {
      case CENTRE_LOW -> low;
      case CENTRE_HIGH -> high;
      case OUTER_A -> outerA;
      case OUTER_B -> outerB;
      case CONTACT, CLICK, RELEASE, KNOB ->
          throw new IllegalArgumentException("no comparator of light on " + channel);
    };
  }
}
