package org.halflight.session;

import org.halflight.stored.StoredWords;

/** Where the sync lever of a shutter is set. */
public enum SyncLever {
  /** For electronic flash: the contact closes while the blades are open. */
  X,
  /** For flash bulbs of class M: the contact closes before the blades open. */
  M;

  /** As files store them, and as they are typed. */
  public static final StoredWords<SyncLever> WORDS =
      StoredWords.of(
          SyncLever.class,
          lever ->
              switch (lever) {
                case X -> "X";
                case M -> "M";
              });
}
