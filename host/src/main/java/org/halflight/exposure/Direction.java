package org.halflight.exposure;

import org.halflight.signal.Channel;
import org.halflight.stored.StoredWords;

/** Which outer sensor the curtains pass first. */
public enum Direction {
  A_TO_B,
  B_TO_A;

  /** As files store them. */
  public static final StoredWords<Direction> WORDS =
      StoredWords.of(
          Direction.class,
          direction ->
              switch (direction) {
                case A_TO_B -> "a-to-b";
                case B_TO_A -> "b-to-a";
              });

  /** The channel of the outer sensor at the start of travel. */
  public Channel start() {
    return this == A_TO_B ? Channel.OUTER_A : Channel.OUTER_B;
  }

  /** The channel of the outer sensor at its end. */
  public Channel end() {
    return this == A_TO_B ? Channel.OUTER_B : Channel.OUTER_A;
  }

  /** The other way. */
  public Direction reversed() {
    return this == A_TO_B ? B_TO_A : A_TO_B;
  }
}
