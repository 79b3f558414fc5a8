package org.halflight.report;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2DFontTextDrawer;
import java.awt.Font;
import java.awt.Rectangle;
import java.awt.font.TextAttribute;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.text.AttributedCharacterIterator;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.halflight.chart.Picture;
import org.halflight.chart.PictureImage;
import org.halflight.chart.Theme;

/** Pictures as lines and letters, not as pixels; the letters are those of the page. */
final class VectorPicture {
  private VectorPicture() {}

  static PDFormXObject of(
      PDDocument document, Letters letters, Picture picture, float width, float height)
      throws IOException {
    PdfBoxGraphics2D graphics = new PdfBoxGraphics2D(document, width, height);
    try (PageLetters drawer = new PageLetters(letters)) {
      graphics.setFontTextDrawer(drawer);
      PictureImage.draw(
          picture, Theme.LIGHT, graphics, new Rectangle2D.Float(0, 0, width, height), null);
    } finally {
      graphics.dispose();
    }
    return graphics.getXFormObject();
  }

  /** Whatever font is asked for, it is one of the page's two. */
  private static final class PageLetters extends PdfBoxGraphics2DFontTextDrawer {
    private final Letters letters;

    PageLetters(Letters letters) {
      this.letters = letters;
    }

    @Override
    protected PDFont mapFont(Font font, IFontTextDrawerEnv environment) {
      return font.isBold() ? letters.bold() : letters.regular();
    }

    @Override
    protected boolean hasDynamicFontMapping() {
      return true;
    }

    @Override
    public boolean canDrawText(AttributedCharacterIterator text, IFontTextDrawerEnv environment) {
      return true;
    }

    /** What a person wrote may be in any script, in a picture too. */
    @Override
    public void drawText(AttributedCharacterIterator text, IFontTextDrawerEnv environment)
        throws IOException {
      StringBuilder words = new StringBuilder();
      for (char c = text.first(); c != AttributedCharacterIterator.DONE; c = text.next()) {
        words.append(c);
      }
      Font font =
          text.getAttribute(TextAttribute.FONT) instanceof Font its ? its : environment.getFont();
      environment.applyPaint(environment.getPaint(), new Rectangle());
      TextDrawing.draw(
          environment.getContentStream(),
          letters,
          mapFont(font, environment),
          font.getSize2D(),
          words.toString(),
          new AffineTransform());
    }
  }
}
