package org.halflight.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.halflight.files.OutFile;
import org.halflight.firstlight.Finding;
import org.halflight.firstlight.FirstLight;
import org.halflight.firstlight.FirstLightWords;
import org.halflight.firstlight.FirstStep;
import org.halflight.session.Source;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/**
 * What first light has found, on paper: what of a rig was tested, what was seen in figures, and
 * what was not tested.
 */
public final class RigReport {
  private RigReport() {}

  /**
   * Writes the report.
   *
   * @param date when the rig was tested, as it is to be printed
   * @param version of this program
   */
  public static void write(FirstLight state, String date, String version, Paper paper, OutFile to) {
    to.write(bytes(state, date, version, paper));
  }

  /** The report as the bytes of a PDF file. */
  public static byte[] bytes(FirstLight state, String date, String version, Paper paper) {
    try (PDDocument document = new PDDocument();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      PDDocumentInformation about = document.getDocumentInformation();
      about.setTitle(Words.say("firstlight.report.title", state.rig().serial()));
      about.setCreator("Halflight " + version);
      document.getDocumentCatalog().setLanguage(Locale.ENGLISH.toLanguageTag());
      Letters letters = new Letters(document);
      try (Sheet sheet = new Sheet(document, paper, letters)) {
        draw(sheet, state);
      }
      String serial = state.rig().serial();
      new PageFoot(
              letters,
              Words.say("page.footer", version, date, Sentences.source(serial)),
              PageFoot.stamp(Source.of(serial)))
          .draw(document);
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void draw(Sheet sheet, FirstLight state) throws IOException {
    Letters letters = sheet.letters();
    sheet.paragraph(
        Words.say("firstlight.report.title", state.rig().serial()), letters.bold(), 17, Ink.BLACK);
    sheet.paragraph(FirstLightWords.rig(state));
    sheet.paragraph(Sentences.source(state.rig().serial()));
    sheet.paragraph(FirstLightWords.standing(state), letters.bold(), 10.5f, Ink.BLACK);
    Columns columns =
        new Columns(
            List.of(
                Words.say("firstlight.report.step"),
                Words.say("firstlight.report.result"),
                Words.say("firstlight.report.seen"),
                Words.say("firstlight.report.check")),
            List.of(),
            List.of(34f, 22f, 62f, 56f),
            List.of(false, false, false, false),
            8.5f);
    List<List<String>> rows = new ArrayList<>();
    IntStream.range(0, state.steps().size())
        .forEach(i -> rows.add(row(state, state.steps().get(i), i + 1)));
    sheet.down(4);
    columns.draw(sheet, rows);
    sheet.heading(Words.say("firstlight.report.notTestedHeading"), 20);
    sheet.paragraph(
        FirstLightWords.notTested(state).orElseGet(() -> Words.say("firstlight.report.allTested")));
    sheet.heading(Words.say("firstlight.report.meansHeading"), 20);
    sheet.point(Words.say("firstlight.report.means"));
    sheet.point(
        Words.say(
            state.rig().board().referenceLed()
                ? "firstlight.report.meansNot"
                : "firstlight.report.meansNot.noLed"));
  }

  private static List<String> row(FirstLight state, FirstStep step, int number) {
    Finding finding = state.of(step);
    return List.of(
        Words.say("firstlight.report.numbered", number, FirstLightWords.name(step)),
        Words.of("firstlight.word", finding.outcome()),
        FirstLightWords.seen(finding.seen()),
        FirstLightWords.check(step, finding, state.rig().board()));
  }
}
