package org.halflight.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.halflight.chart.RunPictures;
import org.halflight.chart.SpeedMap;
import org.halflight.files.OutFile;
import org.halflight.job.CheckState;
import org.halflight.job.Detail;
import org.halflight.trouble.Trouble;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.ShiftFinding;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** The page that goes with the camera: a PDF for its owner, with a pocket card to cut out. */
public final class HandOverPage {
  private static final float MAP_WIDTH = 860;
  private static final float MAP_HEIGHT = 460;

  private final PageInput input;
  private final PageText text;
  private final Letters letters;
  private final PDDocument document;

  private HandOverPage(PageInput input, PDDocument document) throws IOException {
    this.input = input;
    this.text = new PageText(input);
    this.document = document;
    this.letters = new Letters(document);
  }

  /**
   * A page that was made.
   *
   * @param bytes the PDF file
   * @param said what of it could not be printed, one sentence each
   */
  @SuppressWarnings("ArrayRecordComponent") // Handed on once and never compared.
  public record Made(byte[] bytes, List<String> said) {}

  /** Writes the page; gives what of it could not be printed, one sentence each. */
  public static List<String> write(PageInput input, PageStyle style, OutFile to) {
    Made made = made(input, style);
    to.write(made.bytes());
    return made.said();
  }

  /** The page as the bytes of a PDF file. */
  public static Made made(PageInput input, PageStyle style) {
    try (PDDocument document = new PDDocument();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      HandOverPage page = new HandOverPage(style.sale() ? input.forSale() : input, document);
      List<String> said = page.draw(style);
      document.save(bytes);
      return new Made(bytes.toByteArray(), said);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<String> draw(PageStyle style) throws IOException {
    List<String> said = new ArrayList<>();
    describe();
    try (Sheet sheet = new Sheet(document, style.paper(), letters)) {
      new OwnerPage(input, text, style.from(), logo(style.from(), said), document, letters)
          .draw(sheet);
      if (style.bench()) {
        sheet.newPage();
        bench(sheet);
      }
    }
    new PageFoot(
            letters,
            Words.say("page.footer", input.version(), input.date(), input.sourceWords()),
            text.stamp())
        .draw(document);
    letters.missing().ifPresent(missing -> said.add(Words.say("page.letters.missing", missing)));
    return said;
  }

  private Optional<PDImageXObject> logo(Workshop from, List<String> said) {
    if (from.logo().isBlank()) {
      return Optional.empty();
    }
    try {
      return Optional.of(Logo.read(from.logo()).in(document));
    } catch (Trouble without) {
      said.add(without.getMessage());
      return Optional.empty();
    }
  }

  /** What a repairer wants to know beside: figures, conditions, how sure they are. */
  private void bench(Sheet sheet) throws IOException {
    head(sheet);
    section(sheet, "page.section.short", text.inShort());
    speeds(sheet);
    section(sheet, "page.section.tried", input.alsoTried());
    done(sheet);
    lists(sheet);
    section(sheet, "page.section.sure", text.howSure());
    section(sheet, "page.section.cautions", text.cautions());
    section(sheet, "page.section.notTested", text.notTested());
  }

  private void describe() {
    PDDocumentInformation about = document.getDocumentInformation();
    about.setTitle(text.title());
    about.setCreator("Halflight " + input.version());
    about.setProducer("Halflight " + input.version());
    GregorianCalendar written = GregorianCalendar.from(input.writtenAt().atZone(ZoneOffset.UTC));
    about.setCreationDate(written);
    about.setModificationDate(written);
    document.setDocumentId(input.writtenAt().toEpochMilli());
    document.getDocumentCatalog().setLanguage(Locale.ENGLISH.toLanguageTag());
    PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
    preferences.setDisplayDocTitle(true);
    document.getDocumentCatalog().setViewerPreferences(preferences);
  }

  private void head(Sheet sheet) throws IOException {
    sheet.paragraph(text.title(), letters.bold(), 17, Ink.BLACK);
    if (text.comparison().isPresent()) {
      sheet.paragraph(Words.say("page.subtitle.both"), letters.regular(), 10.5f, Ink.QUIET);
    }
    sheet.down(3);
    List<String[]> fields = new ArrayList<>();
    field(fields, "page.field.serial", input.serialNumber());
    field(fields, "page.field.make", input.make());
    field(fields, "page.field.lens", input.details().of(Detail.LENS));
    field(fields, "page.field.second", input.details().of(Detail.SECOND_SERIAL));
    field(fields, "page.field.job", input.jobNumber());
    field(fields, "page.field.shutter", input.shutterKind());
    field(fields, "page.field.date", input.date());
    for (RunPart part : text.parts()) {
      List<String> said = new ArrayList<>();
      if (!part.when().isBlank()) {
        said.add(part.when());
      }
      part.setup().entrySet().stream()
          .sorted(Map.Entry.comparingByKey())
          .forEach(value -> said.add(value.getKey() + ": " + value.getValue()));
      if (!said.isEmpty()) {
        fields.add(new String[] {Sentences.phase(part.run().phase()), String.join("; ", said)});
      }
    }
    float label = 84;
    for (String[] field : fields) {
      List<String> lines = letters.lines(letters.regular(), 9, field[1], sheet.width() - label);
      boolean first = true;
      for (String line : lines) {
        sheet.need(Sheet.lineHeight(9));
        sheet.down(Sheet.lineHeight(9));
        if (first) {
          sheet.text(letters.regular(), 9, Ink.QUIET, sheet.left(), sheet.y() + 2.3f, field[0]);
        }
        sheet.text(letters.regular(), 9, Ink.BLACK, sheet.left() + label, sheet.y() + 2.3f, line);
        first = false;
      }
    }
    sheet.down(3);
  }

  private static void field(List<String[]> fields, String key, String value) {
    if (!value.isBlank()) {
      fields.add(new String[] {Words.say(key), value});
    }
  }

  private void section(Sheet sheet, String heading, List<String> points) throws IOException {
    if (points.isEmpty()) {
      return;
    }
    sheet.heading(Words.say(heading), 2 * Sheet.lineHeight(9));
    for (String point : points) {
      sheet.point(point);
    }
  }

  private void speeds(Sheet sheet) throws IOException {
    List<RunSummary> runs = text.parts().stream().map(RunPart::run).toList();
    SpeedMap map = RunPictures.speedMap(Words.say("page.map"), runs, "");
    float drawn = MAP_HEIGHT * sheet.width() / MAP_WIDTH;
    sheet.need(drawn);
    sheet.drawing(
        VectorPicture.of(document, letters, map, MAP_WIDTH, MAP_HEIGHT), MAP_WIDTH, MAP_HEIGHT);
    Columns columns = SpeedTables.columns(text.parts());
    List<List<String>> rows = SpeedTables.rows(text.parts(), text.comparison());
    sheet.heading(Words.say("page.section.speeds"), columns.heightOf(Math.min(rows.size(), 5)));
    columns.draw(sheet, rows);
    List<String> notes = new ArrayList<>(List.of(Words.say("page.table.units")));
    if (text.comparison().stream()
        .flatMap(both -> both.speeds().stream())
        .anyMatch(speed -> speed.finding() == ShiftFinding.NO_EVIDENCE)) {
      notes.add(Words.say("page.table.noneFound"));
    }
    notes.addAll(text.rebounds());
    notes.addAll(text.afterRest());
    notes.addAll(text.flap());
    notes.addAll(text.conditions());
    notes.addAll(text.lightOverTheLens());
    sheet.paragraph(String.join(" ", notes), letters.regular(), 7.5f, Ink.QUIET);
  }

  private void done(Sheet sheet) throws IOException {
    List<String> work = Stream.concat(input.workDone().stream(), input.turns().stream()).toList();
    section(
        sheet,
        "page.section.done",
        work.isEmpty() ? List.of(Words.say("page.done.nothing")) : work);
  }

  private void lists(Sheet sheet) throws IOException {
    if (input.lists().isEmpty()) {
      section(sheet, "page.section.lists", List.of(Words.say("page.lists.nothing")));
      return;
    }
    Columns columns =
        new Columns(
            List.of(
                Words.say("page.lists.item"),
                Words.say("page.lists.intake"),
                Words.say("page.lists.handBack"),
                Words.say("page.lists.remark")),
            List.of(),
            List.of(40f, 31f, 31f, 72f),
            List.of(false, false, false, false),
            8.5f);
    sheet.heading(Words.say("page.section.lists"), columns.heightOf(3));
    columns.draw(
        sheet,
        input.lists().stream()
            .map(
                line ->
                    List.of(
                        line.item(),
                        state(line.intake(), line.intakeMeasured()),
                        state(line.handBack(), line.handBackMeasured()),
                        line.remark()))
            .toList());
  }

  private static String state(Optional<CheckState> state, boolean measured) {
    if (state.isEmpty()) {
      return Words.say("page.check.none");
    }
    String said = CheckLines.word(state.get());
    return measured ? Words.say("page.check.measured", said) : said;
  }
}
