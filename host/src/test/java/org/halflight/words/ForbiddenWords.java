package org.halflight.words;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Looks for the words of fixtures/words/forbidden.tsv. An exception counts only where its piece of
 * text holds the word that was found, and remembers that it was needed.
 */
final class ForbiddenWords {
  private final List<Rule> rules;
  private final List<Allowed> exceptions;
  private final Set<Allowed> needed = new HashSet<>();

  /**
   * @param where docs or bundle
   */
  ForbiddenWords(String where) {
    rules =
        WordList.rows("forbidden.tsv").stream()
            .filter(row -> Set.of("both", where).contains(row.get(1)))
            .map(row -> new Rule(wholeWords(row.get(0)), row.get(2), row.get(3)))
            .toList();
    boolean docs = where.equals("docs");
    exceptions =
        WordList.rows("exceptions.tsv").stream()
            .filter(row -> row.get(0).endsWith(".md") == docs)
            .map(row -> new Allowed(row.get(0), row.get(1)))
            .toList();
  }

  /** What is forbidden in a text, each with the better word. */
  List<String> in(String place, String text) {
    List<String> found = new ArrayList<>();
    for (Rule rule : rules) {
      Matcher matcher = rule.pattern.matcher(text);
      while (matcher.find()) {
        if (!excepted(place, text, matcher.group())) {
          found.add(place + ": '" + matcher.group() + "' -> " + rule.better + " | " + text);
        }
      }
    }
    return found;
  }

  /** Exceptions that no text needed. */
  List<String> needless() {
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

  private static Pattern wholeWords(String regex) {
    return Pattern.compile(
        "(?<![\\w-])(?:" + regex + ")(?![\\w-])",
        Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE | Pattern.UNICODE_CHARACTER_CLASS);
  }

  private record Rule(Pattern pattern, String better, String example) {}

  private record Allowed(String place, String text) {}
}
