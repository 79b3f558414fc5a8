package org.halflight.report;

import java.awt.Shape;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeCollection;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.jspecify.annotations.Nullable;

/**
 * The letters of a page: DejaVu Sans, and for Chinese, Japanese and Korean WenQuanYi Micro Hei.
 * Both come with the program so that a page looks the same on every machine. Embedded as subsets;
 * their licences are beside them among the resources.
 */
final class Letters {
  /** Stands for a character that the font does not have. */
  private static final String UNKNOWN = "\u25A1";

  /**
   * Letters of one font in a row.
   *
   * @param text what the font has
   */
  record Run(PDFont font, String text) {}

  /**
   * A character as the page shows it.
   *
   * @param font that has it
   * @param kept the same, or as it was where a font of this computer has it
   * @param thousandths its width in thousandths of the size of the letters
   */
  private record Letter(PDFont font, String shown, String kept, float thousandths) {
    boolean isForeign() {
      return !kept.equals(shown);
    }
  }

  private static final String REGULAR = "DejaVuSans.ttf";
  private static final String BOLD = "DejaVuSans-Bold.ttf";

  /** Its letters have one weight. */
  static final String EAST = "wqy-microhei.ttc";

  private static final String EAST_FACE = "WenQuanYiMicroHei";

  private final PDDocument document;
  private final PDFont regular;
  private final PDFont bold;
  private @Nullable PDFont east;
  private final IdentityHashMap<PDFont, Map<Integer, Letter>> known = new IdentityHashMap<>();
  private final IdentityHashMap<PDFont, OtherScripts> others = new IdentityHashMap<>();
  private final Set<String> missing = new TreeSet<>();
  private long lookedUp;

  Letters(PDDocument document) throws IOException {
    this.document = document;
    regular = load(document, REGULAR);
    bold = load(document, BOLD);
  }

  private static PDFont load(PDDocument document, String name) throws IOException {
    try (InputStream font = Letters.class.getResourceAsStream("fonts/" + name)) {
      if (font == null) {
        throw new IllegalStateException("the program is incomplete: no font " + name);
      }
      TrueTypeFont letters =
          name.equals(EAST)
              ? Objects.requireNonNull(new TrueTypeCollection(font).getFontByName(EAST_FACE))
              : new TTFParser().parse(new RandomAccessReadBuffer(font));
      // Ligatures would stand in copied text as single odd characters.
      letters.setEnableGsub(false);
      return PDType0Font.load(document, letters, true);
    }
  }

  /** The letters of East Asia; 5 MB that most pages do without. */
  private PDFont east() throws IOException {
    if (east == null) {
      east = load(document, EAST);
    }
    return east;
  }

  PDFont regular() {
    return regular;
  }

  PDFont bold() {
    return bold;
  }

  /** The same text without line ends and with a box for what the font cannot show. */
  String shown(PDFont font, String text) {
    return each(text, c -> letter(font, c).shown());
  }

  /** What {@link #shown} gives, by the fonts that have its letters. */
  List<Run> runs(PDFont font, String text) {
    List<Run> runs = new ArrayList<>();
    StringBuilder run = new StringBuilder();
    PDFont of = font;
    String shown = each(text, c -> Character.toString(c));
    for (int at = 0; at < shown.length(); at = shown.offsetByCodePoints(at, 1)) {
      Letter next = letter(font, shown.codePointAt(at));
      if (!next.font().equals(of) && !run.isEmpty()) {
        runs.add(new Run(of, run.toString()));
        run.setLength(0);
      }
      of = next.font();
      run.append(next.shown());
    }
    runs.add(new Run(of, run.toString()));
    return runs;
  }

  /** The same text without line ends, with a box only for what no font can show. */
  private String kept(PDFont font, String text) {
    return each(text, c -> letter(font, c).kept());
  }

  private static String each(String text, IntFunction<String> shown) {
    return text.codePoints()
        .map(c -> Character.isWhitespace(c) || Character.isISOControl(c) ? ' ' : c)
        .mapToObj(shown)
        .collect(Collectors.joining());
  }

  /** A line that cannot be set letter by letter, as outlines; empty for all others. */
  Optional<Shape> outlines(PDFont font, float size, String line) {
    String kept = kept(font, line);
    return isOutlined(font, kept)
        ? Optional.of(others(font).outlines(kept, size))
        : Optional.empty();
  }

  private boolean isOutlined(PDFont font, String kept) {
    return OtherScripts.isArranged(kept)
        || kept.codePoints().anyMatch(c -> letter(font, c).isForeign());
  }

  private OtherScripts others(PDFont font) {
    return others.computeIfAbsent(
        font, f -> new OtherScripts(f.equals(bold) ? BOLD : REGULAR, f.equals(bold)));
  }

  /** Width in points. */
  float width(PDFont font, float size, String text) {
    String kept = kept(font, text);
    return !kept.isEmpty() && isOutlined(font, kept)
        ? others(font).width(kept, size)
        : points(size, thousandths(font, kept));
  }

  /**
   * The text in lines no wider than a width; words that are wider themselves are cut. No letter is
   * measured more than twice, however long the text is.
   */
  List<String> lines(PDFont font, float size, String text, float width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    float space = thousandths(font, " ");
    float wide = 0;
    for (String word : kept(font, text).strip().split(" +", -1)) {
      float more = thousandths(font, word);
      float longer = line.isEmpty() ? more : wide + space + more;
      if (points(size, longer) <= width) {
        line.append(line.isEmpty() ? "" : " ").append(word);
        wide = longer;
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line.toString());
        line.setLength(0);
      }
      if (points(size, more) <= width) {
        line.append(word);
        wide = more;
      } else {
        wide = cut(font, size, word, width, lines, line);
      }
    }
    if (!line.isEmpty() || lines.isEmpty()) {
      lines.add(line.toString());
    }
    return lines;
  }

  /** Cuts a word into full lines; what is left over begins the next one, and its width is told. */
  private float cut(
      PDFont font, float size, String word, float width, List<String> lines, StringBuilder line) {
    float wide = 0;
    for (int at = 0; at < word.length(); at = word.offsetByCodePoints(at, 1)) {
      int code = word.codePointAt(at);
      float more = letter(font, code).thousandths();
      if (!line.isEmpty() && points(size, wide + more) > width) {
        lines.add(line.toString());
        line.setLength(0);
        wide = 0;
      }
      line.appendCodePoint(code);
      wide += more;
    }
    return wide;
  }

  private float thousandths(PDFont font, String shown) {
    float sum = 0;
    for (int at = 0; at < shown.length(); at = shown.offsetByCodePoints(at, 1)) {
      sum += letter(font, shown.codePointAt(at)).thousandths();
    }
    return sum;
  }

  private static float points(float size, float thousandths) {
    return thousandths / 1000 * size;
  }

  /** The characters for which boxes stand, with spaces between; empty for none. */
  Optional<String> missing() {
    return missing.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", missing));
  }

  /** How many letters were looked up so far: what a text costs, whatever the clock says. */
  long lookedUp() {
    return lookedUp;
  }

  private Letter letter(PDFont font, int code) {
    lookedUp++;
    return known
        .computeIfAbsent(font, f -> new HashMap<>())
        .computeIfAbsent(code, c -> measured(font, Character.toString(c)));
  }

  private Letter measured(PDFont font, String character) {
    try {
      Optional<Float> width = width(font, character);
      if (width.isPresent()) {
        return new Letter(font, character, character, width.get());
      }
      Optional<Float> eastern = width(east(), character);
      if (eastern.isPresent()) {
        return new Letter(east(), character, character, eastern.get());
      }
      int code = character.codePointAt(0);
      if (others(font).has(code)) {
        return new Letter(font, UNKNOWN, character, others(font).thousandths(code));
      }
      missing.add(character);
      return new Letter(font, UNKNOWN, UNKNOWN, font.getStringWidth(UNKNOWN));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Width in thousandths; empty where a font has no such character. */
  private static Optional<Float> width(PDFont font, String character) throws IOException {
    try {
      return Optional.of(font.getStringWidth(character));
    } catch (IllegalArgumentException unknown) {
      return Optional.empty();
    }
  }
}
