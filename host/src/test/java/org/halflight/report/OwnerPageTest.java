package org.halflight.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.halflight.job.Detail;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All names and figures on these pages are invented. */
class OwnerPageTest {
  private static final Map<Detail, String> NOTED =
      Map.of(
          Detail.MAKER, "Invented Works",
          Detail.MODEL, "Three",
          Detail.LENS, "Anastigmat 105 mm",
          Detail.SECOND_SERIAL, "998877",
          Detail.COMPLAINT, "Slow speeds hang in the cold.",
          Detail.ANSWER, "Old oil held the train.",
          Detail.OWNER, "A. N. Owner",
          Detail.FILM, Detail.YES,
          Detail.LUBRICANT, "thin oil, at the train");

  @TempDir private Path folder;

  private static PageInput noted(Map<Detail, String> noted) {
    return SamplePages.noted(SamplePages.all().get("fourteen"), "A. N. Owner's folder", noted);
  }

  /** The text of the whole page, which has to be one. */
  private static String text(PageInput input, PageStyle style) throws IOException {
    try (PDDocument document = Loader.loadPDF(HandOverPage.made(input, style).bytes())) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  private static PageStyle from(Workshop workshop, boolean sale) {
    return new PageStyle(Paper.A4, false, sale, workshop);
  }

  @Test
  void saysWhatTheOwnerWantsToKnowAndNoStatistics() throws IOException {
    Workshop workshop = new Workshop("The Workshop", "R. Epair", "", Optional.empty());
    assertThat(text(noted(NOTED), from(workshop, false)))
        .startsWith("The Workshop Repaired by R. Epair Shutter of A. N. Owner's folder")
        .contains("Invented Works Three")
        .contains("lens or shutter number 998877")
        .contains("What you said \u2018Slow speeds hang in the cold.\u2019")
        .contains("Our answer Old oil held the train. Result As left, all 14 speeds")
        .contains("As found, too slow: 8 s to 1/15 (by 0.52 to 1.17 stop).")
        .contains("Lubricant: thin oil, at the train")
        .contains("Film was inside when the camera came in.")
        .contains("Practice rig: invented shutter, simulated figures", "PRACTICE, invented figures")
        .doesNotContain("JCGM", "95 % confidence", "none found");
  }

  @Test
  void curtainsAreSaidInPlainWords() throws IOException {
    assertThat(text(SamplePages.curtains(), from(Workshop.NONE, false)))
        .contains("1/500: right, end darker by 0.3")
        .contains("1/1000: 1.0 slow, dark at the end")
        .contains("even")
        .contains("Flash: the whole picture is lit up to 1/60.")
        .contains("Flash up to 1/60")
        .contains("Curtains adjusted")
        .doesNotContain(" mm.", "m/s", "eccentric", "Stopped down (a model)");
    try (PDDocument bench =
        Loader.loadPDF(
            HandOverPage.made(
                    SamplePages.curtains(), new PageStyle(Paper.A4, true, false, Workshop.NONE))
                .bytes())) {
      assertThat(new PDFTextStripper().getText(bench)).contains("Slit eccentric: clockwise");
    }
  }

  @Test
  void aBuyerReadsNeitherNameNorComplaint() throws IOException {
    assertThat(text(noted(NOTED), from(Workshop.NONE, true)))
        .contains("Shutter of Invented Works Three", "thin oil, at the train")
        .doesNotContain("A. N. Owner", "hang in the cold", "Old oil held", "What you said");
    // The surname alone is a name too, and the file says no more of itself than the page.
    PageInput surname =
        noted(Map.of(Detail.OWNER, "Ann Owner", Detail.LUBRICANT, "as Owner asked"));
    assertThat(text(surname, from(Workshop.NONE, true)))
        .contains("Lubricant: as \u2026 asked")
        .doesNotContainIgnoringCase("owner");
    try (PDDocument page =
        Loader.loadPDF(HandOverPage.made(surname, from(Workshop.NONE, true)).bytes())) {
      assertThat(page.getDocumentInformation().getCOSObject().toString())
          .doesNotContainIgnoringCase("owner");
      assertThat(page.getDocumentInformation().getTitle()).startsWith("Shutter of");
    }
    // Without maker and model the label is all there is.
    assertThat(text(noted(Map.of(Detail.OWNER, "a. n. owner")), from(Workshop.NONE, true)))
        .contains("folder")
        .doesNotContain("Owner's");
  }

  @Test
  void everythingFitsOnOnePage() throws IOException {
    for (PageInput input : SamplePages.all().values()) {
      text(input, PageStyle.owner(Paper.LETTER));
    }
    PageInput longest =
        noted(
            Map.of(
                Detail.COMPLAINT, "It hangs. ".repeat(500),
                Detail.ANSWER, "x".repeat(4000),
                Detail.LENS, "a long lens ".repeat(60)));
    assertThat(text(longest, PageStyle.owner(Paper.LETTER)))
        .contains("The rest did not fit on this page.", "As left, all 14", "1/1000");
  }

  @Test
  void theExactTargetStandsBesideEveryFractionOfTheCard() throws IOException {
    assertThat(text(noted(Map.of()), PageStyle.owner(Paper.A4)))
        .containsPattern("1/250 1/\\d+ \\(1/256\\)")
        .containsPattern("1/60 1/\\d+ \\(1/64\\)");
  }

  @Test
  void theLogoIsDrawn() throws IOException {
    Path logo = picture("png", 300, 100);
    HandOverPage.Made page = HandOverPage.made(noted(NOTED), from(workshop(logo), false));
    assertThat(page.said()).isEmpty();
    try (PDDocument document = Loader.loadPDF(page.bytes())) {
      BufferedImage shown = new PDFRenderer(document).renderImageWithDPI(0, 40);
      int green = 0;
      for (int y = 0; y < shown.getHeight() / 6; y++) {
        for (int x = shown.getWidth() / 2; x < shown.getWidth(); x++) {
          green += new Color(shown.getRGB(x, y)).equals(Color.GREEN) ? 1 : 0;
        }
      }
      assertThat(green).isGreaterThan(500);
    }
  }

  @Test
  void aLogoThatCannotBeUsedIsOneSentenceAndThePageComesWithoutIt() throws IOException {
    Path huge = folder.resolve("huge.png");
    try (var out =
        Files.newByteChannel(
            huge,
            java.nio.file.StandardOpenOption.CREATE_NEW,
            java.nio.file.StandardOpenOption.WRITE)) {
      out.position(50_000_000 - 1).write(java.nio.ByteBuffer.allocate(1));
    }
    Path text = Files.writeString(folder.resolve("text.png"), "no picture");
    Path cut = folder.resolve("cut.png");
    byte[] whole = Files.readAllBytes(picture("png", 300, 100));
    Files.write(cut, java.util.Arrays.copyOf(whole, whole.length / 2));
    Path wide = folder.resolve("wide.png");
    byte[] head = whole.clone();
    head[16] = 0;
    head[17] = 1;
    head[20] = 0;
    head[21] = 1;
    Files.write(wide, head);
    Map.of(
            huge,
            "has 50 MB, so the page has none. Choose a PNG or JPEG of 5 MB or less.",
            text,
            "is no PNG or JPEG picture",
            cut,
            "is no PNG or JPEG picture",
            wide,
            "million pixels",
            folder.resolve("gone.png"),
            "cannot be read",
            picture("gif", 30, 30),
            "is no PNG or JPEG picture")
        .forEach(
            (logo, sentence) -> {
              HandOverPage.Made page = HandOverPage.made(noted(NOTED), from(workshop(logo), false));
              assertThat(page.said())
                  .as(logo.toString())
                  .singleElement()
                  .asString()
                  .contains(logo.toString(), sentence);
              assertThat(page.bytes()).isNotEmpty();
            });
    assertThatThrownBy(() -> Logo.read("\0")).isInstanceOf(Trouble.class);
    assertThat(
            HandOverPage.made(noted(NOTED), from(workshop(picture("jpg", 30, 30)), false)).said())
        .isEmpty();
  }

  @Test
  void paperIsThatOfTheCountryUnlessTheSettingsSayOtherwise() {
    assertThat(Workshop.NONE.paperIn(Locale.US)).isEqualTo(Paper.LETTER);
    assertThat(Workshop.NONE.paperIn(Locale.UK)).isEqualTo(Paper.A4);
    assertThat(Workshop.NONE.paperIn(Locale.ROOT)).isEqualTo(Paper.A4);
    Workshop chosen = new Workshop("W", "R", "l.png", Optional.of(Paper.A4));
    assertThat(chosen.paperIn(Locale.US)).isEqualTo(Paper.A4);
    Properties kept = new Properties();
    chosen.keepIn(kept);
    assertThat(Workshop.of(kept)).isEqualTo(chosen);
    assertThat(Workshop.of(new Properties())).isEqualTo(Workshop.NONE);
  }

  @Test
  void arabicIsJoinedFromRightToLeftAndWhatNoFontHasIsSaid() throws IOException {
    String camera = "\u0643\u0627\u0645\u064a\u0631\u0627";
    // Two characters that Unicode gives to nothing.
    HandOverPage.Made page =
        HandOverPage.made(
            SamplePages.noted(SamplePages.all().get("five"), camera + " \u0378\u0379", Map.of()),
            PageStyle.owner(Paper.A4));
    assertThat(page.said())
        .containsExactly(
            "The page shows boxes in place of \u0378 \u0379, as no font here has them. Write them"
                + " otherwise, then make the page again.");
    try (PDDocument document = Loader.loadPDF(page.bytes())) {
      PDResources resources = document.getPage(0).getResources();
      List<String> read = new ArrayList<>();
      for (COSName name : resources.getPropertiesNames()) {
        read.add(resources.getProperties(name).getCOSObject().getString(COSName.ACTUAL_TEXT));
      }
      assertThat(read).anyMatch(text -> text.contains(camera));
    }
    // Joined letters are narrower than the same letters one by one.
    try (PDDocument document = new PDDocument()) {
      Letters letters = new Letters(document);
      float joined = letters.width(letters.regular(), 10, camera);
      double single =
          camera
              .chars()
              .mapToDouble(c -> letters.width(letters.regular(), 10, Character.toString(c)))
              .sum();
      assertThat(joined).isPositive().isLessThan((float) single);
      assertThat(letters.outlines(letters.regular(), 10, "Latin \u00e4")).isEmpty();
    }
  }

  private static Workshop workshop(Path logo) {
    return new Workshop("", "", logo.toString(), Optional.empty());
  }

  private Path picture(String format, int width, int height) throws IOException {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    var graphics = image.createGraphics();
    graphics.setColor(Color.GREEN);
    graphics.fillRect(0, 0, width, height);
    graphics.dispose();
    Path file = folder.resolve("logo." + format);
    assertThat(ImageIO.write(image, format, file.toFile())).isTrue();
    return file;
  }
}
