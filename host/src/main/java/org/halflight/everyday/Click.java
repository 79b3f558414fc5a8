package org.halflight.everyday;

/**
 * A sound or the move of a contact, with all that rang after it.
 *
 * @param onsetTicks its first edge after quiet
 * @param endTicks the last edge of its ringing, not before the onset
 * @param edges how many edges it has with its ringing
 * @param crowded whether its ringing goes on for longer, or stops and starts again, as that of one
 *     click does not: a second one lies in it, too close to separate. One that is not crowded may
 *     hide another all the same
 */
public record Click(long onsetTicks, long endTicks, int edges, boolean crowded) {
  public Click {
    if (endTicks < onsetTicks || edges < 1) {
      throw new IllegalArgumentException(
          "a click ends at its onset or later: " + onsetTicks + ", " + endTicks);
    }
  }
}
