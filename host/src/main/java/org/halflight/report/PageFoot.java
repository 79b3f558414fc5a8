package org.halflight.report;

import java.io.IOException;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import org.apache.pdfbox.util.Matrix;
import org.halflight.session.Source;
import org.halflight.words.Words;

/** What is on every page of a document: who wrote it, its number, and where figures are none. */
final class PageFoot {
  private static final float STAMP_SIZE = 27;

  private final Letters letters;
  private final String foot;
  private final Optional<String> stamp;

  /**
   * @param foot which program, when, and where the figures come from
   * @param stamp words across every page; empty for a rig that exists
   */
  PageFoot(Letters letters, String foot, Optional<String> stamp) {
    this.letters = letters;
    this.foot = foot;
    this.stamp = stamp;
  }

  /** Words across every page for figures from such a source; empty for a rig that exists. */
  static Optional<String> stamp(Source source) {
    return switch (source) {
      case RIG -> Optional.empty();
      case PRACTICE -> Optional.of(Words.say("page.stamp.practice"));
      case SIMULATOR -> Optional.of(Words.say("page.stamp.simulator"));
    };
  }

  /** Draws it on every page of a document that is otherwise done. */
  void draw(PDDocument document) throws IOException {
    int pages = document.getNumberOfPages();
    for (int i = 0; i < pages; i++) {
      draw(document, document.getPage(i), i + 1, pages);
    }
  }

  private void draw(PDDocument document, PDPage page, int number, int pages) throws IOException {
    try (PDPageContentStream out =
        new PDPageContentStream(document, page, AppendMode.APPEND, true, true)) {
      PDRectangle box = page.getMediaBox();
      float size = 7;
      float left = 18 * Sheet.MM;
      float y = 10 * Sheet.MM;
      String right = Words.say("page.number", number, pages);
      float rightWidth = letters.width(letters.regular(), size, right);
      float room = box.getWidth() - 2 * left - rightWidth - 12;
      String fitting = letters.lines(letters.regular(), size, foot, room).get(0);
      write(out, size, left, y, fitting);
      write(out, size, box.getWidth() - left - rightWidth, y, right);
      if (stamp.isPresent()) {
        stamp(out, box, stamp.get());
      }
    }
  }

  private void write(PDPageContentStream out, float size, float x, float y, String line)
      throws IOException {
    out.beginText();
    out.setFont(letters.regular(), size);
    out.setNonStrokingColor(Ink.QUIET);
    out.newLineAtOffset(x, y);
    out.showText(letters.shown(letters.regular(), line));
    out.endText();
  }

  /** Over everything, lightly, so that no part of the page can be copied without it. */
  private void stamp(PDPageContentStream out, PDRectangle box, String words) throws IOException {
    PDExtendedGraphicsState light = new PDExtendedGraphicsState();
    light.setNonStrokingAlphaConstant(0.16f);
    double angle = Math.atan2(box.getHeight(), box.getWidth());
    double diagonal = Math.hypot(box.getHeight(), box.getWidth());
    float width = letters.width(letters.bold(), STAMP_SIZE, words);
    float size = (float) Math.min(STAMP_SIZE, STAMP_SIZE * 0.82 * diagonal / width);
    float length = letters.width(letters.bold(), size, words);
    out.saveGraphicsState();
    out.setGraphicsStateParameters(light);
    out.setNonStrokingColor(Ink.STAMP);
    out.transform(Matrix.getTranslateInstance(box.getWidth() / 2, box.getHeight() / 2));
    out.transform(Matrix.getRotateInstance(angle, 0, 0));
    out.beginText();
    out.setFont(letters.bold(), size);
    out.newLineAtOffset(-length / 2, -size / 3);
    out.showText(words);
    out.endText();
    out.restoreGraphicsState();
  }
}
