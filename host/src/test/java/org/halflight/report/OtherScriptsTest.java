package org.halflight.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.PathIterator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.halflight.chart.RunPictures;
import org.halflight.job.Detail;
import org.junit.jupiter.api.Test;

/** What people write in other scripts is on the page, whatever fonts this computer has. */
class OtherScriptsTest {
  private static final String CHINESE = "\u5feb\u95e8\u6162\u901f\u4e0d\u51c6";
  private static final String JAPANESE = "\u30b7\u30e3\u30c3\u30bf\u30fc\u304c\u9045\u3044";
  private static final String KOREAN = "\uc154\ud130\uac00 \ub290\ub9bd\ub2c8\ub2e4";
  private static final String ARABIC =
      "\u0627\u0644\u0645\u0635\u0631\u0627\u0639 \u0628\u0637\u064a\u0621";
  private static final String HEBREW = "\u05d4\u05ea\u05e8\u05d9\u05e1 \u05d0\u05d9\u05d8\u05d9";

  @Test
  void everyScriptIsOnThePageAndIsReadBackFromIt() throws IOException {
    HandOverPage.Made made =
        HandOverPage.made(
            SamplePages.noted(
                SamplePages.all().get("five"),
                "Invented camera " + CHINESE,
                Map.of(
                    Detail.COMPLAINT,
                    JAPANESE + ", " + KOREAN + ", " + HEBREW,
                    Detail.OWNER,
                    ARABIC)),
            PageStyle.owner(Paper.A4));
    assertThat(made.said()).as("no box on it").isEmpty();
    Path kept = Path.of("target", "other-scripts.pdf");
    Files.createDirectories(kept.getParent());
    Files.write(kept, made.bytes());
    try (PDDocument document = Loader.loadPDF(made.bytes())) {
      assertThat(new PDFTextStripper().getText(document)).contains(CHINESE);
      PDResources resources = document.getPage(0).getResources();
      assertThat(outlined(resources))
          .anyMatch(text -> text.contains(HEBREW) && text.contains(JAPANESE));
      assertThat(outlined(resources)).anyMatch(text -> text.contains(ARABIC));
      List<String> fonts = new ArrayList<>();
      for (COSName name : resources.getFontNames()) {
        PDFont font = resources.getFont(name);
        assertThat(font.isEmbedded()).isTrue();
        fonts.add(font.getName());
      }
      assertThat(fonts).anyMatch(name -> name.endsWith("WenQuanYiMicroHei"));
    }
    assertThat(made.bytes().length).as("only the letters that are used").isLessThan(300_000);
  }

  private static List<String> outlined(PDResources resources) {
    List<String> texts = new ArrayList<>();
    for (COSName name : resources.getPropertiesNames()) {
      texts.add(resources.getProperties(name).getCOSObject().getString(COSName.ACTUAL_TEXT));
    }
    return texts;
  }

  @Test
  void everyScriptIsInAPictureOfThePage() throws IOException {
    try (PDDocument document = new PDDocument()) {
      Letters letters = new Letters(document);
      PDFormXObject picture =
          VectorPicture.of(
              document,
              letters,
              RunPictures.speedMap(
                  CHINESE + " " + KOREAN,
                  List.of(SamplePages.all().get("five").asLeft().get().run()),
                  ARABIC),
              860,
              340);
      PDPage page = new PDPage();
      document.addPage(page);
      try (PDPageContentStream out = new PDPageContentStream(document, page)) {
        out.drawForm(picture);
      }
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      Files.write(Path.of("target", "other-scripts-picture.pdf"), bytes.toByteArray());
      try (PDDocument read = Loader.loadPDF(bytes.toByteArray())) {
        assertThat(new PDFTextStripper().getText(read)).contains(CHINESE + " " + KOREAN);
      }
      assertThat(outlined(picture.getResources())).anyMatch(text -> text.contains(ARABIC));
      assertThat(letters.missing()).isEmpty();
    }
  }

  @Test
  void whatFollowsADotIsNotSetAmongLettersFromRightToLeft() throws IOException {
    try (PDDocument document = new PDDocument()) {
      Letters letters = new Letters(document);
      String name = "for " + ARABIC;
      List<Double> alone = places(letters, name);
      assertThat(places(letters, name + " \u00b7 7 March").subList(0, alone.size()))
          .isEqualTo(alone);
      assertThat(places(letters, name + " - 7 March").subList(0, alone.size()))
          .as("without the dot it is set among them")
          .isNotEqualTo(alone);
    }
  }

  /** Where the pieces of the outlines begin, from left to right as they are drawn. */
  private static List<Double> places(Letters letters, String line) {
    List<Double> places = new ArrayList<>();
    double[] at = new double[6];
    for (PathIterator path =
            letters.outlines(letters.regular(), 10, line).orElseThrow().getPathIterator(null);
        !path.isDone();
        path.next()) {
      if (path.currentSegment(at) == PathIterator.SEG_MOVETO) {
        places.add(at[0]);
      }
    }
    return places;
  }

  @Test
  void linesOfEastAsianTextAreCutWhereTheyAreFull() throws IOException {
    try (PDDocument document = new PDDocument()) {
      Letters letters = new Letters(document);
      List<String> lines = letters.lines(letters.regular(), 9, CHINESE.repeat(30), 200);
      assertThat(lines).hasSizeGreaterThan(5);
      assertThat(String.join("", lines)).isEqualTo(CHINESE.repeat(30));
      assertThat(lines)
          .allSatisfy(
              line ->
                  assertThat(letters.width(letters.regular(), 9, line)).isLessThanOrEqualTo(200));
    }
  }
}
