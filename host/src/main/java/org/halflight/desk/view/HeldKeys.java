package org.halflight.desk.view;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;

/**
 * Tells the press of a key from what the keyboard repeats while the key is held down. Some systems
 * repeat the press alone, others a release and a press that come together. Times are those of the
 * events; only how far they are apart counts.
 */
public final class HeldKeys {
  /**
   * A press this near behind a release is a repetition, in milliseconds: they come together, and no
   * finger is so quick. Our choice.
   */
  public static final long TOGETHER_MILLIS = 10;

  /**
   * A press this long after the last one is a new one, though no release was seen: it went to
   * another window. The pause before the first repetition is two seconds where people set it
   * longest.
   */
  public static final long LONGEST_PAUSE_MILLIS = 2_500;

  private record Held(long pressedMillis, OptionalLong releasedMillis) {}

  private final Map<Integer, Held> keys = new HashMap<>();

  /**
   * A key is reported as pressed.
   *
   * @return whether it was pressed anew
   */
  public boolean pressed(int key, long atMillis) {
    Held before = keys.put(key, new Held(atMillis, OptionalLong.empty()));
    if (before == null) {
      return true;
    }
    return before.releasedMillis().isPresent()
        ? apart(atMillis, before.releasedMillis().getAsLong()) > TOGETHER_MILLIS
        : apart(atMillis, before.pressedMillis()) > LONGEST_PAUSE_MILLIS;
  }

  /** A key is reported as released. */
  public void released(int key, long atMillis) {
    keys.computeIfPresent(
        key, (its, held) -> new Held(held.pressedMillis(), OptionalLong.of(atMillis)));
  }

  /** Releases go to another window from here on. */
  public void forget() {
    keys.clear();
  }

  private static long apart(long millis, long other) {
    return Math.abs(millis - other);
  }
}
