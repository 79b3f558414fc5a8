package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Paint;
import java.awt.Shape;
import java.awt.TexturePaint;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import org.halflight.words.Words;
import org.jfree.chart.LegendItem;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;

/** Entries of the legend, and marks that look like them. */
final class Keys {
  private static final BasicStroke OUTLINE = new BasicStroke(1.7f);

  private Keys() {}

  static double markSize(Theme theme) {
    return 0.66 * theme.letterSize();
  }

  /** Makes a row of data look like its entry. */
  static void dress(
      XYLineAndShapeRenderer renderer,
      int row,
      Shape mark,
      Color filling,
      Color outline,
      Theme theme) {
    dress(renderer, row, mark, filling, outline, markSize(theme));
  }

  /** The same in another size, in pixels. */
  static void dress(
      XYLineAndShapeRenderer renderer,
      int row,
      Shape mark,
      Color filling,
      Color outline,
      double size) {
    renderer.setUseFillPaint(true);
    renderer.setUseOutlinePaint(true);
    renderer.setDrawOutlines(true);
    renderer.setSeriesShape(row, Marks.sized(mark, size));
    renderer.setSeriesFillPaint(row, filling);
    renderer.setSeriesPaint(row, outline);
    renderer.setSeriesOutlinePaint(row, outline);
    renderer.setSeriesOutlineStroke(row, OUTLINE);
  }

  static LegendItem mark(String words, Shape mark, Color filling, Color outline, Theme theme) {
    return item(words, Marks.sized(mark, markSize(theme)), filling, outline);
  }

  /** A firing that does not count. */
  static LegendItem rejected(Theme theme) {
    return mark(
        Words.say("chart.rejected"),
        Marks.CROSSED_OUT,
        theme.background(),
        theme.quietInk(),
        theme);
  }

  /** A mean: a lying bar on a standing line. */
  static LegendItem bar(String words, Color filling, Color outline, Theme theme) {
    double size = markSize(theme);
    Path2D shape = new Path2D.Double();
    shape.append(new Line2D.Double(0, -size * 0.75, 0, size * 0.75), false);
    shape.append(new Rectangle2D.Double(-size, -2.5, 2 * size, 5), false);
    return item(words, shape, filling, outline);
  }

  /** A mean that runs through the whole picture. */
  static LegendItem line(String words, Line2D line, Color colour) {
    return item(words, line, colour, colour);
  }

  /** Words alone. */
  static LegendItem words(String words, Theme theme) {
    return item(words, new Line2D.Double(), theme.ink(), theme.ink());
  }

  static LegendItem band(String words, Color filling, Theme theme) {
    return item(words, box(theme), filling, filling);
  }

  /** An arrow pointing down. */
  static LegendItem arrow(String words, Theme theme) {
    double size = markSize(theme);
    Path2D shape = new Path2D.Double();
    shape.append(new Line2D.Double(0, -size * 0.75, 0, 0), false);
    shape.moveTo(0, size * 0.75);
    shape.lineTo(-size * 0.4, 0);
    shape.lineTo(size * 0.4, 0);
    shape.closePath();
    return item(words, shape, theme.ink(), theme.ink());
  }

  static LegendItem hatching(String words, Theme theme) {
    return hatching(words, theme.quietInk(), theme);
  }

  static LegendItem hatching(String words, Color outline, Theme theme) {
    return item(words, box(theme), texture(theme), outline);
  }

  private static Shape box(Theme theme) {
    double size = markSize(theme);
    return new Rectangle2D.Double(-size, -size * 0.6, 2 * size, 1.2 * size);
  }

  private static LegendItem item(String words, Shape shape, Paint filling, Paint outline) {
    return new LegendItem(
        words,
        null,
        null,
        null,
        true,
        shape,
        true,
        filling,
        true,
        outline,
        OUTLINE,
        false,
        new Line2D.Double(),
        new BasicStroke(1),
        outline);
  }

  private static Paint texture(Theme theme) {
    int size = 28;
    BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setPaint(theme.background());
    graphics.fillRect(0, 0, size, size);
    ToleranceBand.hatch(graphics, new Rectangle2D.Double(0, 0, size, size), theme);
    graphics.dispose();
    return new TexturePaint(image, new Rectangle2D.Double(0, 0, size, size));
  }
}
