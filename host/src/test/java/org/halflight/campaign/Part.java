package org.halflight.campaign;

/** One part of the campaign. */
interface Part {
  /** One word by which it is chosen. */
  String name();

  /** What its size counts. */
  String unit();

  /** Size of the short form, which runs with the tests. */
  long shortSize();

  /** Size of the long form. */
  long longSize();

  /**
   * Runs it.
   *
   * @param seed the same seed and size make the same
   */
  Tally run(long seed, long size) throws Exception;

  /** Runs one case of it again, by the seed that a broken law names. */
  Tally again(long caseSeed) throws Exception;
}
