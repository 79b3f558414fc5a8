package org.halflight.chart;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jspecify.annotations.Nullable;

/** Pictures as pixels. */
public final class PictureImage {
  private PictureImage() {}

  /**
   * A picture for a screen.
   *
   * @param width before scaling, in pixels
   * @param height before scaling, in pixels
   * @param scale pixels of the image for one pixel of the sizes; 2 for a dense screen
   */
  public static BufferedImage draw(
      Picture picture, Theme theme, int width, int height, double scale) {
    return drawn(picture, theme, width, height, scale).image();
  }

  /**
   * A picture for a screen, and where its plot lies.
   *
   * @param image pixels of the screen
   * @param plot the area between the axes, before scaling
   */
  public record Drawn(BufferedImage image, Rectangle2D plot) {}

  /** {@link #draw}, with the place of the plot. */
  public static Drawn drawn(Picture picture, Theme theme, int width, int height, double scale) {
    if (width < 1 || height < 1 || !(scale > 0)) {
      throw new IllegalArgumentException(
          "no image of " + width + " by " + height + " at scale " + scale);
    }
    BufferedImage image =
        new BufferedImage(
            (int) Math.ceil(width * scale),
            (int) Math.ceil(height * scale),
            BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    try {
      graphics.scale(scale, scale);
      graphics.setRenderingHint(
          RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
      ChartRenderingInfo info = new ChartRenderingInfo(null);
      draw(picture, theme, graphics, new Rectangle2D.Double(0, 0, width, height), info);
      return new Drawn(image, (Rectangle2D) info.getPlotInfo().getDataArea().clone());
    } finally {
      graphics.dispose();
    }
  }

  /** Draws a picture on whatever there is to draw on, as its size wants it. */
  public static void draw(
      Picture picture,
      Theme theme,
      Graphics2D graphics,
      Rectangle2D area,
      @Nullable ChartRenderingInfo info) {
    JFreeChart chart = picture.chart(theme);
    FittedChart.fit(chart, graphics, area, theme);
    chart.draw(graphics, area, info);
  }

  /** A picture as the bytes of a PNG file, always in the light theme, whatever the screen shows. */
  public static byte[] png(Picture picture, int width, int height, double scale) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      if (!ImageIO.write(draw(picture, Theme.LIGHT, width, height, scale), "png", bytes)) {
        throw new IllegalStateException("this Java has no PNG writer");
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }
}
