package org.halflight.desk.view;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Which key does what, whatever has the focus. Letters and the space bar are left alone while
 * somebody types; the keys of the places work always.
 */
public final class KeyMap {
  private static final Map<String, UserAction> BENCH = bench();
  private static final Map<String, UserAction> EVERYWHERE = everywhere();
  private static final Map<String, UserAction> PAD = pad();

  /** What the keys of the number pad are called before what is printed on them. */
  public static final String PAD_KEY = "PAD ";

  /** Keys that move within forms, tables and menus, or that are held down with others. */
  private static final Set<String> OF_THE_DESKTOP =
      Set.of("TAB", "ESCAPE", "UP", "DOWN", "SHIFT", "CTRL", "ALT", "META");

  private KeyMap() {}

  /**
   * What a key does.
   *
   * @param key its name: a capital letter, or SPACE, BACKSPACE, ENTER, LEFT, RIGHT, F1 and so on;
   *     with CTRL+ or CTRL+SHIFT+ before it, where these are held; with {@link #PAD_KEY} before it
   *     for keys of the number pad
   * @param atBench whether the bench is on the screen
   * @param typing whether a text field has the focus
   * @param practice whether the practice rig is on the bench
   */
  public static Optional<UserAction> act(
      String key, boolean atBench, boolean typing, boolean practice) {
    UserAction everywhere = EVERYWHERE.get(key);
    if (everywhere != null) {
      return Optional.of(everywhere).filter(act -> !typing || !isOfTyping(act));
    }
    if (!atBench || typing) {
      return Optional.empty();
    }
    return Optional.ofNullable(BENCH.get(key))
        .or(() -> Optional.ofNullable(PAD.get(key)))
        .filter(act -> practice || !isOfPractice(act));
  }

  /** Whether a key does something, at some time or place. */
  public static boolean hasMeaning(String key) {
    return BENCH.containsKey(key)
        || PAD.containsKey(key)
        || EVERYWHERE.containsKey(key)
        || OF_THE_DESKTOP.contains(key);
  }

  /** What the keys of the number pad do, by what is printed on them. */
  public static Map<String, UserAction> ofPad() {
    Map<String, UserAction> keys = new LinkedHashMap<>();
    PAD.forEach((key, act) -> keys.put(key.substring(PAD_KEY.length()), act));
    return keys;
  }

  /** The name of the key of an act, for people. */
  public static String keyOf(UserAction act) {
    return Stream.of(BENCH, EVERYWHERE)
        .flatMap(keys -> keys.entrySet().stream())
        .filter(entry -> entry.getValue() == act)
        .map(Map.Entry::getKey)
        .findFirst()
        .orElseThrow();
  }

  /**
   * Whether an act goes on while its key is held down. All else counts once: a key that was held
   * for too long must not do anything to firings that nobody looked at.
   */
  public static boolean repeats(UserAction act) {
    return act == UserAction.LOOK_SLOWER || act == UserAction.LOOK_FASTER;
  }

  /** Whether the key of an act works at every place; others belong to the bench. */
  public static boolean isEverywhere(UserAction act) {
    return EVERYWHERE.containsValue(act);
  }

  /** Whether the key of an act does the same to what is typed in a field that has the focus. */
  public static boolean isOfTyping(UserAction act) {
    return act == UserAction.UNDO || act == UserAction.REDO;
  }

  /** Whether an act works the model camera. */
  public static boolean isOfPractice(UserAction act) {
    return act == UserAction.FIRE || act == UserAction.COCK;
  }

  private static Map<String, UserAction> bench() {
    Map<String, UserAction> keys = new LinkedHashMap<>();
    keys.put("SPACE", UserAction.ACCEPT);
    keys.put("W", UserAction.WIND_TURNS);
    keys.put("O", UserAction.WIND_LOCKED);
    keys.put("S", UserAction.SKIP_READING);
    keys.put("X", UserAction.STOP_READING);
    keys.put("G", UserAction.FULL_LIGHT);
    keys.put("BACKSPACE", UserAction.REJECT);
    keys.put("R", UserAction.REASON);
    keys.put("N", UserAction.NEXT);
    keys.put("P", UserAction.PREVIOUS);
    keys.put("M", UserAction.MOVE);
    keys.put("C", UserAction.CLOSED_BY_HAND);
    keys.put("K", UserAction.LEARN_COCKING);
    keys.put("L", UserAction.LENS_CAP);
    ConditionKeys.ALL.forEach((act, key) -> keys.put(key.digit(), act));
    keys.put("Q", UserAction.CONDITIONS);
    keys.put("E", UserAction.SWITCH_COVER);
    keys.put("I", UserAction.SWITCH_CELLS);
    keys.put("U", UserAction.SWITCH_PLACE);
    keys.put("A", UserAction.MARK);
    keys.put("V", UserAction.TWO);
    keys.put("PAGE UP", UserAction.TURN_TIGHTER);
    keys.put("PAGE DOWN", UserAction.TURN_LOOSER);
    keys.put("B", UserAction.STEP_NEXT);
    CurtainKeys.STEPS.forEach((act, step) -> keys.put("CTRL+" + step.number(), act));
    keys.put("LEFT", UserAction.LOOK_SLOWER);
    keys.put("RIGHT", UserAction.LOOK_FASTER);
    keys.put("ENTER", UserAction.CHOOSE);
    keys.put("D", UserAction.DETAILS);
    keys.put("T", UserAction.TABLES);
    keys.put("Z", UserAction.FAR_VIEW);
    keys.put("H", UserAction.CURVE);
    keys.put("F", UserAction.FIRE);
    keys.put("J", UserAction.COCK);
    keys.put("Y", UserAction.CHANGE_BENCH);
    return Collections.unmodifiableMap(keys);
  }

  /** The everyday acts once more, for a keyboard that stands beside the camera. */
  private static Map<String, UserAction> pad() {
    Map<String, UserAction> keys = new LinkedHashMap<>();
    keys.put("PAD ENTER", UserAction.ACCEPT);
    keys.put("PAD .", UserAction.REJECT);
    keys.put("PAD +", UserAction.NEXT);
    keys.put("PAD -", UserAction.PREVIOUS);
    keys.put("PAD *", UserAction.MARK);
    keys.put("PAD /", UserAction.CLOSED_BY_HAND);
    keys.put("PAD 1", UserAction.WIND_TURNS);
    keys.put("PAD 0", UserAction.WIND_LOCKED);
    return Collections.unmodifiableMap(keys);
  }

  private static Map<String, UserAction> everywhere() {
    Map<String, UserAction> keys = new LinkedHashMap<>();
    keys.put("F1", UserAction.KEYS);
    keys.put("F2", UserAction.TO_BENCH);
    keys.put("F3", UserAction.TO_LIGHT);
    keys.put("F4", UserAction.TO_CAMERA);
    keys.put("F5", UserAction.TO_RUN);
    keys.put("F7", UserAction.TO_CAMERAS);
    keys.put("F9", UserAction.PRACTICE);
    keys.put("F12", UserAction.SOUNDS);
    keys.put("CTRL+Z", UserAction.UNDO);
    keys.put("CTRL+SHIFT+Z", UserAction.REDO);
    keys.put("CTRL+Y", UserAction.REDO);
    keys.put("CTRL+F8", UserAction.TO_FIRST_LIGHT);
    keys.put("CTRL+M", UserAction.AIM_LIGHT);
    keys.put("CTRL+L", UserAction.SET_LIGHT);
    keys.put("CTRL+B", UserAction.CHECK_SCREEN);
    keys.put("CTRL+F1", UserAction.HELP);
    keys.put("CTRL+SHIFT+F1", UserAction.ABOUT);
    keys.put("CTRL+Q", UserAction.QUIT);
    keys.put("F10", UserAction.MENU);
    keys.put("F11", UserAction.THEME);
    keys.put("F8", UserAction.TO_RIG);
    keys.put("F6", UserAction.TO_TRIED);
    keys.put("F7", UserAction.TO_CAMERAS);
    keys.put("F8", UserAction.TO_RIG);
    keys.put("F9", UserAction.PRACTICE);
    keys.put("F11", UserAction.THEME);
    keys.put("F12", UserAction.SOUNDS);
    return Collections.unmodifiableMap(keys);
  }
}
