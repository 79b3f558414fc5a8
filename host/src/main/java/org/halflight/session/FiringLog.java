package org.halflight.session;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** All firings of a session in the order in which they settled; none is ever taken out. */
final class FiringLog {
  private final List<FiringResult> results = new ArrayList<>();
  private final Map<FiringKey, Integer> places = new HashMap<>();

  List<FiringResult> all() {
    return Collections.unmodifiableList(results);
  }

  int size() {
    return results.size();
  }

  /** Whether a firing of this key is there, by itself or as the late light of a release. */
  boolean knows(FiringKey key) {
    return places.containsKey(key);
  }

  void add(FiringResult result) {
    places.put(result.key(), results.size());
    results.add(result);
  }

  /** Puts another view of a firing in its place. */
  void replace(FiringResult result) {
    results.set(places.get(result.key()), result);
  }

  /** The edges of a firing turned out to belong to one that is there. */
  void joined(FiringKey later, FiringKey to) {
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

  /** The releases of one run at a setting that say something about the shutter and count. */
  Stream<FiringResult> tries(int run, Setting setting) {
    return results.stream()
        .filter(r -> r.run() == run && r.setting().equals(Optional.of(setting)))
        .filter(r -> r.outcome().isOfTheShutter() && r.rejection().isEmpty());
  }

  /** Firings of a run at a setting that have what was asked for. */
  int good(int run, Setting setting) {
    return (int)
        tries(run, setting)
            .filter(
                r ->
                    setting
                        .check()
                        .map(check -> hasBroughtIt(check, r))
                        .orElseGet(r::answersTheQuestion))
            .count();
  }

  private static boolean hasBroughtIt(Check check, FiringResult result) {
    if (check == Check.SELF_TIMER) {
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
