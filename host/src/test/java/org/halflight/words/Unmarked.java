package org.halflight.words;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Words of a text in the pseudo-language that do not come from the bundle. */
public final class Unmarked {
  private static final Pattern WORD = Pattern.compile("[A-Za-z]+");

  private Unmarked() {}

  /**
   * Words without a mark.
   *
   * @param exceptions expressions for what need not come from the bundle, and why
   */
  public static Set<String> in(String text, Map<String, String> exceptions) {
    String rest = text;
    for (String exception : exceptions.keySet()) {
      rest = rest.replaceAll(exception, "");
    }
    return WORD.matcher(rest)
        .results()
        .map(MatchResult::group)
        .collect(Collectors.toCollection(TreeSet::new));
  }
}
