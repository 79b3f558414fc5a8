package org.halflight.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Shims of one place in the order in which they lie.
 *
 * @param thicknesses of each in mm, with the digits that were written; {@value #NOT_MEASURED} where
 *     nobody measured it; at least one
 */
public record Shims(List<String> thicknesses) {
  /** In the place of a thickness that nobody measured. */
  public static final String NOT_MEASURED = "?";

  private static final int MOST = 50;
  private static final Pattern SEVERAL = Pattern.compile("(\\d{1,2})x(.+)");

  public Shims {
    thicknesses = List.copyOf(thicknesses);
  }

  /**
   * Shims as they are typed: {@code 0.10 0.05}, {@code 2x0.10}, {@code 2x?} for two that nobody
   * measured; blanks, semicolons, plus signs or commas with a blank after them in between. A comma
   * within a number is a decimal comma.
   */
  public static Optional<Shims> read(String typed) {
    List<String> all = new ArrayList<>();
    for (String part : typed.strip().split("(?:,\\s|[\\s;+])+,?", 0)) {
      Matcher several = SEVERAL.matcher(part);
      boolean counted = several.matches();
      Optional<String> thickness = thickness(counted ? several.group(2) : part);
      int count = counted ? Integer.parseInt(several.group(1)) : 1;
      if (thickness.isEmpty() || count < 1 || all.size() + count > MOST) {
        return Optional.empty();
      }
      for (int i = 0; i < count; i++) {
        all.add(thickness.get());
      }
    }
    return Optional.of(new Shims(all));
  }

  private static Optional<String> thickness(String part) {
    return part.equals(NOT_MEASURED) ? Optional.of(part) : millimetres(part);
  }

  /** Millimetres above zero with the digits that were typed, a decimal comma as a point. */
  static Optional<String> millimetres(String typed) {
    String point = typed.strip().replace(',', '.');
    return point.matches("\\d{1,4}(\\.\\d{1,4})?") && Double.parseDouble(point) > 0
        ? Optional.of(point)
        : Optional.empty();
  }

  /** How many there are. */
  public int count() {
    return thicknesses.size();
  }

  /** As {@link #read} reads them. */
  public String words() {
    return String.join(", ", thicknesses);
  }
}
