package org.halflight.speeds;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The tolerances that a person has chosen: one for every speed, others for some of them. Where
 * nothing is chosen the usual ones hold, which are trade custom.
 *
 * @param every for all speeds that have none of their own
 * @param each of single speeds
 */
public record Tolerances(Optional<Tolerance> every, Map<MarkedSpeed, Tolerance> each) {
  /** Nothing chosen: a third of a stop, half a stop at the top speed. */
  public static final Tolerances USUAL = new Tolerances(Optional.empty(), Map.of());

  public Tolerances {
    each = Collections.unmodifiableMap(new LinkedHashMap<>(each));
  }

  /**
   * Reads what a person wrote: {@code 0.33}, {@code 1/3} or {@code 10%} for every speed, {@code
   * 1/500=1/2} for one, with commas or semicolons between; nothing for the usual ones. See {@link
   * Tolerance#find}.
   *
   * @return empty where something cannot be understood, or a speed stands there twice
   */
  public static Optional<Tolerances> find(String text) {
    if (text.isBlank()) {
      return Optional.of(USUAL);
    }
    return read(DecimalComma.separated(text)).or(() -> read(DecimalComma.pointedEach(text)));
  }

  private static Optional<Tolerances> read(List<String> parts) {
    Optional<Tolerance> every = Optional.empty();
    Map<MarkedSpeed, Tolerance> each = new LinkedHashMap<>();
    for (String part : parts) {
      String[] sides = part.split("=", -1);
      Optional<Tolerance> tolerance = Tolerance.find(sides[sides.length - 1]);
      Optional<MarkedSpeed> speed =
          sides.length == 2 ? MarkedSpeed.find(sides[0]) : Optional.empty();
      boolean known = sides.length == 1 ? every.isEmpty() : sides.length == 2 && speed.isPresent();
      if (!known
          || tolerance.isEmpty()
          || (speed.isPresent() && each.put(speed.get(), tolerance.get()) != null)) {
        return Optional.empty();
      }
      if (speed.isEmpty()) {
        every = tolerance;
      }
    }
    return Optional.of(new Tolerances(every, each));
  }

  /** As {@link #find} reads it; nothing for the usual ones. */
  public String text() {
    String one = every.map(Tolerance::text).orElse("");
    String others =
        each.entrySet().stream()
            .map(entry -> entry.getKey().label() + "=" + entry.getValue().text())
            .collect(Collectors.joining(", "));
    return one.isEmpty() || others.isEmpty() ? one + others : one + ", " + others;
  }

  /** The tolerance of a speed. */
  public Tolerance of(MarkedSpeed speed, Tolerance usual) {
    return Optional.ofNullable(each.get(speed)).or(() -> every).orElse(usual);
  }

  /** The tolerance of a speed on its dial. */
  public Tolerance of(MarkedSpeed speed, Dial dial) {
    return of(speed, Tolerance.usual(dial, speed));
  }
}
