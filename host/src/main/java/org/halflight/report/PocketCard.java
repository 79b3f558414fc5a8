package org.halflight.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.halflight.session.Source;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/**
 * The pocket card: two halves as wide as a bank card is long (ISO/IEC 7810 ID-1, 85.6 mm), side by
 * side, to cut out and fold. Left the true speeds, right what small stops do.
 */
final class PocketCard {
  private static final float HALF = 85.6f * Sheet.MM;
  private static final float PAD = 4 * Sheet.MM;
  private static final float ROW = 11.3f;
  private static final float HEAD = 42;
  private static final float FOOT = 34;
  private static final float SIZE = 8;
  private static final float SMALL = 6.3f;

  private final PageInput input;
  private final Sheet sheet;
  private final PDFont regular;
  private final PDFont bold;

  PocketCard(PageInput input, Sheet sheet) {
    this.input = input;
    this.sheet = sheet;
    this.regular = sheet.letters().regular();
    this.bold = sheet.letters().bold();
  }

  static float height(PageInput input) {
    List<SpeedSummary> speeds = input.last().run().speeds();
    int rows = Math.max(speeds.size(), CardTable.stopTable(input).size() + 2);
    return HEAD + FOOT + rows * ROW;
  }

  void draw() throws IOException {
    float height = height(input);
    sheet.need(height + 8);
    sheet.down(height + 6);
    float left = sheet.left() + (sheet.width() - 2 * HALF) / 2;
    float bottom = sheet.y();
    cutLines(left, bottom, height);
    speeds(left, bottom, height);
    if (FrameText.rows(input.last().run().speeds()).isEmpty()) {
      stops(left + HALF, bottom, height);
    } else {
      frame(left + HALF, bottom, height);
    }
  }

  private void cutLines(float left, float bottom, float height) throws IOException {
    PDPageContentStream out = sheet.out();
    out.saveGraphicsState();
    out.setStrokingColor(Ink.QUIET);
    out.setLineWidth(0.7f);
    out.setLineDashPattern(new float[] {4, 3}, 0);
    out.addRect(left, bottom, 2 * HALF, height);
    out.stroke();
    out.setLineDashPattern(new float[] {1, 2.5f}, 0);
    out.moveTo(left + HALF, bottom);
    out.lineTo(left + HALF, bottom + height);
    out.stroke();
    out.restoreGraphicsState();
    sheet.text(regular, 10, Ink.QUIET, left + 10, bottom + height - 3.4f, "\u2702");
  }

  private void speeds(float left, float bottom, float height) throws IOException {
    float x = left + PAD;
    float width = HALF - 2 * PAD;
    float y = bottom + height - PAD - 7;
    y = name(x, y, width) - 11;
    fit(
        regular,
        SMALL,
        x,
        y,
        width,
        Words.say(
            "page.card.asOf",
            Sentences.phase(input.last().run().phase()),
            input.last().when().isBlank() ? input.date() : input.last().when()));
    y -= 13;
    float[] at = {x, x + 0.22f * width, x + 0.52f * width, x + 0.72f * width};
    String[] heads = {"page.card.marked", "page.card.true", "page.card.give"};
    for (int i = 0; i < heads.length; i++) {
      sheet.text(regular, SMALL, Ink.QUIET, at[i], y, Words.say(heads[i]));
    }
    sheet.line(x, y - 3, width, 0.5f, Ink.QUIET);
    for (List<String> row : CardTable.speeds(input)) {
      y -= ROW;
      sheet.text(bold, SIZE, Ink.BLACK, at[0], y, row.get(0));
      sheet.text(regular, SIZE, Ink.BLACK, at[1], y, row.get(1));
      sheet.text(bold, SIZE, Ink.BLACK, at[2], y, row.get(2));
      sheet.text(regular, SMALL, Ink.QUIET, at[3], y, row.get(3));
    }
    foot(x, bottom, width, List.of(Words.say("page.card.explain"), warning()));
  }

  /** What curtains do across the picture takes the place of smaller apertures. */
  private void frame(float left, float bottom, float height) throws IOException {
    float x = left + PAD;
    float width = HALF - 2 * PAD;
    float y = bottom + height - PAD - 7;
    List<SpeedSummary> speeds = input.last().run().speeds();
    fit(bold, 9.5f, x, y, width, Words.say("page.card.frame"));
    y -= 11;
    fit(regular, SMALL, x, y, width, FrameText.flash(speeds, "page.card.frame.flash"));
    y -= 13;
    sheet.text(regular, SMALL, Ink.QUIET, x, y, Words.say("page.card.marked"));
    sheet.line(x, y - 3, width, 0.5f, Ink.QUIET);
    for (FrameText.Row row : FrameText.rows(speeds)) {
      y -= ROW;
      sheet.text(bold, SIZE, Ink.BLACK, x, y, row.speed().label());
      fit(regular, SIZE, x + 0.22f * width, y, 0.78f * width, row.evenness());
    }
    foot(x, bottom, width, List.of(Words.say("page.card.frame.explain"), warning()));
  }

  private void stops(float left, float bottom, float height) throws IOException {
    float x = left + PAD;
    float width = HALF - 2 * PAD;
    float y = bottom + height - PAD - 7;
    fit(bold, 9.5f, x, y, width, Words.say("page.card.stops"));
    List<List<String>> rows = CardTable.stopTable(input);
    if (rows.isEmpty()) {
      foot(x, bottom, width, List.of(Words.say("page.card.stops.none")));
      return;
    }
    y -= 11;
    boolean known = input.measuredFNumber().isPresent();
    fit(regular, SMALL, x, y, width, Words.say(known ? "page.card.working" : "page.card.closed"));
    y -= 13;
    List<CardTable.WorkingStop> stops = CardTable.workingStops(input.measuredFNumber());
    float first = 0.17f * width;
    float step = (width - first) / stops.size();
    sheet.text(regular, SMALL, Ink.QUIET, x, y, Words.say("page.card.marked"));
    for (int i = 0; i < stops.size(); i++) {
      centred(
          regular,
          SMALL,
          x + first + (i + 0.5f) * step,
          y,
          (known ? "f/" : "") + stops.get(i).words());
    }
    sheet.line(x, y - 3, width, 0.5f, Ink.QUIET);
    for (List<String> row : rows) {
      y -= ROW;
      sheet.text(bold, SIZE, Ink.BLACK, x, y, row.get(0));
      for (int i = 1; i < row.size(); i++) {
        float wide = sheet.letters().width(regular, SIZE, row.get(i));
        float size = Math.min(SIZE, SIZE * (step - 3) / wide);
        centred(regular, size, x + first + (i - 0.5f) * step, y, row.get(i));
      }
    }
    foot(x, bottom, width, List.of(Words.say("page.card.stops.explain"), warning()));
  }

  /** The camera in one line, or in two smaller ones; gives the baseline of the last. */
  private float name(float x, float y, float width) throws IOException {
    String name = name();
    if (sheet.letters().width(bold, 9.5f, name) <= width) {
      sheet.text(bold, 9.5f, Ink.BLACK, x, y, name);
      return y;
    }
    float size = 7;
    List<String> lines = sheet.letters().lines(bold, size, name, width - 8);
    sheet.text(bold, size, Ink.BLACK, x, y + 4, lines.get(0));
    if (lines.size() > 1) {
      String more = lines.size() > 2 ? " \u2026" : "";
      sheet.text(bold, size, Ink.BLACK, x, y - 4.5f, lines.get(1) + more);
    }
    return y - 2;
  }

  private String name() {
    return input.camera().isBlank() ? Words.say("page.card.title") : input.camera();
  }

  private String warning() {
    List<String> words = new ArrayList<>();
    if (input.source() == Source.PRACTICE) {
      words.add(Words.say("page.card.practice"));
    } else if (input.source() == Source.SIMULATOR) {
      words.add(Words.say("page.stamp.simulator"));
    }
    if (!input.standing().isCalibrated()) {
      words.add(Words.say("page.card.notCalibrated"));
    }
    return String.join(". ", words);
  }

  private void foot(float x, float bottom, float width, List<String> texts) throws IOException {
    List<String> lines = new ArrayList<>();
    for (String text : texts) {
      if (!text.isBlank()) {
        lines.addAll(sheet.letters().lines(regular, SMALL, text, width));
      }
    }
    float y = bottom + PAD / 2 + (lines.size() - 1) * 7.6f;
    for (String line : lines) {
      sheet.text(regular, SMALL, Ink.QUIET, x, y, line);
      y -= 7.6f;
    }
  }

  /** One line in letters as large as asked for, or as small as it takes to fit. */
  private void fit(PDFont font, float size, float x, float y, float width, String text)
      throws IOException {
    float wide = sheet.letters().width(font, size, text);
    float fitting = Math.max(5, wide <= width ? size : size * width / wide);
    String shown = sheet.letters().lines(font, fitting, text, width).get(0);
    sheet.text(font, fitting, Ink.BLACK, x, y, shown);
  }

  private void centred(PDFont font, float size, float middle, float y, String text)
      throws IOException {
    float width = sheet.letters().width(font, size, text);
    sheet.text(font, size, Ink.BLACK, middle - width / 2, y, text);
  }
}
