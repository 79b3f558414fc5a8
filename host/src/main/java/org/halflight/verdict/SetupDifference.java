package org.halflight.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Something about the set-up that was not alike in two runs, so that a change may be the set-up's
 * and not the shutter's.
 *
 * @param name of the set-up value
 * @param before what it was in the earlier run, empty where it was not noted
 * @param after what it was in the later run, empty where it was not noted
 */
public record SetupDifference(String name, Optional<String> before, Optional<String> after) {
  /** The differences between two set-ups of named values, by name. */
  public static List<SetupDifference> between(
      Map<String, String> before, Map<String, String> after) {
    TreeSet<String> names = new TreeSet<>(before.keySet());
    names.addAll(after.keySet());
    List<SetupDifference> differences = new ArrayList<>();
    for (String name : names) {
      Optional<String> first = Optional.ofNullable(before.get(name));
      Optional<String> second = Optional.ofNullable(after.get(name));
      if (!first.equals(second)) {
        differences.add(new SetupDifference(name, first, second));
      }
    }
    return differences;
  }
}
