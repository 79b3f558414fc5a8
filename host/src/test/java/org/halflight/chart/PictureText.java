package org.halflight.chart;

import de.rototor.pdfbox.graphics2d.IPdfBoxGraphics2DFontTextDrawer;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.FontMetrics;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.text.AttributedCharacterIterator;
import java.text.CharacterIterator;
import org.apache.pdfbox.pdmodel.PDDocument;

/** Every letter of a picture: what is drawn, and its table. */
public final class PictureText {
  private static final int WIDTH = 900;
  private static final int HEIGHT = 480;

  private PictureText() {}

  /** What a person reads of a picture, a text a line. */
  public static String of(Picture picture) {
    DataTable table = picture.table();
    return String.join("\n", drawn(picture), table.caption(), table.note())
        + '\n'
        + String.join("\n", table.headings())
        + '\n'
        + String.join("\n", table.rows().stream().flatMap(row -> row.stream()).toList());
  }

  private static String drawn(Picture picture) {
    Letters letters = new Letters();
    try (PDDocument document = new PDDocument()) {
      PdfBoxGraphics2D graphics = new PdfBoxGraphics2D(document, WIDTH, HEIGHT);
      graphics.setFontTextDrawer(letters);
      PictureImage.draw(
          picture, Theme.LIGHT, graphics, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT), null);
      graphics.dispose();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return letters.drawn.toString();
  }

  /** Keeps texts in place of drawing them. */
  private static final class Letters implements IPdfBoxGraphics2DFontTextDrawer {
    private final StringBuilder drawn = new StringBuilder();

    @Override
    public boolean canDrawText(AttributedCharacterIterator text, IFontTextDrawerEnv environment) {
      return true;
    }

    @Override
    public void drawText(AttributedCharacterIterator text, IFontTextDrawerEnv environment) {
      for (char c = text.first(); c != CharacterIterator.DONE; c = text.next()) {
        drawn.append(c);
      }
      drawn.append('\n');
    }

    @Override
    public FontMetrics getFontMetrics(Font font, IFontTextDrawerEnv environment)
        throws IOException, FontFormatException {
      return environment.getCalculationGraphics().getFontMetrics(font);
    }
  }
}
