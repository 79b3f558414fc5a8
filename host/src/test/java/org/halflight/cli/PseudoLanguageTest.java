package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.halflight.link.serial.SerialPorts;
import org.halflight.words.PseudoLanguage;
import org.halflight.words.Unmarked;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/**
 * In a language that marks every letter of the bundle, commands and the page for the owner show no
 * unmarked letter, but for what is listed here with its reason.
 */
class PseudoLanguageTest {
  /** What need not come from the bundle, and why. */
  private static final Map<String, String> EXCEPTIONS =
      Map.of(
          "/\\S+", "a path that the test typed",
          "(?<=[\\d)] )(?:s|ms|mV|ppm|Hz)\\b", "a symbol of a unit after its number",
          "(?<=1 )s\\b|\\bs(?= over)", "the mark of a dial in seconds",
          "\\b(?:as-found|as-left|leaf)\\b", "a word that a run stores");

  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private PseudoLanguage language;

  @BeforeEach
  void speak() {
    language = PseudoLanguage.spoken();
  }

  @AfterEach
  void speakPlainly() {
    language.close();
  }

  @Test
  void helpOfEveryCommand() {
    for (List<String> command : commands()) {
      List<String> words = new ArrayList<>(command);
      words.add("--help");
      assertThat(execute(words.toArray(String[]::new))).as(words.toString()).isZero();
      assertThat(unmarked(withoutNames(printed()))).as(printed()).isEmpty();
    }
  }

  @Test
  void whatIsWrongWithACommandLine() {
    for (String line :
        List.of(
            "run", "run a.session --firings many", "export a --speeds", "profile", "replay a")) {
      assertThat(execute(line.split(" "))).as(line).isNotZero();
      String said = printed().replaceAll("halflight( [a-z]+)*|--\\w+|'[^']*'|\\b[A-Z]+\\b", "");
      assertThat(unmarked(said.replaceAll("\\b(show|export|import)\\b|: a\\b|\\ba\\b", "")))
          .as(printed())
          .isEmpty();
    }
  }

  @Test
  void practiceRunReplayAndPage() throws IOException {
    Path practice = folder.resolve("practice");
    assertThat(execute("practice", "--out", practice.toString())).as(printed()).isZero();
    assertThat(unmarked(printed())).as(printed()).isEmpty();
    assertThat(
            execute(
                "replay", practice.resolve("practice.session").toString(), "--each", "--details"))
        .as(printed())
        .isZero();
    assertThat(unmarked(printed())).as(printed()).isEmpty();
    try (PDDocument page = Loader.loadPDF(practice.resolve("hand-over.pdf").toFile())) {
      String text = new PDFTextStripper().getText(page);
      assertThat(unmarked(text)).as(text).isEmpty();
    }
  }

  private static Set<String> unmarked(String text) {
    return Unmarked.in(text, EXCEPTIONS);
  }

  /** Help without the names of commands and options and of their values. */
  private static String withoutNames(String help) {
    StringBuilder rest = new StringBuilder();
    boolean synopsis = true;
    for (String line : help.lines().toList()) {
      synopsis = rest.length() == 0 || (synopsis && line.startsWith(" "));
      rest.append(
              synopsis
                  ? line.replaceAll("halflight.*|^ .*", "")
                  : line.replaceAll(
                      "^ +(-\\w, )?--\\S+|^ +\\[?[A-Z|]+(\\.\\.\\.|\\])?|^  [a-z, -]+?  +", ""))
          .append('\n');
    }
    return rest.toString();
  }

  private List<List<String>> commands() {
    List<List<String>> all = new ArrayList<>();
    add(List.of(), Halflight.model(surroundings()), all);
    assertThat(all).contains(List.of("disc", "read"), List.of("record", "import"));
    return all;
  }

  private static void add(List<String> words, CommandLine command, List<List<String>> all) {
    all.add(words);
    command
        .getSubcommands()
        .forEach(
            (name, inner) -> {
              List<String> longer = new ArrayList<>(words);
              longer.add(name);
              add(longer, inner, all);
            });
  }

  private String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private int execute(String... words) {
    out.reset();
    return Halflight.execute(surroundings(), words);
  }

  private Surroundings surroundings() {
    PrintStream print = new PrintStream(out, true, StandardCharsets.UTF_8);
    return new Surroundings(
        new Terminal(print, new ByteArrayInputStream(new byte[0])),
        (List<String> given) -> new SerialPorts(given),
        System::nanoTime,
        () -> Instant.EPOCH,
        folder,
        "0");
  }
}
