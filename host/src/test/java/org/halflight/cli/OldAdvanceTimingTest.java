package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/**
 * A session in which an earlier version timed the film advance: everything that shows it shows the
 * interval in ms, and that it is no longer judged.
 */
class OldAdvanceTimingTest extends CommandTests {
  private static final String SESSION = "fixtures/old/sessions/practice-checks.session";
  private static final String NOT_JUDGED = "it is no longer judged";

  @Test
  void aReplaySaysSoWithTheInterval() {
    assertThat(execute("replay", SESSION)).isZero();

    assertThat(printed())
        .containsPattern("The advance unlocked \\d+\\.\\d ms (before|after) the blades opened")
        .contains(NOT_JUDGED)
        .doesNotContain("too early", "limits +");
  }

  @Test
  void pageAndPicturesStillHaveIt() throws IOException {
    Path page = folder.resolve("page.pdf");
    assertThat(execute("page", SESSION, "--bench", "--out", page.toString())).isZero();
    try (PDDocument document = Loader.loadPDF(page.toFile())) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text).contains("The advance unlocked", NOT_JUDGED);
    }
    Path pictures = folder.resolve("pictures");
    assertThat(execute("picture", SESSION, "--extra-tests", pictures.toString())).isZero();
    assertThat(pictures).isDirectoryContaining("glob:**/*linkage-adjusting.png");
  }

  @Test
  void theTestsThatTimedItAreNotOfferedAnyMore() {
    for (String check : new String[] {"wind", "alone"}) {
      int exit =
          execute(
              "run",
              folder.resolve("new.session").toString(),
              "--checks",
              check,
              "--speeds",
              "1/60");
      assertThat(exit).isNotZero();
      assertThat(printed()).contains(check, "linkage");
    }
  }
}
