package org.halflight.report;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2DFontTextDrawer;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
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
  }
}
