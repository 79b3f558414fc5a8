package org.halflight.session;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.speeds.Tolerance;

/**
 * Which stops a stop check is about, and what they are held against.
 *
 * @param markings f-numbers as engraved, from the widest on
 * @param toleranceStops how far a stop may be off its marking, above 0
 */
public record StopsAsked(List<String> markings, double toleranceStops) {
  /**
   * How far a stop may be off its marking: a third of a stop, trade custom, no standard's limit.
   */
  public static final double USUAL_TOLERANCE_STOPS = 1 / 3.0;

  /** Further off than this a stop is another one. Our choice. */
  public static final double MOST_TOLERANCE_STOPS = 3;

  /** The stops that most lenses have, against the usual tolerance. */
  public static final StopsAsked USUAL =
      new StopsAsked(List.of("2.8", "4", "5.6", "8", "11", "16"), USUAL_TOLERANCE_STOPS);

  public StopsAsked {
    markings = List.copyOf(markings);
    if (!isTolerance(toleranceStops)) {
      throw new IllegalArgumentException("a tolerance of " + toleranceStops + " stops");
    }
    if (!areStops(markings)) {
      throw new IllegalArgumentException("two or more f-numbers, not " + markings);
    }
  }

  /** Whether these are two or more f-numbers. */
  static boolean areStops(List<String> markings) {
    return markings.size() >= 2 && markings.stream().allMatch(each -> each.matches("[0-9.]+"));
  }

  /**
   * The tolerance that a person wrote, {@code 1/3} or {@code 0.5} stops either way; nothing for the
   * usual one. Empty where it cannot be understood.
   */
  public static OptionalDouble tolerance(String text) {
    if (text.isBlank()) {
      return OptionalDouble.of(USUAL_TOLERANCE_STOPS);
    }
    Optional<Tolerance> written =
        Tolerance.find(text)
            .filter(its -> its.slowStops() == its.fastStops() && isTolerance(its.slowStops()));
    return written.isPresent()
        ? OptionalDouble.of(written.get().slowStops())
        : OptionalDouble.empty();
  }

  /** Whether stops may be held against it. */
  private static boolean isTolerance(double stops) {
    return stops > 0 && stops < MOST_TOLERANCE_STOPS;
  }
}
