package org.halflight.campaign;

/** Where randomness comes from, so that each case can be made again by itself. */
final class Seeds {
  private Seeds() {}

  /** The seed of one case of many. */
  static long of(long seed, long place) {
    long z = seed + (place + 1) * 0x9E3779B97F4A7C15L;
    z = (z ^ z >>> 30) * 0xBF58476D1CE4E5B9L;
    z = (z ^ z >>> 27) * 0x94D049BB133111EBL;
    return z ^ z >>> 31;
  }

  /** The words for {@link Campaign} that make a case again. */
  static String replay(String part, long caseSeed) {
    return "--again " + part + ":" + caseSeed;
  }
}
