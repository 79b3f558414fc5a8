package org.halflight.chart;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import java.awt.Color;
import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.jfree.chart.ChartRenderingInfo;

/** Every text that a picture draws at a size, and where its ink lies. */
public final class DrawnTexts {
  /**
   * A text.
   *
   * @param box around its ink, in pixels of the picture
   * @param letterSize of its font
   */
  public record Drawn(String text, Rectangle2D box, double letterSize, Color ink) {}

  private DrawnTexts() {}

  /** The texts of a picture, and the area of its plot last, under an empty text. */
  public static List<Drawn> of(Picture picture, Theme theme, int width, int height) {
    try (PDDocument document = new PDDocument()) {
      Listening graphics = new Listening(document, width, height);
      ChartRenderingInfo info = new ChartRenderingInfo(null);
      PictureImage.draw(
          picture, theme, graphics, new Rectangle2D.Double(0, 0, width, height), info);
      graphics.dispose();
      graphics.drawn.add(
          new Drawn("", (Rectangle2D) info.getPlotInfo().getDataArea().clone(), 0, Color.BLACK));
      return graphics.drawn;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static final class Listening extends PdfBoxGraphics2D {
    private final List<Drawn> drawn = new ArrayList<>();

    Listening(PDDocument document, int width, int height) throws IOException {
      super(document, width, height);
    }

    @Override
    public void drawString(String text, int x, int y) {
      drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawString(String text, float x, float y) {
      Font font = getFont();
      Rectangle2D ink =
          font.createGlyphVector(new FontRenderContext(null, true, true), text)
              .getOutline(x, y)
              .getBounds2D();
      if (!ink.isEmpty()) {
        drawn.add(
            new Drawn(
                text,
                getTransform().createTransformedShape(ink).getBounds2D(),
                font.getTransform().getScaleX() * font.getSize2D(),
                getColor()));
      }
    }
  }
}
