package org.halflight.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;

class LettersTest {
  private static final float SIZE = 17;
  private static final float WIDTH = 480;

  @Test
  void theCostOfATextGrowsWithItsLengthAndNoFaster() throws Exception {
    long seed = Long.getLong("halflight.seed", 14);
    Random random = new Random(seed);
    try (PDDocument document = new PDDocument()) {
      Letters letters = new Letters(document);
      for (int length : List.of(200, 2_000, 20_000)) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < length; i++) {
          text.append((char) ('!' + random.nextInt(90)));
        }
        for (String each : List.of("W".repeat(length), "i".repeat(length), text.toString())) {
          long before = letters.lookedUp();
          List<String> lines = letters.lines(letters.bold(), SIZE, each, WIDTH);
          // Shown, measured, cut: three looks at each letter, and the space.
          assertThat(letters.lookedUp() - before)
              .as("seed " + seed)
              .isLessThanOrEqualTo(3L * length + 1);
          assertThat(String.join("", lines)).isEqualTo(each);
          assertThat(lines)
              .allSatisfy(
                  line ->
                      assertThat(letters.width(letters.bold(), SIZE, line))
                          .isLessThanOrEqualTo(WIDTH + 0.01f));
        }
      }
    }
  }

  @Test
  void linesAreFilledAsFarAsTheyGo() throws Exception {
    long seed = Long.getLong("halflight.seed", 41);
    Random random = new Random(seed);
    try (PDDocument document = new PDDocument()) {
      Letters letters = new Letters(document);
      for (int round = 0; round < 50; round++) {
        StringBuilder text = new StringBuilder();
        for (int word = 0; word < 40; word++) {
          text.append("x\u00e9\uD83D\uDE00W".repeat(random.nextInt(1 + random.nextInt(30))))
              .append(' ');
        }
        List<String> lines = letters.lines(letters.regular(), 9, text.toString(), 120);
        String shown = letters.shown(letters.regular(), text.toString());
        assertThat(String.join("", lines).replace(" ", ""))
            .as("seed " + seed)
            .isEqualTo(shown.replace(" ", ""));
        for (int i = 0; i + 1 < lines.size(); i++) {
          String next = lines.get(i + 1);
          String first = next.contains(" ") ? next.substring(0, next.indexOf(' ')) : next;
          float both = letters.width(letters.regular(), 9, lines.get(i) + " " + first);
          float cut =
              letters.width(
                  letters.regular(),
                  9,
                  lines.get(i) + next.substring(0, next.offsetByCodePoints(0, 1)));
          // Neither the next word nor, where a word was cut, its next letter would have fitted.
          assertThat(Math.max(both, cut)).as("seed " + seed).isGreaterThan(120);
        }
      }
    }
  }
}
