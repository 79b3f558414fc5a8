package org.halflight.report;

import java.awt.geom.AffineTransform;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;

/**
 * A sheet that is printed at its own size and cut out. Places are in millimetres from its upper
 * left corner, y downwards; a bar of 100 mm shows whether the printer kept the size.
 */
final class CutSheet {
  static final double BAR_MM = 100;

  private static final float MM = Sheet.MM;
  private static final float THIN = 0.25f;
  private static final float[] DASHES = {4, 3};
  private static final float[] DOTS = {1, 2};

  /** Steps of circles; the chord of one of 85 mm stays within 0.001 mm of it. */
  private static final double STEP_DEGREES = 0.5;

  /** What is drawn on a sheet. */
  interface Drawing {
    void on(CutSheet sheet) throws IOException;
  }

  private final PDPageContentStream out;
  private final Letters letters;
  private final double width;
  private final float height;

  private CutSheet(PDPageContentStream out, Letters letters, PDPage page) {
    this.out = out;
    this.letters = letters;
    this.width = page.getMediaBox().getWidth() / MM;
    this.height = page.getMediaBox().getHeight();
  }

  /** A sheet as the bytes of a PDF file, its title at the top. */
  static byte[] bytes(Paper paper, String title, Drawing drawing) {
    try (PDDocument document = new PDDocument();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      document.getDocumentInformation().setTitle(title);
      PDPage page = new PDPage(paper.box());
      document.addPage(page);
      Letters letters = new Letters(document);
      try (PDPageContentStream out = new PDPageContentStream(document, page)) {
        out.setLineWidth(THIN);
        CutSheet sheet = new CutSheet(out, letters, page);
        sheet.centred(letters.bold(), 13, sheet.width / 2, 15, title);
        drawing.on(sheet);
      }
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  double width() {
    return width;
  }

  /** Lines from point to point, x and y in turn. */
  CutSheet line(double... points) throws IOException {
    path(points);
    out.stroke();
    return this;
  }

  /** A line to fold along. */
  CutSheet fold(double... points) throws IOException {
    out.setLineDashPattern(DASHES, 0);
    line(points);
    out.setLineDashPattern(new float[0], 0);
    return this;
  }

  /** A line that is neither cut nor folded. */
  CutSheet guide(double... points) throws IOException {
    out.setStrokingColor(0.55f);
    out.setLineDashPattern(DOTS, 0);
    line(points);
    out.setLineDashPattern(new float[0], 0);
    out.setStrokingColor(0f);
    return this;
  }

  CutSheet rectangle(double x, double y, double wide, double high) throws IOException {
    out.addRect(
        (float) x * MM, height - (float) (y + high) * MM, (float) wide * MM, (float) high * MM);
    out.stroke();
    return this;
  }

  CutSheet circle(double x, double y, double radius) throws IOException {
    path(arc(x, y, radius, 0, 360));
    out.closeAndStroke();
    return this;
  }

  /** A part of a ring that is cut out, grey; degrees anticlockwise from the right. */
  CutSheet slot(double x, double y, double inner, double outer, double from, double to)
      throws IOException {
    path(arc(x, y, inner, from, to));
    double[] back = arc(x, y, outer, to, from);
    for (int i = 0; i < back.length; i += 2) {
      out.lineTo((float) back[i] * MM, height - (float) back[i + 1] * MM);
    }
    out.setNonStrokingColor(0.85f);
    out.closeAndFillAndStroke();
    out.setNonStrokingColor(0f);
    return this;
  }

  private void path(double... points) throws IOException {
    out.moveTo((float) points[0] * MM, height - (float) points[1] * MM);
    for (int i = 2; i < points.length; i += 2) {
      out.lineTo((float) points[i] * MM, height - (float) points[i + 1] * MM);
    }
  }

  private static double[] arc(double x, double y, double radius, double from, double to) {
    int steps = (int) Math.ceil(Math.abs(to - from) / STEP_DEGREES);
    double[] points = new double[2 * steps + 2];
    for (int i = 0; i <= steps; i++) {
      double angle = Math.toRadians(from + (to - from) * i / steps);
      points[2 * i] = x + radius * Math.cos(angle);
      points[2 * i + 1] = y - radius * Math.sin(angle);
    }
    return points;
  }

  /** The bar, its middle at a place. */
  CutSheet bar(double x, double y) throws IOException {
    line(x - BAR_MM / 2, y, x + BAR_MM / 2, y);
    for (int end = -1; end <= 1; end += 2) {
      line(x + end * BAR_MM / 2, y - 2, x + end * BAR_MM / 2, y + 2);
    }
    return this;
  }

  /** One line of text with the middle of its baseline at a place. */
  CutSheet centred(float size, double x, double y, String text) throws IOException {
    return centred(letters.regular(), size, x, y, text);
  }

  private CutSheet centred(PDFont font, float size, double x, double y, String text)
      throws IOException {
    return text(font, size, x - letters.width(font, size, text) / MM / 2, y, text);
  }

  /**
   * A paragraph.
   *
   * @return where the next one goes
   */
  double paragraph(float size, double x, double y, double wide, String text) throws IOException {
    double at = y;
    for (String line : letters.lines(letters.regular(), size, text, (float) wide * MM)) {
      text(letters.regular(), size, x, at, line);
      at += Sheet.lineHeight(size) / MM;
    }
    return at + 0.4 * size / MM;
  }

  private CutSheet text(PDFont font, float size, double x, double y, String text)
      throws IOException {
    TextDrawing.draw(
        out, letters, font, size, text, new AffineTransform(1, 0, 0, -1, x * MM, height - y * MM));
    return this;
  }
}
