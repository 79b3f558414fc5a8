package org.halflight.desk.view;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Which key does what, whatever has the focus. Letters and the space bar are left alone while
 * somebody types; the keys of the places work always.
 */
public final class KeyMap {
  private static final Map<String, Act> BENCH = bench();
  private static final Map<String, Act> EVERYWHERE = everywhere();

  private KeyMap() {}

  /**
   * What a key does.
   *
   * @param key its name: a capital letter, or SPACE, BACKSPACE, ENTER, LEFT, RIGHT, F1 and so on;
   *     with CTRL+ or CTRL+SHIFT+ before it, where these are held
   * @param atBench whether the bench is on the screen
   * @param typing whether a text field has the focus
   * @param practice whether the practice rig is on the bench
   */
  public static Optional<Act> act(String key, boolean atBench, boolean typing, boolean practice) {
    Act everywhere = EVERYWHERE.get(key);
    if (everywhere != null) {
      return Optional.of(everywhere);
    }
    if (!atBench || typing) {
      return Optional.empty();
    }
    return Optional.ofNullable(BENCH.get(key)).filter(act -> practice || !isOfPractice(act));
  }

  /** The name of the key of an act, for people. */
  public static String keyOf(Act act) {
    return BENCH.entrySet().stream()
        .filter(entry -> entry.getValue() == act)
        .map(Map.Entry::getKey)
        .findFirst()
        .orElseGet(
            () ->
                EVERYWHERE.entrySet().stream()
                    .filter(entry -> entry.getValue() == act)
                    .map(Map.Entry::getKey)
                    .findFirst()
                    .orElseThrow());
  }

  /**
   * Whether an act goes on while its key is held down. All else counts once: a key that was held
   * for too long must not do anything to firings that nobody looked at.
   */
  public static boolean repeats(Act act) {
    return act == Act.LOOK_SLOWER || act == Act.LOOK_FASTER;
  }

  /** Whether an act works the model camera. */
  public static boolean isOfPractice(Act act) {
    return act == Act.FIRE || act == Act.COCK;
  }

  private static Map<String, Act> bench() {
    Map<String, Act> keys = new LinkedHashMap<>();
    keys.put("SPACE", Act.ACCEPT);
    keys.put("S", Act.SKIP_READING);
    keys.put("X", Act.STOP_READING);
    keys.put("G", Act.FULL_LIGHT);
    keys.put("BACKSPACE", Act.REJECT);
    keys.put("CTRL+Z", Act.UNDO);
    keys.put("CTRL+SHIFT+Z", Act.REDO);
    keys.put("CTRL+Y", Act.REDO);
    keys.put("N", Act.NEXT);
    keys.put("P", Act.PREVIOUS);
    keys.put("M", Act.MOVE);
    keys.put("C", Act.CLOSED_BY_HAND);
    keys.put("K", Act.LEARN_COCKING);
    keys.put("L", Act.LENS_CAP);
    keys.put("A", Act.MARK);
    keys.put("LEFT", Act.LOOK_SLOWER);
    keys.put("RIGHT", Act.LOOK_FASTER);
    keys.put("ENTER", Act.CHOOSE);
    keys.put("D", Act.DETAILS);
    keys.put("T", Act.TABLES);
    keys.put("F", Act.FIRE);
    keys.put("J", Act.COCK);
    return Collections.unmodifiableMap(keys);
  }

  private static Map<String, Act> everywhere() {
    Map<String, Act> keys = new LinkedHashMap<>();
    keys.put("F1", Act.KEYS);
    keys.put("F2", Act.TO_BENCH);
    keys.put("F3", Act.TO_LIGHT);
    keys.put("F4", Act.TO_CAMERA);
    keys.put("F5", Act.TO_RUN);
    keys.put("F6", Act.TO_CAMERAS);
    keys.put("F7", Act.PRACTICE);
    keys.put("F8", Act.SOUNDS);
    keys.put("F9", Act.THEME);
    keys.put("F10", Act.TO_RIG);
    keys.put("F11", Act.TO_TRIED);
    return Collections.unmodifiableMap(keys);
  }
}
