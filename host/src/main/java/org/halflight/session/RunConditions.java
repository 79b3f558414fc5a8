package org.halflight.session;

import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Under what conditions a run is fired, as noted by the person. Runs under unlike conditions are
 * compared with a warning.
 *
 * @param restSeconds how long the shutter had rested before the run, 0 or more, where known
 * @param noted what was noted, in the person's words, by name; usual names are those of {@link
 *     RunOption#CONDITIONS}
 */
public record RunConditions(OptionalDouble restSeconds, SortedMap<String, String> noted) {
  /** Nothing noted. */
  public static final RunConditions NONE = new RunConditions(OptionalDouble.empty(), Map.of());

  public RunConditions {
    if (restSeconds.isPresent()
        && !(restSeconds.getAsDouble() >= 0 && Double.isFinite(restSeconds.getAsDouble()))) {
      throw new IllegalArgumentException("a rest of " + restSeconds.getAsDouble() + " s");
    }
    noted = Collections.unmodifiableSortedMap(new TreeMap<>(noted));
    if (noted.keySet().stream().anyMatch(name -> !name.matches("[a-z][a-z-]*"))) {
      throw new IllegalArgumentException("a condition is named in a-z and hyphens: " + noted);
    }
    for (RunOption<?> option : RunOption.CONDITIONS) {
      String words = noted.getOrDefault(option.name(), "");
      if (option.find(words).isEmpty()) {
        throw new IllegalArgumentException(option + " cannot be read: " + words);
      }
    }
  }

  /** As above, from a map in any order. */
  public RunConditions(OptionalDouble restSeconds, Map<String, String> noted) {
    this(restSeconds, new TreeMap<>(noted));
  }

  /** What was noted of an option; the usual where nothing was. */
  public <T> T get(RunOption<T> option) {
    return option.find(noted.getOrDefault(option.name(), "")).orElseThrow();
  }

  /** Whether the shutter was still wet from cleaning. */
  public boolean isWet() {
    return isWet(noted.getOrDefault(RunOption.WET.name(), ""));
  }

  /** Whether what was noted of {@link RunOption#WET} means that. */
  public static boolean isWet(String words) {
    return words.toLowerCase(Locale.ROOT).matches("wet|yes|still wet|true");
  }

  /**
   * The names of what was noted for one and otherwise, or not at all, for the other; sorted. A
   * shutter is dry unless it is said to be wet.
   */
  public List<String> unlike(RunConditions other) {
    TreeSet<String> names = new TreeSet<>(noted.keySet());
    names.addAll(other.noted.keySet());
    return names.stream()
        .filter(
            name ->
                name.equals(RunOption.WET.name())
                    ? isWet() != other.isWet()
                    : !Objects.equals(noted.get(name), other.noted.get(name)))
        .toList();
  }
}
