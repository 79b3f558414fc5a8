package org.halflight.campaign;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a part of the campaign came to: counts, and every law that was broken. */
final class Tally {
  /** Of each law. */
  private static final int TOLD_MOST = 8;

  private final String part;
  private final Map<String, Long> counts = new LinkedHashMap<>();
  private final Map<String, Long> broken = new LinkedHashMap<>();
  private final List<String> firstBroken = new ArrayList<>();
  private long longestMillis;

  Tally(String part) {
    this.part = part;
  }

  String part() {
    return part;
  }

  /** Counts something. */
  void add(String what, long number) {
    counts.merge(what, number, Long::sum);
  }

  /** Keeps the greatest. */
  void most(String what, long number) {
    counts.merge(what, number, Math::max);
  }

  /** Keeps how long the longest case took; firstBroken, and never a law of a test. */
  void took(String what, long fromNanos) {
    long millis = (System.nanoTime() - fromNanos) / 1_000_000;
    longestMillis = Math.max(longestMillis, millis);
    most("milliseconds of the longest " + what, millis);
  }

  /** How long the longest case of all took, in milliseconds. */
  long longestMillis() {
    return longestMillis;
  }

  /** A law that may be broken; so that a table shows it with 0 when it never was. */
  void law(String law) {
    broken.merge(law, 0L, Long::sum);
  }

  /**
   * A law was broken.
   *
   * @param replay the words that make this case again by itself
   */
  void breaks(String law, String replay, String how) {
    if (broken.merge(law, 1L, Long::sum) <= TOLD_MOST) {
      firstBroken.add(law + " | " + replay + " | " + how);
    }
  }

  long count(String what) {
    return counts.getOrDefault(what, 0L);
  }

  long broken(String law) {
    return broken.getOrDefault(law, 0L);
  }

  Map<String, Long> counts() {
    return counts;
  }

  Map<String, Long> broken() {
    return broken;
  }

  /** The first cases that broke a law. */
  List<String> firstBroken() {
    return firstBroken;
  }

  boolean isGood() {
    return broken.values().stream().allMatch(n -> n == 0);
  }

  @Override
  public String toString() {
    StringBuilder out = new StringBuilder(part).append('\n');
    counts.forEach(
        (what, number) -> out.append("  ").append(number).append(' ').append(what).append('\n'));
    broken.forEach(
        (law, number) ->
            out.append(number == 0 ? "  0 " : "  BROKEN " + number + ' ').append(law).append('\n'));
    firstBroken.forEach(each -> out.append("    ").append(each).append('\n'));
    return out.toString();
  }
}
