package org.halflight.extratest;

import java.util.List;

/**
 * A sound or the move of a contact, with all that rang after it.
 *
 * @param onsetTicks its first edge after quiet
 * @param endTicks the last edge of its ringing, not before the onset
 * @param edges how many edges it has with its ringing
 * @param crowded whether its ringing goes on for longer, or stops and starts again, as that of one
 *     click does not: a second one lies in it, too close to separate. One that is not crowded may
 *     hide another all the same
 * @param pauses within its ringing, of {@link Clicks#PAUSE_SECONDS} or more, in order of time
 */
public record Click(
    long onsetTicks, long endTicks, int edges, boolean crowded, List<Pause> pauses) {
  /**
   * No edge for a while.
   *
   * @param fromTicks the last edge before it
   * @param toTicks the first edge after it
   */
  public record Pause(long fromTicks, long toTicks) {
    long ticks() {
      return toTicks - fromTicks;
    }
  }

  public Click {
    if (endTicks < onsetTicks || edges < 1) {
      throw new IllegalArgumentException(
          "a click ends at its onset or later: " + onsetTicks + ", " + endTicks);
    }
    pauses = List.copyOf(pauses);
  }

  /** What begins after a pause, with all that rang after it. */
  Click from(Pause pause) {
    return new Click(
        pause.toTicks(),
        endTicks,
        1,
        false,
        pauses.stream().filter(later -> later.fromTicks() >= pause.toTicks()).toList());
  }
}
