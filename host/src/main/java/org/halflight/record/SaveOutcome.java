package org.halflight.record;

/** What keeping a firing came to. */
public enum SaveOutcome {
  /** It was new. */
  ADDED,
  /**
   * It was there with its last edges cut off, as a press of the release whose light came much
   * later, or with damage that was found only then; now all that is known of it is there.
   */
  COMPLETED,
  /** It was there, but its row was damaged; it is written anew, and the old row set aside. */
  MENDED,
  /** It was there; what was said about it since (not counted, another speed) was kept too. */
  CHANGED,
  /** It was there like this. */
  KNOWN,
  /**
   * Another firing is known by the same rig, start and ticks; that one stays, and this one is not
   * kept. Cannot happen with a rig that counts its starts.
   */
  DIFFERS
}
