package org.halflight.words;

import java.util.Map;
import java.util.TreeMap;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;

/** The options of a run in words; all under {@code run.option}. */
public final class OptionWords {
  private static final String GROUP = "run.option.";

  private OptionWords() {}

  /** What it is about, as the label of a field. */
  public static String label(RunOption<?> option) {
    return Words.say(key(option.name()));
  }

  /** What it is and how it is written, for the help of the command line. */
  public static String help(RunOption<?> option) {
    return Words.say(key(option.name(), "help"));
  }

  /** What holds when nothing is chosen, and how to choose otherwise. */
  public static String usual(RunOption<?> option) {
    if (!option.usualWord().isEmpty()) {
      return value(option.name(), option.usualWord());
    }
    String key = key(option.name(), "usual");
    return Words.say(Words.has(key) ? key : GROUP + "not-noted");
  }

  /** One of its choices. */
  public static String choice(RunOption<?> option, String word) {
    return word.isEmpty() ? usual(option) : value(option.name(), word);
  }

  /**
   * What was chosen or written, in a few words that need no label.
   *
   * @param text as it is chosen or written; empty for the usual
   */
  public static String brief(RunOption<?> option, String text) {
    String word = text.isEmpty() ? option.usualWord() : text;
    String own = key(option.name(), "brief", word.isEmpty() ? "usual" : word);
    return Words.has(own)
        ? Words.say(own)
        : Words.say(key(option.name(), "brief"), value(option.name(), word));
  }

  /** What is wrong with what was written. */
  public static String bad(RunOption<?> option, String text) {
    return option.words().isEmpty()
        ? Words.say(key(option.name(), "bad"), text)
        : Words.say(
            "run.unknownWord", "--" + option.name(), text, String.join(", ", option.words()));
  }

  /** What was noted of a run, by its label; what is no option is left as it was noted. */
  public static Map<String, String> noted(RunConditions conditions) {
    Map<String, String> words = new TreeMap<>();
    conditions
        .noted()
        .forEach(
            (name, value) ->
                words.put(Words.has(key(name)) ? Words.say(key(name)) : name, value(name, value)));
    return words;
  }

  private static String value(String name, String word) {
    String key = key(name, word);
    return Words.has(key) ? Words.say(key) : word;
  }

  private static String key(String... parts) {
    return GROUP + String.join(".", parts);
  }
}
