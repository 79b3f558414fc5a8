package org.halflight.words;

import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.speeds.MarkedSpeed;

/**
 * Every sentence that a person reads, from one bundle of whole sentences, so that screen, terminal
 * and page say the same.
 *
 * <p>Another language is another bundle with the same keys on the class path, named by the system
 * property {@code halflight.sentences}.
 *
 * <p>Places in a sentence are written {@code {0}}, {@code {1}} and are filled with text that is
 * ready to be read (see {@link Numbers}).
 */
public final class Words {
  private static volatile ResourceBundle sentences =
      ResourceBundle.getBundle(
          System.getProperty("halflight.sentences", "org.halflight.words.sentences"));

  private static final Pattern PLACE = Pattern.compile("\\{(\\d)\\}");

  private Words() {}

  /**
   * A sentence.
   *
   * @param key its name in the bundle; an unknown one is a caller's mistake
   * @param parts what stands in its places
   */
  public static String say(String key, Object... parts) {
    if (!sentences.containsKey(key)) {
      throw new IllegalArgumentException("no sentence is called " + key);
    }
    // In one pass, so that a part that itself holds "{0}" is left alone.
    return PLACE
        .matcher(sentences.getString(key))
        .replaceAll(
            place -> {
              int part = Integer.parseInt(place.group(1));
              return Matcher.quoteReplacement(
                  part < parts.length ? spoken(parts[part]) : place.group());
            });
  }

  /**
   * The sentence that a group of the bundle has for a constant.
   *
   * @param group what its name begins with, without the last point
   * @param parts what stands in its places
   */
  public static String of(String group, Enum<?> constant, Object... parts) {
    return say(group + "." + key(constant), parts);
  }

  /** A constant as it stands in the names of sentences: small letters and hyphens. */
  public static String key(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * Has sentences come from another bundle from now on, for tests.
   *
   * @return the one before
   */
  static ResourceBundle replaceBundle(ResourceBundle another) {
    ResourceBundle before = sentences;
    sentences = another;
    return before;
  }

  /** Whether there is a sentence of this name. */
  public static boolean has(String key) {
    return sentences.containsKey(key);
  }

  private static String spoken(Object part) {
    return part instanceof MarkedSpeed speed ? Numbers.speed(speed) : String.valueOf(part);
  }

  /** The sentence of one of two keys: {@code key.one} for a count of one, else {@code key.many}. */
  public static String count(String key, int count, Object... parts) {
    return say(key + (count == 1 ? ".one" : ".many"), parts);
  }
}
