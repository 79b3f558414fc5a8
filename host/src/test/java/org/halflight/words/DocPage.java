package org.halflight.words;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A page of the documentation. Its prose is what a person reads: without code, comments and the
 * targets of links. A heading, an item of a list and a cell of a table end a sentence each.
 */
final class DocPage {
  private static final Pattern COMMENT = Pattern.compile("<!--.*?-->", Pattern.DOTALL);
  private static final Pattern FENCE = Pattern.compile("(?ms)^ *```.*?^ *```$");
  private static final Pattern INDENTED = Pattern.compile("(?m)^ {4,}(?![*0-9]).*$");
  private static final Pattern LINK = Pattern.compile("!?\\[([^\\]]*)\\]\\([^)]*\\)");
  private static final Pattern CODE = Pattern.compile("``.+?``|`[^`]+`");
  private static final Pattern ROW_OF_CODE = Pattern.compile("CODE(?:,? (?:and |or )?CODE)+");
  private static final Pattern TAG = Pattern.compile("</?[a-z][^>]*>");
  private static final Pattern BLOCK =
      Pattern.compile("^ *(?:[*+-] |[0-9]+\\. |#+ |> ?|\\||!\\[)|^ *$");
  private static final Pattern END =
      Pattern.compile(
          "(?<=[.!?][)\"'*]{0,3})(?<!e\\.g\\.|i\\.e\\.)\\s+(?=[\"'(*\\[]*[\\p{Lu}\\d`])");

  private final Path path;
  private final String text;

  private DocPage(Path path) throws IOException {
    this.path = path;
    this.text = Files.readString(path);
  }

  /** One page. */
  static DocPage of(Path path) throws IOException {
    return new DocPage(path);
  }

  /** README.md, DEVELOPERS.md and the pages under docs. */
  static List<DocPage> all() throws IOException {
    List<Path> paths = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md")));
    try (Stream<Path> docs = Files.list(Path.of("docs"))) {
      docs.filter(each -> each.toString().endsWith(".md")).sorted().forEach(paths::add);
    }
    List<DocPage> pages = new ArrayList<>();
    for (Path each : paths) {
      pages.add(new DocPage(each));
    }
    return pages;
  }

  Path path() {
    return path;
  }

  /** The page without code blocks and comments, links and code words as they are. */
  String markdown() {
    return FENCE.matcher(COMMENT.matcher(text).replaceAll("")).replaceAll("");
  }

  /** The sentences. A word in code counts as one word, {@code CODE}. */
  List<String> sentences() {
    return sentences(markdown());
  }

  /** The sentences of a text in Markdown without code blocks and comments. */
  static List<String> sentences(String markdown) {
    String prose = INDENTED.matcher(markdown).replaceAll("");
    List<String> sentences = new ArrayList<>();
    StringBuilder block = new StringBuilder();
    for (String line : (prose + "\n\n").split("\n", -1)) {
      if (BLOCK.matcher(line).find()) {
        split(block.toString(), sentences);
        block.setLength(0);
      }
      block.append(line.replaceFirst("^ *(?:[*+-] |[0-9]+\\. |#+ |> ?)", "")).append(' ');
      if (line.startsWith("#")) {
        split(block.toString(), sentences);
        block.setLength(0);
      }
    }
    return sentences;
  }

  private static void split(String block, List<String> into) {
    String plain = CODE.matcher(block).replaceAll("CODE");
    plain = LINK.matcher(plain).replaceAll("$1");
    plain = TAG.matcher(plain).replaceAll(" ").replace("**", "").replace("*", "");
    String[] cells = block.startsWith("|") ? plain.split("(?<!\\\\)\\|", -1) : new String[] {plain};
    for (String cell : cells) {
      for (String sentence : END.split(cell.strip(), -1)) {
        if (sentence.chars().anyMatch(Character::isLetter)) {
          into.add(sentence.strip().replaceAll("\\s+", " "));
        }
      }
    }
  }

  /**
   * How many words a sentence has: pieces between blanks that hold a letter or a digit. Words of
   * code in a row, which nobody reads aloud, count as one.
   */
  static long words(String sentence) {
    return Stream.of(ROW_OF_CODE.matcher(sentence).replaceAll("CODE").split("\\s+"))
        .filter(word -> word.chars().anyMatch(Character::isLetterOrDigit))
        .count();
  }
}
