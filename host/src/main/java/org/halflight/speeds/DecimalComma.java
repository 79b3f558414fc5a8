package org.halflight.speeds;

import java.util.Arrays;
import java.util.List;

/**
 * Numbers as people type them: many write {@code 7,8} for 7.8. A comma between two digits is a
 * decimal comma in a single number; in a list it is one where semicolons stand between the numbers,
 * and else where the list makes no sense otherwise. A thousands mark is never read: {@code 1.234,5}
 * comes to {@code 1.234.5}, which is no number.
 */
public final class DecimalComma {
  private static final String COMMA = "(?<=\\d),(?=\\d)";

  private DecimalComma() {}

  /** The same text with points for decimal commas. */
  public static String pointed(String typed) {
    return typed.strip().replaceAll(COMMA, ".");
  }

  /** The numbers of a list with commas or semicolons between; commas are separators if they may. */
  public static List<String> separated(String typed) {
    return typed.contains(";")
        ? Arrays.asList(pointed(typed).split("[,;]", -1))
        : Arrays.asList(typed.split(",", -1));
  }

  /** The same where commas between digits are decimal commas. */
  public static List<String> pointedEach(String typed) {
    return Arrays.asList(pointed(typed).split("[,;]", -1));
  }
}
