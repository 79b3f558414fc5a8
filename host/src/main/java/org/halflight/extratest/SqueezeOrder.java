package org.halflight.extratest;

import java.util.OptionalDouble;
import org.halflight.stored.StoredWords;

/** Which came first in a slow squeeze. It is shown, and never decides the verdict. */
public enum SqueezeOrder {
  /** Together, as near as a finger can tell. */
  ONE_CLICK,
  /** The advance unlocked first. */
  ADVANCE_FIRST,
  /** The shutter tripped first. */
  SHUTTER_FIRST,
  /** Nothing tells: lifted pawls can be silent. */
  NOT_KNOWN;

  /**
   * Nearer than this to first light is one click, in seconds: a shutter trips some milliseconds
   * before its blades show light (common practice, no source: 2 to 10). Our own limit.
   */
  public static final double TOGETHER_SECONDS = 0.02;

  /** As tables and the record spell them. */
  public static final StoredWords<SqueezeOrder> WORDS =
      StoredWords.of(
          SqueezeOrder.class,
          order ->
              switch (order) {
                case ONE_CLICK -> "one-click";
                case ADVANCE_FIRST -> "advance-first";
                case SHUTTER_FIRST -> "shutter-first";
                case NOT_KNOWN -> "not-known";
              });

  /**
   * The order by how long before first light the advance was seen to unlock.
   *
   * @param aheadSeconds below zero after it; empty where nothing tells
   */
  public static SqueezeOrder of(OptionalDouble aheadSeconds) {
    if (aheadSeconds.isEmpty()) {
      return NOT_KNOWN;
    }
    double ahead = aheadSeconds.getAsDouble();
    return Math.abs(ahead) <= TOGETHER_SECONDS
        ? ONE_CLICK
        : ahead > 0 ? ADVANCE_FIRST : SHUTTER_FIRST;
  }
}
