package org.halflight.firstlight;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.halflight.signal.BoardTraits;
import org.halflight.words.Words;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The pages on building a rig go through the steps that the program goes through. */
class FirstLightPagesTest {
  @ParameterizedTest
  @CsvSource({"STARTER, building-the-rig.md", "FULL, full-rig.md"})
  void thePageHasTheStepsOfItsRigInTheirOrder(BoardTraits.Kind kind, String page) throws Exception {
    BoardTraits rig = new BoardTraits(BoardTraits.USUAL.rate(), kind, true);
    List<String> lines = Files.readAllLines(Path.of("docs", page));
    int from = lines.indexOf("<!-- first light of " + BoardTraits.Kind.WORDS.word(kind) + " -->");
    int to = lines.indexOf("<!-- end of first light -->");
    assertThat(lines.subList(from + 3, to).stream().map(row -> row.split("\\|", -1)[1].strip()))
        .containsExactlyElementsOf(
            FirstStep.of(rig).stream().map(step -> Words.of("firstlight.step", step)).toList());
  }
}
