package org.halflight.report;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.font.TextAttribute;
import java.awt.font.TextLayout;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.text.AttributedString;
import java.text.Bidi;
import java.util.List;

/**
 * Text whose letters join, run from right to left, or are in no font of the program: drawn as
 * outlines, with the fonts of this computer where the program's own have no letter.
 */
final class OtherScripts {
  private static final FontRenderContext PAPER = new FontRenderContext(null, true, true);

  /** Parts of a line that have nothing to do with each other: a date is not set among Arabic. */
  private static final String DOT = " \u00b7 ";

  private final List<Font> own;
  private final Font others;

  /**
   * @param name of the program's font among the resources
   */
  OtherScripts(String name, boolean bold) {
    own = List.of(load(name), load(Letters.EAST));
    others = new Font(Font.DIALOG, bold ? Font.BOLD : Font.PLAIN, 1);
  }

  private static Font load(String name) {
    try (InputStream font = OtherScripts.class.getResourceAsStream("fonts/" + name)) {
      if (font == null) {
        throw new IllegalStateException("the program is incomplete: no font " + name);
      }
      return Font.createFonts(font)[0];
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (FontFormatException broken) {
      throw new IllegalStateException("the program is incomplete: " + name, broken);
    }
  }

  /** Whether a font of this computer has a letter. */
  boolean has(int code) {
    return others.canDisplay(code);
  }

  /** Width in thousandths of the size, of a letter that {@link #has} one. */
  float thousandths(int code) {
    return (float)
        others.deriveFont(1000f).getStringBounds(Character.toString(code), PAPER).getWidth();
  }

  /** Whether a text cannot be set letter by letter from left to right. */
  static boolean isArranged(String text) {
    return Bidi.requiresBidi(text.toCharArray(), 0, text.length());
  }

  /** The outlines of a line, its baseline at 0, y downwards. */
  Shape outlines(String line, float size) {
    return layout(line, size).getOutline(null);
  }

  /** Width of a line in points. */
  float width(String line, float size) {
    return layout(line, size).getAdvance();
  }

  private TextLayout layout(String joined, float size) {
    String line = joined.replace(DOT, "\u200e" + DOT);
    AttributedString text = new AttributedString(line);
    text.addAttribute(TextAttribute.FONT, own.get(0).deriveFont(size));
    for (int at = 0; at < line.length(); at = line.offsetByCodePoints(at, 1)) {
      int code = line.codePointAt(at);
      if (!own.get(0).canDisplay(code)) {
        Font font = own.get(1).canDisplay(code) ? own.get(1) : others;
        text.addAttribute(
            TextAttribute.FONT, font.deriveFont(size), at, at + Character.charCount(code));
      }
    }
    return new TextLayout(text.getIterator(), PAPER);
  }
}
