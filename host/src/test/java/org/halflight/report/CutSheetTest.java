package org.halflight.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Sheets that are cut out have the size that they say, read back from the file. */
class CutSheetTest {
  private static final double MM = 72 / 25.4;
  private static final double PRINTABLE_MM = 5;

  @ParameterizedTest
  @EnumSource(Paper.class)
  void theHolderIsItsOwnSizeOnEitherPaper(Paper paper) throws Exception {
    try (PDDocument document = Loader.loadPDF(HolderSheet.bytes(paper))) {
      assertThat(document.getNumberOfPages()).isOne();
      Outlines outlines = new Outlines(document.getPage(0));
      PDRectangle page = document.getPage(0).getMediaBox();
      assertThat(page.getWidth() / MM).isCloseTo(paper == Paper.A4 ? 210 : 215.9, within(0.05));
      assertThat(page.getHeight() / MM).isCloseTo(paper == Paper.A4 ? 297 : 279.4, within(0.05));
      // The bar; the holders for film 120 and 135, twice their height; frames; the card with the
      // window.
      outlines.has(100, 0);
      outlines.has(90, 122).has(64, 69).has(56, 56).has(36, 24).has(66, 88);
      // Window, masks, places for a flat and for a round diode.
      outlines.has(30, 30).has(4, 4).has(5.6, 4.6).has(5, 5);
      assertThat(outlines.all).allMatch(box -> isOnPaper(box, page));
      assertThat(new PDFTextStripper().getText(document).replaceAll("\\s+", " "))
          .contains("Check this bar with a rule", "Dashed lines: fold", "flash unit");
    }
  }

  @Test
  void theBarOfTheDiscIsAHundredMillimetres() throws Exception {
    try (PDDocument document = Loader.loadPDF(DiscSheet.bytes(Paper.LETTER))) {
      new Outlines(document.getPage(0)).has(100, 0).has(170, 170);
    }
  }

  /** Text and lines must keep clear of the edge that no printer reaches. */
  private static boolean isOnPaper(Rectangle2D box, PDRectangle page) {
    return box.getMinX() > PRINTABLE_MM
        && box.getMinY() > PRINTABLE_MM
        && box.getMaxX() < page.getWidth() / MM - PRINTABLE_MM
        && box.getMaxY() < page.getHeight() / MM - PRINTABLE_MM;
  }

  /** What each drawn line covers, in millimetres. */
  private static final class Outlines extends PDFGraphicsStreamEngine {
    private final List<Rectangle2D> all = new ArrayList<>();
    private final List<Point2D> points = new ArrayList<>();

    Outlines(PDPage page) throws IOException {
      super(page);
      processPage(page);
    }

    Outlines has(double wide, double high) {
      assertThat(all)
          .as("%s by %s mm", wide, high)
          .anyMatch(
              box ->
                  Math.abs(box.getWidth() - wide) < 0.02
                      && Math.abs(box.getHeight() - high) < 0.02);
      return this;
    }

    private void add(double x, double y) {
      points.add(new Point2D.Double(x / MM, y / MM));
    }

    private void drawn() {
      Rectangle2D box = null;
      for (Point2D point : points) {
        if (box == null) {
          box = new Rectangle2D.Double(point.getX(), point.getY(), 0, 0);
        }
        box.add(point);
      }
      if (box != null) {
        all.add(box);
      }
      points.clear();
    }

    @Override
    public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
      List.of(p0, p1, p2, p3).forEach(point -> add(point.getX(), point.getY()));
    }

    @Override
    public void moveTo(float x, float y) {
      add(x, y);
    }

    @Override
    public void lineTo(float x, float y) {
      add(x, y);
    }

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
      add(x3, y3);
    }

    @Override
    public Point2D getCurrentPoint() {
      return new Point2D.Float();
    }

    @Override
    public void strokePath() {
      drawn();
    }

    @Override
    public void fillPath(int rule) {
      drawn();
    }

    @Override
    public void fillAndStrokePath(int rule) {
      drawn();
    }

    @Override
    public void endPath() {
      points.clear();
    }

    @Override
    public void closePath() {}

    @Override
    public void clip(int rule) {}

    @Override
    public void drawImage(PDImage image) {}

    @Override
    public void shadingFill(COSName name) {}
  }
}
