package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** Who a page is from, and for whom. All names are invented. */
class WorkshopCommandTest extends CommandTests {
  @Test
  void theNextPageIsFromTheWorkshopOnItsPaper() throws IOException {
    assertThat(execute("workshop", "--name", "The Workshop", "--repairer", "R. Epair")).isZero();
    assertThat(execute("workshop", "--paper", "letter")).isZero();
    assertThat(printed()).contains("Workshop: The Workshop", "Paper: letter", "Logo: not set");
    assertThat(page("--complaint", "it hangs", "--owner", "A. N. Owner"))
        .startsWith("612 The Workshop Repaired by R. Epair")
        .contains("for A. N. Owner", "\u2018it hangs\u2019");
    assertThat(
            page(
                "--by-hand",
                "infinity-focus=OK, a collimator",
                "--by-hand",
                "flange-top-left=43,97",
                "--by-hand",
                "flange-bottom-right=43.950",
                "--by-hand",
                "rangefinder-1m=2 cm short"))
        .contains("Focus checked at infinity with a collimator: OK.")
        .contains("Flange to film: 43.950 to 43.97 mm at 2 points, spread 0.020 mm.")
        .contains("Rangefinder checked: 1 m 2 cm short.");
    assertThat(page("--complaint", "it hangs", "--owner", "A. N. Owner", "--sale"))
        .contains("The Workshop")
        .doesNotContain("it hangs", "Owner");
    assertThat(execute("workshop", "--name", "", "--repairer", "", "--paper", "a4")).isZero();
    assertThat(page()).startsWith("595 Shutter of");
  }

  @Test
  void badInputIsOneSentenceAndChangesNothing() throws IOException {
    Path huge = folder.resolve("huge.png");
    try (var out =
        Files.newByteChannel(huge, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      out.position(50_000_000 - 1).write(java.nio.ByteBuffer.allocate(1));
    }
    assertThat(execute("workshop", "--logo", huge.toString())).isEqualTo(1);
    assertThat(printed()).contains("has 50 MB", "Choose a PNG or JPEG of 5 MB or less.");
    assertThat(execute("workshop", "--paper", "a3")).isEqualTo(1);
    assertThat(execute("workshop", "--inbox", huge.toString())).isEqualTo(1);
    assertThat(printed()).contains("There is no folder " + huge + ". Choose the folder in which");
    assertThat(execute("workshop", "--inbox", folder.toString())).isZero();
    assertThat(printed()).contains("Photo inbox: " + folder);
    assertThat(execute("workshop", "--inbox", "")).isZero();
    assertThat(printed()).contains("Photo inbox: not set");
    assertThat(execute("workshop")).isZero();
    assertThat(printed()).contains("Logo: not set");
    String session = TinySession.write(folder.resolve("my.session")).toString();
    assertThat(execute("page", session, "--by-hand", "shims=0.10")).isEqualTo(1);
    assertThat(printed()).contains("--by-hand does not take shims", "infinity-focus");
    assertThat(execute("page", session, "--by-hand", "flange-top-left=far")).isEqualTo(1);
    assertThat(printed()).contains("such as 43.97");
    assertThat(execute("page", session, "--film", "perhaps")).isEqualTo(1);
    assertThat(printed())
        .contains("perhaps does not say whether film is inside. Answer yes or no.");
  }

  /** Width of the only page, and its text. */
  private String page(String... more) throws IOException {
    Path page = folder.resolve("page.pdf");
    Path session = folder.resolve("my.session");
    if (!Files.exists(session)) {
      TinySession.write(session);
    }
    List<String> words =
        new ArrayList<>(List.of("page", session.toString(), "--force", "--out", page.toString()));
    words.addAll(List.of(more));
    assertThat(execute(words.toArray(String[]::new))).as(printed()).isZero();
    try (PDDocument document = Loader.loadPDF(page.toFile())) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
      return (int) document.getPage(0).getMediaBox().getWidth()
          + " "
          + new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }
}
