package org.halflight.words;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Looks for the words of fixtures/words/forbidden.tsv. An exception counts only where its piece of
 * text holds the word that was found, and remembers that it was needed. What
 * fixtures/words/pending.tsv lists was not gone through yet.
 */
public final class ForbiddenWords {
  private static final List<String> PENDING =
      WordList.rows("pending.tsv").stream().map(row -> row.get(0)).toList();

  private final List<Rule> rules;
  private final List<Allowed> exceptions;
  private final Set<Allowed> needed = new HashSet<>();

  /**
   * Of one kind of text.
   *
   * @param where docs, bundle or help
   */
  public ForbiddenWords(String where) {
    rules =
        WordList.rows("forbidden.tsv").stream()
            .filter(row -> row.get(1).equals("both") || row.get(1).equals(where))
            .map(row -> new Rule(wholeWords(row.get(0)), row.get(2), row.get(3)))
            .toList();
    exceptions =
        WordList.rows("exceptions.tsv").stream()
            .filter(row -> kind(row.get(0)).equals(where))
            .map(row -> new Allowed(row.get(0), row.get(1)))
            .toList();
  }

  /** What is forbidden in a text, each with the better word. */
  public List<String> in(String place, String text) {
    List<String> found = new ArrayList<>();
    for (Rule rule : rules) {
      Matcher matcher = rule.pattern.matcher(text);
      while (matcher.find()) {
        if (!isPending(place) && !excepted(place, text, matcher.group())) {
          found.add(place + ": '" + matcher.group() + "' -> " + rule.better + " | " + text);
        }
      }
    }
    return found;
  }

  /** Exceptions that no text needed. */
  public List<String> needless() {
    return exceptions.stream()
        .filter(each -> !needed.contains(each))
        .map(Allowed::toString)
        .toList();
  }

  /** Rules that do not find their own example. */
  List<String> blind() {
    return rules.stream()
        .filter(rule -> !rule.pattern.matcher(rule.example).find())
        .map(Rule::toString)
        .toList();
  }

  private boolean excepted(String place, String text, String word) {
    for (Allowed each : exceptions) {
      if (each.place.equals(place) && each.text.contains(word) && text.contains(each.text)) {
        needed.add(each);
        return true;
      }
    }
    return false;
  }

  private static String kind(String place) {
    if (place.endsWith(".md")) {
      return "docs";
    }
    return place.startsWith("help") ? "help" : "bundle";
  }

  private static boolean isPending(String place) {
    return PENDING.stream().anyMatch(each -> place.equals(each) || place.startsWith(each + "."));
  }

  private static Pattern wholeWords(String regex) {
    return Pattern.compile(
        "(?<![\\w-])(?:" + regex + ")(?![\\w-])",
        Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE | Pattern.UNICODE_CHARACTER_CLASS);
  }

  private record Rule(Pattern pattern, String better, String example) {}

  private record Allowed(String place, String text) {}
}
