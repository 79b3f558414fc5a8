package org.halflight.session;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.halflight.exposure.Exposure;
import org.halflight.speeds.MarkedSpeed;
import org.jspecify.annotations.Nullable;

/**
 * All firings of a session in the order in which they settled; none is ever taken out. What is
 * asked at every firing is kept in lists of its own, so that a firing costs the same however long
 * the session is.
 */
final class FiringLog {
  private final List<FiringResult> results = new ArrayList<>();
  private final Map<FiringKey, Integer> places = new HashMap<>();
  private long changes;

  /** Releases that say something about the shutter and count. */
  private final NavigableSet<Integer> tries = new TreeSet<>();

  /** Those with a time at a marked speed that goes into statistics. */
  private final NavigableSet<Integer> timed = new TreeSet<>();

  private final Map<MarkedSpeed, NavigableMap<Integer, NavigableSet<Integer>>> timedAt =
      new HashMap<>();
  private final Map<RunSetting, Group> groups = new HashMap<>();
  private final Map<Integer, Integer> ofTheShutter = new HashMap<>();

  private record RunSetting(int run, Optional<DialSetting> setting) {}

  /** Firings of one run at one setting. */
  private static final class Group {
    private final NavigableSet<Integer> all = new TreeSet<>();
    private final NavigableSet<Integer> tries = new TreeSet<>();
    private final Map<FiringConditions, NavigableSet<Integer>> good = new HashMap<>();

    /** As many as are alike: those with nothing special, or else the most of any conditions. */
    private int good() {
      NavigableSet<Integer> plain = good.get(FiringConditions.NONE);
      return plain != null && !plain.isEmpty()
          ? plain.size()
          : good.values().stream().mapToInt(Set::size).max().orElse(0);
    }
  }

  List<FiringResult> all() {
    return Collections.unmodifiableList(results);
  }

  int size() {
    return results.size();
  }

  /** Another number whenever a firing is added or looked at anew. */
  long changes() {
    return changes;
  }

  /** Whether a firing of this key is there, by itself or as the late light of a release. */
  boolean knows(FiringKey key) {
    return places.containsKey(key);
  }

  void add(FiringResult result) {
    int place = results.size();
    places.put(result.key(), place);
    results.add(result);
    enter(place, result);
  }

  /** Puts another view of a firing in its place. */
  void replace(FiringResult result) {
    int place = Objects.requireNonNull(places.get(result.key()));
    remove(place, results.get(place));
    results.set(place, result);
    enter(place, result);
  }

  /** Puts another view of a firing in its place and says so. */
  void change(FiringResult result, List<SessionEvent> events) {
    replace(result);
    events.add(new SessionEvent.Changed(result));
  }

  /** The edges of a firing turned out to belong to one that is there. */
  void joined(FiringKey later, FiringKey to) {
    changes++;
    places.put(later, places.get(to));
  }

  Optional<FiringResult> find(FiringKey key) {
    return Optional.ofNullable(places.get(key)).map(results::get);
  }

  /** The last firing of a kind. */
  Optional<FiringResult> last(Predicate<FiringResult> kind) {
    for (int i = results.size() - 1; i >= 0; i--) {
      if (kind.test(results.get(i))) {
        return Optional.of(results.get(i));
      }
    }
    return Optional.empty();
  }

  /** The last releases that say something about the shutter and count, oldest first. */
  List<FiringResult> lastTries(int most) {
    List<FiringResult> last = new ArrayList<>();
    for (int place : tries.descendingSet()) {
      if (last.size() == most) {
        break;
      }
      last.add(results.get(place));
    }
    Collections.reverse(last);
    return last;
  }

  /** The last firing with a time at a marked speed, but for one. */
  Optional<FiringResult> lastTimedBut(FiringKey one) {
    for (int place : timed.descendingSet()) {
      if (!results.get(place).key().equals(one)) {
        return Optional.of(results.get(place));
      }
    }
    return Optional.empty();
  }

  /**
   * Firings with a time at a marked speed by run, the latest run and in it the latest firing first.
   *
   * @param fromRun the first run that counts
   * @param toRun the last one
   */
  Stream<Stream<FiringResult>> timedByRun(MarkedSpeed speed, int fromRun, int toRun) {
    NavigableMap<Integer, NavigableSet<Integer>> runs = timedAt.get(speed);
    return runs == null || fromRun > toRun
        ? Stream.empty()
        : runs.subMap(fromRun, true, toRun, true).descendingMap().values().stream()
            .map(run -> run.descendingSet().stream().map(results::get));
  }

  /** Whether a run has a firing that the shutter made. */
  boolean hasOfTheShutter(int run) {
    return ofTheShutter.getOrDefault(run, 0) > 0;
  }

  /** The firings of one run at a setting, or at none. */
  Stream<FiringResult> at(int run, Optional<DialSetting> setting) {
    Group group = groups.get(new RunSetting(run, setting));
    return group == null ? Stream.empty() : group.all.stream().map(results::get);
  }

  /** The releases of one run at a setting that say something about the shutter and count. */
  Stream<FiringResult> tries(int run, DialSetting setting) {
    Group group = group(run, setting);
    return group == null ? Stream.empty() : group.tries.stream().map(results::get);
  }

  /** How many {@link #tries} there are. */
  int triesCount(int run, DialSetting setting) {
    Group group = group(run, setting);
    return group == null ? 0 : group.tries.size();
  }

  /** Firings of a run at a setting that have what was asked for. */
  int good(int run, DialSetting setting) {
    Group group = group(run, setting);
    return group == null ? 0 : group.good();
  }

  private @Nullable Group group(int run, DialSetting setting) {
    return groups.get(new RunSetting(run, Optional.of(setting)));
  }

  private void enter(int place, FiringResult result) {
    changes++;
    Group group =
        groups.computeIfAbsent(
            new RunSetting(result.run(), result.setting()), absent -> new Group());
    group.all.add(place);
    if (result.isTry()) {
      tries.add(place);
      group.tries.add(place);
      if (result.setting().filter(setting -> isGood(setting, result)).isPresent()) {
        group.good.computeIfAbsent(AlikeFirings.of(result), absent -> new TreeSet<>()).add(place);
      }
    }
    if (isTimedAtASpeed(result)) {
      timed.add(place);
      timedLike(result).add(place);
    }
    if (isOfTheShutter(result)) {
      ofTheShutter.merge(result.run(), 1, Integer::sum);
    }
  }

  /** Places of the timed firings of the run and speed of one of them. */
  private NavigableSet<Integer> timedLike(FiringResult result) {
    return timedAt
        .computeIfAbsent(result.shown().orElseThrow(), absent -> new TreeMap<>())
        .computeIfAbsent(result.run(), absent -> new TreeSet<>());
  }

  private void remove(int place, FiringResult result) {
    Group group =
        Objects.requireNonNull(groups.get(new RunSetting(result.run(), result.setting())));
    group.all.remove(place);
    group.tries.remove(place);
    group.good.values().forEach(alike -> alike.remove(place));
    tries.remove(place);
    if (timed.remove(place)) {
      timedLike(result).remove(place);
    }
    if (isOfTheShutter(result)) {
      ofTheShutter.merge(result.run(), -1, Integer::sum);
    }
  }

  /** Whether it has a time at a marked speed that goes into statistics. */
  static boolean isTimedAtASpeed(FiringResult result) {
    return result.isGood() && result.shown().isPresent();
  }

  private static boolean isOfTheShutter(FiringResult result) {
    return isOfTheShutter(result.outcome(), result.exposure());
  }

  /** Whether the shutter made it, though a small rig may still lack the other level. */
  static boolean isOfTheShutter(Outcome outcome, Exposure exposure) {
    return outcome.isOfTheShutter() || OneLevelWatch.awaitsOtherLevel(exposure);
  }

  private static boolean isGood(DialSetting setting, FiringResult result) {
    return setting
        .untimedTest()
        .map(check -> hasBroughtIt(check, result))
        .orElseGet(result::answersTheQuestion);
  }

  private static boolean hasBroughtIt(UntimedTest check, FiringResult result) {
    if (check == UntimedTest.SELF_TIMER) {
      // Light at once was released without it; without a press nothing tells.
      return result.outcome().isOfTheShutter()
          && result.outcome() != Outcome.DID_NOT_OPEN
          && (result.isBySelfTimer() || result.releaseDelaySeconds().isEmpty());
    }
    // Which sounds come with an opening is the matter there, whatever its time is.
    return check.isForTheEar()
        ? result.outcome() != Outcome.DID_NOT_OPEN
        : result.outcome() == Outcome.OPENS_HOLDS_CLOSES;
  }
}
