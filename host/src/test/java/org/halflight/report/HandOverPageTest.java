package org.halflight.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.halflight.files.FileKind;
import org.halflight.files.OutFiles;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.Source;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** All figures on these pages are invented. */
class HandOverPageTest {
  private static final String STAMP = "PRACTICE: invented shutter, simulated figures";

  @TempDir private Path folder;

  static Stream<Arguments> everyPage() {
    return SamplePages.all().entrySet().stream()
        .flatMap(
            page ->
                Stream.of(Paper.values())
                    .map(paper -> Arguments.of(page.getKey(), page.getValue(), paper)));
  }

  private record Printed(PageInput input, Paper paper) {}

  private static final Map<Printed, byte[]> PRINTED = new ConcurrentHashMap<>();

  private static PDDocument open(PageInput input, Paper paper) throws IOException {
    return Loader.loadPDF(
        PRINTED.computeIfAbsent(
            new Printed(input, paper),
            page -> HandOverPage.made(page.input(), bench(page.paper())).bytes()));
  }

  private static PageStyle bench(Paper paper) {
    return new PageStyle(paper, true, false, Workshop.NONE);
  }

  /** The text in reading order, its lines joined and its gaps made single. */
  private static String text(PageInput input) throws IOException {
    try (PDDocument document = open(input, Paper.A4)) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  @ParameterizedTest(name = "{0} on {2}")
  @MethodSource("everyPage")
  void isAProperDocument(String name, PageInput input, Paper paper) throws IOException {
    try (PDDocument document = open(input, paper)) {
      assertThat(document.getDocumentInformation().getTitle()).startsWith("Shutter");
      assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
      assertThat(document.getDocumentCatalog().getViewerPreferences().displayDocTitle()).isTrue();
      assertThat(document.getNumberOfPages()).isBetween(2, 4);
      for (PDPage page : document.getPages()) {
        PDRectangle box = page.getMediaBox();
        // ISO 216: A4 is 210 by 297 mm. Letter is 8.5 by 11 inches. A point is 1/72 inch.
        assertThat(box.getWidth())
            .isCloseTo(paper == Paper.A4 ? 210 / 25.4f * 72 : 612, within(0.1f));
        assertThat(box.getHeight())
            .isCloseTo(paper == Paper.A4 ? 297 / 25.4f * 72 : 792, within(0.1f));
        List<PDFont> fonts = fonts(page.getResources());
        assertThat(fonts).isNotEmpty();
        assertThat(fonts)
            .allSatisfy(
                font -> {
                  assertThat(font.isEmbedded()).isTrue();
                  assertThat(font.getName()).contains("DejaVuSans");
                });
      }
    }
  }

  @ParameterizedTest(name = "{0} on {2}")
  @MethodSource("everyPage")
  void nothingLeavesThePage(String name, PageInput input, Paper paper) throws IOException {
    try (PDDocument document = open(input, paper)) {
      Places places = new Places();
      places.getText(document);
      assertThat(places.found).hasSizeGreaterThan(500);
      // The printable part of a page: printers leave about 6 mm (common practice, no source).
      float air = 17;
      PDRectangle box = paper.box();
      List<String> outside =
          places.found.stream()
              .filter(
                  letter -> {
                    float x = letter.getTextMatrix().getTranslateX();
                    float y = letter.getTextMatrix().getTranslateY();
                    return x < air
                        || y < air
                        || letter.getEndX() > box.getWidth() - air
                        || letter.getEndY() > box.getHeight() - air;
                  })
              .map(letter -> letter + " at " + letter.getTextMatrix())
              .toList();
      assertThat(outside).isEmpty();
    }
  }

  @Test
  void linesDoNotRunIntoEachOther() throws IOException {
    for (PageInput input : SamplePages.all().values()) {
      try (PDDocument document = open(input, Paper.LETTER)) {
        for (int page = 1; page <= document.getNumberOfPages(); page++) {
          Places places = new Places();
          places.setStartPage(page);
          places.setEndPage(page);
          places.getText(document);
          assertThat(overlaps(places.found)).isEmpty();
        }
      }
    }
  }

  @Test
  void saysWhatWasFoundAndWhatIsNotKnown() throws IOException {
    assertThat(text(SamplePages.all().get("ten")))
        .contains("Shutter of Invented camera")
        .contains("Serial number INV 20 114")
        .contains("Job number J-0420")
        .contains("stop slow; the means of the others are")
        .contains("At 1/30 to 1/500 any change is less than a tenth of a stop.")
        .contains("As left, all 10 speeds that were fired are within tolerance.")
        .contains("Slow-speed train taken out, rinsed, dried")
        .contains("Oil on blades fault OK a film near the pivots")
        .contains("Rig not calibrated.")
        .contains("That is usual in the trade, not a standard's limit.")
        .contains("From the inspection: Self-timer, Flash contact.")
        .contains("exposure away from the middle of the picture")
        .contains("First firing after rest, as found at 1 s:")
        .contains("Stopped down (a model)")
        .contains("not measured");
  }

  @Test
  void whatWasNotTestedIsNotGuessedFromTheWordsOfTheLists() {
    Optional<CheckState> ok = Optional.of(CheckState.OK);
    CheckLine own = new CheckLine(Optional.empty(), "Lever of the self-timer", ok, ok, "");
    CheckLine listed = new CheckLine(Optional.of(CheckItem.SELF_TIMER), "Vorlauf", ok, ok, "");
    assertThat(new PageText(SamplePages.withLists(List.of(own))).notTested())
        .anySatisfy(said -> assertThat(said).startsWith("Also: ").contains(", self-timer, "));
    assertThat(new PageText(SamplePages.withLists(List.of(listed))).notTested())
        .noneSatisfy(said -> assertThat(said).contains("self-timer"));
  }

  @Test
  void theTextOfThePictureIsTextToo() throws IOException {
    assertThat(text(SamplePages.all().get("fourteen")))
        .contains("firing as found")
        .contains("mean with 95 % interval")
        .contains("marked speed in seconds, slow to fast")
        .doesNotContain("\uFB01");
  }

  @Test
  void inventedFiguresAreStampedOnEveryPage() throws IOException {
    for (String name : List.of("ten", "fourteen")) {
      try (PDDocument document = open(SamplePages.all().get(name), Paper.A4)) {
        for (int page = 1; page <= document.getNumberOfPages(); page++) {
          Places places = new Places();
          places.setStartPage(page);
          places.setEndPage(page);
          places.getText(document);
          String slanted =
              places.found.stream()
                  .filter(letter -> letter.getTextMatrix().getShearY() > 1)
                  .map(TextPosition::getUnicode)
                  .reduce("", String::concat);
          assertThat(slanted).isEqualTo(STAMP);
        }
      }
    }
    assertThat(text(SamplePages.all().get("hung"))).contains("simulated board: real firmware");
    assertThat(text(SamplePages.all().get("five"))).doesNotContain("PRACTICE", "SIMULATED");
  }

  @Test
  void aWetShutterIsProvisional() throws IOException {
    assertThat(text(SamplePages.all().get("hung"))).contains("Provisional until repeated:");
    assertThat(text(SamplePages.all().get("ten"))).doesNotContain("Provisional until repeated");
  }

  @Test
  void whatHungComesFirst() throws IOException {
    String text = text(SamplePages.all().get("hung"));
    assertThat(text)
        .contains("In short \u2013 As found, 1 s: 5 of 5 stuck open.")
        .contains("Of all releases: stuck open in 9 of 50 before and in 1 of 51 after")
        .contains("1/2 and 1/4 run 1.00 stop slow; the means of the others are 0.05 stop slow.")
        .contains("'None found' does not mean unchanged")
        .contains("It hung open or did not open.");
    // Most of what the fast speeds show is no shift at all, so the dial as a whole did not move.
    assertThat(text).doesNotContain("The whole dial moved");
  }

  @Test
  void oddOnesStandBesideTheVerdict() throws IOException {
    for (String one : List.of("ten", "few-speeds")) {
      assertThat(text(SamplePages.all().get(one)))
          .contains("odd ones")
          .containsPattern("[012]/\\d, \u2264 \\d\\d %")
          .contains("the largest share that still fits");
    }
  }

  @Test
  void withoutARunFromBeforeNothingIsSaidAboutAChange() throws IOException {
    String text = text(SamplePages.all().get("no-as-found"));
    assertThat(text)
        .contains("so this page does not show what the work changed")
        .contains("No lists were filled in.")
        .contains("No work is noted.")
        .doesNotContain("faster than before", "As found and as left");
  }

  @Test
  void speedsThatWereNotFiredAreNamed() throws IOException {
    assertThat(text(SamplePages.all().get("few-speeds")))
        .contains("Speeds of the dial that were not fired: 1/15, 1/30 and 1/250.")
        .contains("no verdict (too few timed firings): 1/125.")
        .contains("There is no run from after the work yet.")
        .contains("No table of smaller apertures");
  }

  @Test
  void aCharacterThatTheFontDoesNotHaveIsABox() throws IOException {
    assertThat(text(SamplePages.all().get("long-names")))
        .contains("K\u00f6ln-\u0141\u00f3d\u017a")
        .contains("\u25A1\u25A1");
  }

  @Test
  void thePictureIsThere() throws IOException {
    for (Paper paper : Paper.values()) {
      try (PDDocument document = open(SamplePages.all().get("five"), paper)) {
        BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, 60);
        int coloured = 0;
        for (int y = image.getHeight() / 4; y < 3 * image.getHeight() / 4; y++) {
          for (int x = 0; x < image.getWidth(); x++) {
            int rgb = image.getRGB(x, y);
            int red = rgb >> 16 & 0xFF;
            int blue = rgb & 0xFF;
            // As found is vermillion, as left blue; all text is nearly grey.
            coloured += Math.abs(red - blue) > 90 ? 1 : 0;
          }
        }
        assertThat(coloured).as("marks of firings on %s", paper).isGreaterThan(150);
      }
    }
  }

  @Test
  void theSameInputMakesTheSamePage() {
    PageInput input = SamplePages.all().get("five");
    assertThat(HandOverPage.made(input, bench(Paper.A4)).bytes())
        .isEqualTo(HandOverPage.made(input, bench(Paper.A4)).bytes());
  }

  @Test
  void saysWhyItCannotBeWritten() {
    PageInput input = SamplePages.cleaned(SamplePages.FIVE, "", Source.RIG);
    Path nowhere = folder.resolve("no folder").resolve("page.pdf");
    assertThatThrownBy(
            () ->
                HandOverPage.write(
                    input, bench(Paper.A4), OutFiles.neverReplacing().file(nowhere, FileKind.PAGE)))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("There is no folder");
  }

  private static List<PDFont> fonts(PDResources resources) throws IOException {
    List<PDFont> fonts = new ArrayList<>();
    for (COSName name : resources.getFontNames()) {
      fonts.add(resources.getFont(name));
    }
    for (COSName name : resources.getXObjectNames()) {
      PDXObject object = resources.getXObject(name);
      if (object instanceof PDFormXObject form && form.getResources() != null) {
        fonts.addAll(fonts(form.getResources()));
      }
    }
    return fonts;
  }

  /** Upright letters whose middles lie within each other: one text over another. */
  private static List<String> overlaps(List<TextPosition> letters) {
    List<TextPosition> upright =
        letters.stream()
            .filter(letter -> letter.getDir() == 0 && !letter.getUnicode().isBlank())
            .filter(letter -> Math.abs(letter.getTextMatrix().getShearY()) < 1e-3)
            .toList();
    List<String> overlaps = new ArrayList<>();
    for (int i = 0; i < upright.size(); i++) {
      for (int j = i + 1; j < upright.size(); j++) {
        TextPosition one = upright.get(i);
        TextPosition other = upright.get(j);
        float across =
            Math.abs(
                one.getXDirAdj()
                    + one.getWidthDirAdj() / 2
                    - other.getXDirAdj()
                    - other.getWidthDirAdj() / 2);
        float up = Math.abs(one.getYDirAdj() - other.getYDirAdj());
        if (across < 0.3f * Math.min(one.getWidthDirAdj(), other.getWidthDirAdj())
            && up < 0.5f * Math.min(one.getFontSizeInPt(), other.getFontSizeInPt())) {
          overlaps.add(one.getUnicode() + " over " + other.getUnicode() + " at " + one);
        }
      }
    }
    return overlaps;
  }

  private static final class Places extends PDFTextStripper {
    private final List<TextPosition> found = new ArrayList<>();

    Places() {
      setSuppressDuplicateOverlappingText(false);
    }

    @Override
    protected void processTextPosition(TextPosition text) {
      found.add(text);
      super.processTextPosition(text);
    }
  }
}
