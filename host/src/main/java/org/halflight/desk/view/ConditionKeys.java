package org.halflight.desk.view;

import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.session.FiringCondition;
import org.halflight.session.FiringResult;
import org.halflight.words.ConditionWords;
import org.halflight.words.Words;
import org.halflight.workflow.ConditionKey;

/** The keys 1 to 9: special conditions of the firing just made, and of those to come. */
public final class ConditionKeys {
  /** What each of them does. */
  static final Map<UserAction, ConditionKey> ALL = all();

  /** Those that need no firing yet. */
  private static final Set<ConditionKey> OF_FIRINGS_TO_COME =
      EnumSet.of(
          ConditionKey.WARMED,
          ConditionKey.ATTITUDE,
          ConditionKey.WIDE_OPEN,
          ConditionKey.STOPPED_DOWN);

  private ConditionKeys() {}

  private static Map<UserAction, ConditionKey> all() {
    Map<UserAction, ConditionKey> all = new EnumMap<>(UserAction.class);
    all.put(UserAction.CONDITION_REST, ConditionKey.REST);
    all.put(UserAction.CONDITION_WARMED, ConditionKey.WARMED);
    all.put(UserAction.CONDITION_ATTITUDE, ConditionKey.ATTITUDE);
    all.put(UserAction.CONDITION_DIAL, ConditionKey.DIAL);
    all.put(UserAction.CONDITION_QUICK_TAP, ConditionKey.QUICK_TAP);
    all.put(UserAction.CONDITION_LONG_PRESS, ConditionKey.LONG_PRESS);
    all.put(UserAction.CONDITION_WIDE_OPEN, ConditionKey.WIDE_OPEN);
    all.put(UserAction.CONDITION_STOPPED_DOWN, ConditionKey.STOPPED_DOWN);
    all.put(UserAction.CONDITION_LAST_TOO, ConditionKey.LAST_TOO);
    return Collections.unmodifiableMap(all);
  }

  /** The condition that an act is about; empty where it is about none. */
  public static Optional<ConditionKey> of(UserAction act) {
    return Optional.ofNullable(ALL.get(act));
  }

  /**
   * The keys that are worth showing now, those that are on marked: none before a run was begun, and
   * none while the light or the linkage is tested.
   */
  public static List<KeyHints.Hint> hints(BenchView view) {
    if (view.setup().isEmpty()
        || view.lightTest().isUnderWay()
        || view.linkage().isUnderWay()
        || LinkageText.isOver(view)) {
      return List.of();
    }
    Optional<FiringResult> last = lastFiring(view);
    return ALL.entrySet().stream()
        .filter(entry -> last.isPresent() || OF_FIRINGS_TO_COME.contains(entry.getValue()))
        .map(
            entry ->
                new KeyHints.Hint(
                    entry.getKey(),
                    entry.getValue().digit(),
                    words(entry.getKey(), view),
                    entry.getValue().isOn(view.conditions(), last)))
        .toList();
  }

  /** The one cap behind which they are, with those that are on; empty where none is offered. */
  static Optional<KeyHints.Hint> cap(BenchView view) {
    List<KeyHints.Hint> all = hints(view);
    String on =
        all.stream()
            .filter(hint -> hint.answers() && isFromNowOn(hint))
            .map(KeyHints.Hint::words)
            .collect(Collectors.joining(", "));
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(
            KeyHints.hint(
                UserAction.CONDITIONS,
                on.isEmpty()
                    ? KeyHints.words(UserAction.CONDITIONS)
                    : Words.say("desk.key.conditions.on", on),
                !on.isEmpty()));
  }

  /** The cap that brings the other keys back. */
  public static KeyHints.Hint back() {
    return KeyHints.hint(UserAction.CONDITIONS, Words.say("desk.key.conditions.back"), false);
  }

  /** Those of {@link #hints} that are about the last firing alone. */
  public static List<KeyHints.Hint> ofLastFiring(BenchView view) {
    return hints(view).stream().filter(hint -> !isFromNowOn(hint)).toList();
  }

  /** Those that are about the firings to come, and the key that makes them the last one's. */
  public static List<KeyHints.Hint> fromNowOn(BenchView view) {
    return hints(view).stream().filter(ConditionKeys::isFromNowOn).toList();
  }

  private static boolean isFromNowOn(KeyHints.Hint hint) {
    return of(hint.act())
        .filter(key -> OF_FIRINGS_TO_COME.contains(key) || key == ConditionKey.LAST_TOO)
        .isPresent();
  }

  private static String words(UserAction act, BenchView view) {
    return view.conditions()
        .of(FiringCondition.Kind.ATTITUDE)
        .filter(its -> act == UserAction.CONDITION_ATTITUDE)
        .map(ConditionWords::of)
        .orElseGet(() -> KeyHints.words(act));
  }

  /** As the session has it: the last one of the run that the shutter made. */
  private static Optional<FiringResult> lastFiring(BenchView view) {
    for (int i = view.results().size() - 1; i >= 0; i--) {
      FiringResult result = view.results().get(i);
      if (result.run() == view.run() && result.outcome().isOfTheShutter()) {
        return Optional.of(result);
      }
    }
    return Optional.empty();
  }
}
