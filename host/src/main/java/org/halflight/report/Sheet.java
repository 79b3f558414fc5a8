package org.halflight.report;

import java.awt.Color;
import java.awt.geom.AffineTransform;
import java.io.Closeable;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.util.Matrix;

/**
 * Pages that fill from the top down and go on by themselves. Places are in points (1/72 inch), y
 * counted from the bottom of the page as PDF does.
 */
final class Sheet implements Closeable {
  static final float MM = 72 / 25.4f;
  private static final float SIDE = 18 * MM;
  private static final float TOP = 16 * MM;
  private static final float BOTTOM = 17 * MM;
  private static final float LINE = 1.36f;

  private final PDDocument document;
  private final Paper paper;
  private final Letters letters;
  private PDPageContentStream out;
  private float y;

  Sheet(PDDocument document, Paper paper, Letters letters) throws IOException {
    this.document = document;
    this.paper = paper;
    this.letters = letters;
    newPage();
  }

  void newPage() throws IOException {
    if (out != null) {
      out.close();
    }
    PDPage page = new PDPage(paper.box());
    document.addPage(page);
    out = new PDPageContentStream(document, page);
    y = paper.box().getHeight() - TOP;
  }

  Letters letters() {
    return letters;
  }

  PDPageContentStream out() {
    return out;
  }

  float left() {
    return SIDE;
  }

  float width() {
    return paper.box().getWidth() - 2 * SIDE;
  }

  /** Where the next thing goes. */
  float y() {
    return y;
  }

  /** Height that is left on this page. */
  float room() {
    return y - BOTTOM;
  }

  void down(float points) {
    y -= points;
  }

  /** Goes on to the next page unless so much height is left on this one. */
  void need(float height) throws IOException {
    if (room() < height) {
      newPage();
    }
  }

  static float lineHeight(float size) {
    return LINE * size;
  }

  /** A heading that is never alone at the foot of a page. */
  void heading(String text, float keepWith) throws IOException {
    float size = 11.5f;
    need(4 + lineHeight(size) + 6 + keepWith);
    down(9);
    List<String> lines = letters.lines(letters.bold(), size, text, width());
    for (String line : lines) {
      down(lineHeight(size));
      text(letters.bold(), size, Ink.BLACK, left(), y + 0.25f * size, line);
    }
    down(3);
  }

  void paragraph(String text, PDFont font, float size, Color colour) throws IOException {
    for (String line : letters.lines(font, size, text, width())) {
      need(lineHeight(size));
      down(lineHeight(size));
      text(font, size, colour, left(), y + 0.25f * size, line);
    }
    down(0.3f * size);
  }

  void paragraph(String text) throws IOException {
    paragraph(text, letters.regular(), 9, Ink.BLACK);
  }

  void point(String text) throws IOException {
    float size = 9;
    float indent = 11;
    boolean first = true;
    for (String line : letters.lines(letters.regular(), size, text, width() - indent)) {
      need(lineHeight(size));
      down(lineHeight(size));
      if (first) {
        text(letters.regular(), size, Ink.QUIET, left() + 2, y + 0.25f * size, "\u2013");
      }
      text(letters.regular(), size, Ink.BLACK, left() + indent, y + 0.25f * size, line);
      first = false;
    }
    down(0.25f * size);
  }

  /** One line of text with its baseline at a place. */
  void text(PDFont font, float size, Color colour, float x, float baseline, String text)
      throws IOException {
    out.setNonStrokingColor(colour);
    TextDrawing.draw(out, letters, font, size, text, new AffineTransform(1, 0, 0, -1, x, baseline));
  }

  /** A lying line. */
  void line(float x, float atY, float width, float thickness, Color colour) throws IOException {
    out.setStrokingColor(colour);
    out.setLineWidth(thickness);
    out.moveTo(x, atY);
    out.lineTo(x + width, atY);
    out.stroke();
  }

  /** A filled box. */
  void box(float x, float bottom, float width, float height, Color colour) throws IOException {
    out.setNonStrokingColor(colour);
    out.addRect(x, bottom, width, height);
    out.fill();
  }

  /** A drawing as wide as the page allows. */
  void drawing(PDFormXObject drawing, float drawnWidth, float drawnHeight) throws IOException {
    drawings(List.of(drawing), drawnWidth, drawnHeight);
  }

  /** Drawings of one size side by side, together as wide as the page allows. */
  void drawings(List<PDFormXObject> drawings, float drawnWidth, float drawnHeight)
      throws IOException {
    float scale = width() / (drawings.size() * drawnWidth);
    float height = drawnHeight * scale;
    need(height);
    down(height);
    out.saveGraphicsState();
    out.transform(Matrix.getTranslateInstance(left(), y));
    out.transform(Matrix.getScaleInstance(scale, scale));
    for (PDFormXObject drawing : drawings) {
      out.drawForm(drawing);
      out.transform(Matrix.getTranslateInstance(drawnWidth, 0));
    }
    out.restoreGraphicsState();
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
