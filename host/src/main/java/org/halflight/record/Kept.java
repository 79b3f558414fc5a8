package org.halflight.record;

/** What a caller may rely on: a number that the record gave is known to it. */
final class Kept {
  private Kept() {}

  static void need(boolean found, Object id) {
    if (!found) {
      throw new IllegalArgumentException("not in this record: " + id);
    }
  }
}
