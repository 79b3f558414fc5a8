package org.halflight.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The letters of a page: DejaVu Sans, which comes with the program so that a page looks the same on
 * every machine. Embedded as a subset; its licence stands beside it among the resources.
 */
final class Letters {
  /** Stands for a character that the font does not have. */
  private static final String UNKNOWN = "\u25A1";

  private final PDFont regular;
  private final PDFont bold;

  Letters(PDDocument document) throws IOException {
    regular = load(document, "DejaVuSans.ttf");
    bold = load(document, "DejaVuSans-Bold.ttf");
  }

  private static PDFont load(PDDocument document, String name) throws IOException {
    try (InputStream font = Letters.class.getResourceAsStream("fonts/" + name)) {
      if (font == null) {
        throw new IllegalStateException("the program is incomplete: no font " + name);
      }
      TrueTypeFont letters = new TTFParser().parse(new RandomAccessReadBuffer(font));
      // Ligatures would stand in copied text as single odd characters.
      letters.setEnableGsub(false);
      return PDType0Font.load(document, letters, true);
    }
  }

  PDFont regular() {
    return regular;
  }

  PDFont bold() {
    return bold;
  }

  /** The same text without line ends and with a box for what the font cannot show. */
  String shown(PDFont font, String text) {
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .map(c -> Character.isWhitespace(c) || Character.isISOControl(c) ? ' ' : c)
        .mapToObj(Character::toString)
        .forEach(c -> shown.append(knows(font, c) ? c : UNKNOWN));
    return shown.toString();
  }

  private static boolean knows(PDFont font, String character) {
    try {
      font.encode(character);
      return true;
    } catch (IllegalArgumentException unknown) {
      return false;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Width in points. */
  float width(PDFont font, float size, String text) {
    try {
      return font.getStringWidth(shown(font, text)) / 1000 * size;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The text in lines no wider than a width; words that are wider themselves are cut. */
  List<String> lines(PDFont font, float size, String text, float width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : shown(font, text).strip().split(" +", -1)) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (width(font, size, longer) <= width) {
        line.setLength(0);
        line.append(longer);
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line.toString());
        line.setLength(0);
      }
      String rest = word;
      while (width(font, size, rest) > width && rest.codePointCount(0, rest.length()) > 1) {
        int fits = rest.length();
        while (fits > 1 && width(font, size, rest.substring(0, fits)) > width) {
          fits = rest.offsetByCodePoints(fits, -1);
        }
        fits = Math.max(fits, rest.offsetByCodePoints(0, 1));
        lines.add(rest.substring(0, fits));
        rest = rest.substring(fits);
      }
      line.append(rest);
    }
    if (!line.isEmpty() || lines.isEmpty()) {
      lines.add(line.toString());
    }
    return lines;
  }
}
