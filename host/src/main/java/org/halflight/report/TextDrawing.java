package org.halflight.report;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.util.Optional;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.util.Matrix;

/** Puts a line of text on a page: letter by letter where that can be, else as outlines. */
final class TextDrawing {
  private TextDrawing() {}

  /**
   * Draws a line in the colour that is set for filling.
   *
   * @param place takes a place beside the beginning of the baseline, y downwards, to the page
   */
  static void draw(
      PDPageContentStream out,
      Letters letters,
      PDFont font,
      float size,
      String text,
      AffineTransform place)
      throws IOException {
    Optional<Shape> outlines = letters.outlines(font, size, text);
    if (outlines.isPresent()) {
      outlined(out, outlines.get(), text, place);
      return;
    }
    AffineTransform upright = new AffineTransform(place);
    upright.scale(1, -1);
    out.beginText();
    out.setTextMatrix(new Matrix(upright));
    for (Letters.Run run : letters.runs(font, text)) {
      out.setFont(run.font(), size);
      out.showText(run.text());
    }
    out.endText();
  }

  /** Outlines that a reader program still takes for the text that they show. */
  private static void outlined(
      PDPageContentStream out, Shape outlines, String text, AffineTransform place)
      throws IOException {
    COSDictionary said = new COSDictionary();
    said.setString(COSName.ACTUAL_TEXT, text);
    out.beginMarkedContent(COSName.getPDFName("Span"), PDPropertyList.create(said));
    float[] to = new float[6];
    float fromX = 0;
    float fromY = 0;
    boolean any = false;
    for (PathIterator path = outlines.getPathIterator(place); !path.isDone(); path.next()) {
      any = true;
      int points = 0;
      switch (path.currentSegment(to)) {
        case PathIterator.SEG_MOVETO -> out.moveTo(to[0], to[1]);
        case PathIterator.SEG_LINETO -> out.lineTo(to[0], to[1]);
        case PathIterator.SEG_CUBICTO -> {
          out.curveTo(to[0], to[1], to[2], to[3], to[4], to[5]);
          points = 4;
        }
        case PathIterator.SEG_QUADTO -> {
          // The cubic curve that is the same as this quadratic one.
          out.curveTo(
              (fromX + 2 * to[0]) / 3,
              (fromY + 2 * to[1]) / 3,
              (to[2] + 2 * to[0]) / 3,
              (to[3] + 2 * to[1]) / 3,
              to[2],
              to[3]);
          points = 2;
        }
        default -> out.closePath();
      }
      fromX = to[points];
      fromY = to[points + 1];
    }
    if (any) {
      out.fill();
    }
    out.endMarkedContent();
  }
}
