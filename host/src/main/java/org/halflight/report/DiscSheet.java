package org.halflight.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.halflight.calibration.PrintedDisc;
import org.halflight.files.OutFile;
import org.halflight.words.Words;

/**
 * A disc with slots of several angles to print and cut out. The edges of the slots are straight
 * lines through the centre, so that every point of the light is uncovered for the same part of a
 * turn.
 */
public final class DiscSheet {
  private static final float MM = Sheet.MM;
  private static final float OUTER = 85 * MM;
  private static final float SLOT_OUTER = 78 * MM;
  private static final float SLOT_INNER = 48 * MM;
  private static final float HOLE = 2.5f * MM;
  private static final float BAR = 100 * MM;

  /** Steps of the arcs; the chord stays within 0.001 mm of the circle. */
  private static final double STEP_DEGREES = 0.5;

  private DiscSheet() {}

  /** Writes the sheet. */
  public static void write(Paper paper, OutFile to) {
    to.write(bytes(paper));
  }

  /** The sheet as the bytes of a PDF file. */
  public static byte[] bytes(Paper paper) {
    try (PDDocument document = new PDDocument();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      document.getDocumentInformation().setTitle(Words.say("disc.title"));
      PDPage page = new PDPage(paper.box());
      document.addPage(page);
      Letters letters = new Letters(document);
      try (PDPageContentStream out = new PDPageContentStream(document, page)) {
        draw(out, letters, page.getMediaBox().getWidth(), page.getMediaBox().getHeight());
      }
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void draw(PDPageContentStream out, Letters letters, float width, float height)
      throws IOException {
    float x = width / 2;
    float y = height - 22 * MM - OUTER;
    say(out, letters.bold(), letters, 13, width, height - 15 * MM, Words.say("disc.title"));
    out.setLineWidth(0.25f);
    circle(out, x, y, OUTER, 0, 360);
    out.closeAndStroke();
    circle(out, x, y, HOLE, 0, 360);
    out.closeAndStroke();
    out.moveTo(x - 2 * HOLE, y);
    out.lineTo(x + 2 * HOLE, y);
    out.moveTo(x, y - 2 * HOLE);
    out.lineTo(x, y + 2 * HOLE);
    out.stroke();
    List<Double> slots = PrintedDisc.SLOT_DEGREES;
    double gap = (360 - slots.stream().mapToDouble(Double::doubleValue).sum()) / slots.size();
    double at = 0;
    for (double slot : slots) {
      circle(out, x, y, SLOT_INNER, at, at + slot);
      for (double angle = at + slot; angle > at; angle -= STEP_DEGREES) {
        out.lineTo(x + place(SLOT_OUTER, angle, true), y + place(SLOT_OUTER, angle, false));
      }
      out.lineTo(x + place(SLOT_OUTER, at, true), y + place(SLOT_OUTER, at, false));
      out.setNonStrokingColor(0.85f);
      out.closeAndFillAndStroke();
      out.setNonStrokingColor(0f);
      label(out, letters, x, y, at + slot / 2, slot);
      at += slot + gap;
    }
    float foot = y - OUTER - 12 * MM;
    out.moveTo((width - BAR) / 2, foot);
    out.lineTo((width + BAR) / 2, foot);
    for (int end = -1; end <= 1; end += 2) {
      out.moveTo(x + end * BAR / 2, foot - 2 * MM);
      out.lineTo(x + end * BAR / 2, foot + 2 * MM);
    }
    out.stroke();
    float line = foot - 8 * MM;
    for (String key : List.of("disc.print", "disc.use", "disc.caution")) {
      for (String part : folded(Words.say(key), 92)) {
        say(out, letters.regular(), letters, 9, width, line, part);
        line -= 4.6f * MM;
      }
      line -= 1.5f * MM;
    }
  }

  /** Begins a path along a circle. */
  private static void circle(
      PDPageContentStream out, float x, float y, float radius, double from, double to)
      throws IOException {
    out.moveTo(x + place(radius, from, true), y + place(radius, from, false));
    for (double angle = from + STEP_DEGREES; angle < to; angle += STEP_DEGREES) {
      out.lineTo(x + place(radius, angle, true), y + place(radius, angle, false));
    }
    out.lineTo(x + place(radius, to, true), y + place(radius, to, false));
  }

  private static float place(float radius, double degrees, boolean across) {
    double angle = Math.toRadians(degrees);
    return (float) (radius * (across ? Math.cos(angle) : Math.sin(angle)));
  }

  private static void label(
      PDPageContentStream out, Letters letters, float x, float y, double at, double slot)
      throws IOException {
    String text = Words.say("disc.slot", String.format(Locale.ROOT, "%.1f", slot));
    float size = 8;
    float half = letters.regular().getStringWidth(text) / 1000 * size / 2;
    out.beginText();
    out.setFont(letters.regular(), size);
    out.newLineAtOffset(
        x + place(SLOT_INNER - 11 * MM, at, true) - half,
        y + place(SLOT_INNER - 11 * MM, at, false) - size / 3);
    out.showText(text);
    out.endText();
  }

  private static void say(
      PDPageContentStream out,
      PDFont font,
      Letters letters,
      float size,
      float width,
      float y,
      String text)
      throws IOException {
    String shown = letters.shown(font, text);
    float half = font.getStringWidth(shown) / 1000 * size / 2;
    out.beginText();
    out.setFont(font, size);
    out.newLineAtOffset(width / 2 - half, y);
    out.showText(shown);
    out.endText();
  }

  private static List<String> folded(String text, int characters) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      if (line.length() + word.length() > characters) {
        lines.add(line.toString().strip());
        line.setLength(0);
      }
      line.append(word).append(' ');
    }
    lines.add(line.toString().strip());
    return lines;
  }
}
