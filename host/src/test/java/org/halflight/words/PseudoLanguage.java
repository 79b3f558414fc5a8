package org.halflight.words;

import java.util.Collections;
import java.util.Enumeration;
import java.util.ResourceBundle;

/**
 * The bundle of sentences with every letter marked by an accent, so that a letter without one did
 * not come from the bundle. Places such as {@code {0}} stay.
 */
public final class PseudoLanguage extends ResourceBundle implements AutoCloseable {
  private static final String PLAIN = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
  private static final String MARKED =
      "\u00e1\u0180\u0107\u010f\u00e9\u1e1f\u01f5\u0125\u00ed\u0135\u0137\u013a\u1e3f\u0144"
          + "\u00f3\u1e55\u02a0\u0155\u015b\u0165\u00fa\u1e7d\u0175\u1e8b\u00fd\u017a"
          + "\u00c1\u0181\u0106\u010e\u00c9\u1e1e\u01f4\u0124\u00cd\u0134\u0136\u0139\u1e3e\u0143"
          + "\u00d3\u1e54\u024a\u0154\u015a\u0164\u00da\u1e7c\u0174\u1e8a\u00dd\u0179";

  private final ResourceBundle real;

  private PseudoLanguage(ResourceBundle real) {
    this.real = real;
  }

  /** Has every sentence marked until it is closed. */
  public static PseudoLanguage spoken() {
    PseudoLanguage marked =
        new PseudoLanguage(ResourceBundle.getBundle("org.halflight.words.sentences"));
    Words.replaceBundle(marked);
    return marked;
  }

  @Override
  public void close() {
    Words.replaceBundle(real);
  }

  /** A text with each of its letters marked. */
  static String marked(String text) {
    StringBuilder marked = new StringBuilder();
    text.chars()
        .mapToObj(letter -> (char) letter)
        .forEach(
            letter -> {
              int at = PLAIN.indexOf(letter);
              marked.append(at < 0 ? letter.charValue() : MARKED.charAt(at));
            });
    return marked.toString();
  }

  @Override
  protected Object handleGetObject(String key) {
    return real.containsKey(key) ? marked(real.getString(key)) : null;
  }

  @Override
  public Enumeration<String> getKeys() {
    return Collections.enumeration(real.keySet());
  }
}
