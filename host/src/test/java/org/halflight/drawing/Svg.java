package org.halflight.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A drawing of rectangles, circles, lines, areas and text, and of nothing else. */
final class Svg {
  private final List<String> parts = new ArrayList<>();
  private final int width;
  private final int height;
  private final String title;

  Svg(String title, int width, int height) {
    this.title = title;
    this.width = width;
    this.height = height;
    rect(0, 0, width, height, "#fff", "none", 0);
  }

  Svg rect(double x, double y, double wide, double high, String fill, String stroke, double line) {
    return add(
        "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"%s\" stroke=\"%s\""
            + " stroke-width=\"%.1f\"/>",
        x, y, wide, high, fill, stroke, line);
  }

  Svg circle(double x, double y, double radius, String fill, String stroke, double line) {
    return add(
        "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\" fill=\"%s\" stroke=\"%s\""
            + " stroke-width=\"%.1f\"/>",
        x, y, radius, fill, stroke, line);
  }

  /** A line through points, x and y in turn. */
  Svg line(String stroke, double line, double... points) {
    return add(
        "<polyline points=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%.1f\""
            + " stroke-linejoin=\"round\" stroke-linecap=\"round\"/>",
        listed(points), stroke, line);
  }

  Svg area(String fill, String stroke, double line, double... points) {
    return add(
        "<polygon points=\"%s\" fill=\"%s\" stroke=\"%s\" stroke-width=\"%.1f\"/>",
        listed(points), fill, stroke, line);
  }

  /**
   * Text at the left end, the middle or the right end: {@code start}, {@code middle}, {@code end}.
   */
  Svg text(double x, double y, double size, String anchor, String fill, String words) {
    return text(x, y, size, anchor, "normal", fill, words);
  }

  Svg bold(double x, double y, double size, String anchor, String fill, String words) {
    return text(x, y, size, anchor, "bold", fill, words);
  }

  private Svg text(
      double x, double y, double size, String anchor, String weight, String fill, String words) {
    return add(
        "<text x=\"%.1f\" y=\"%.1f\" font-size=\"%.0f\" text-anchor=\"%s\" font-weight=\"%s\""
            + " fill=\"%s\">%s</text>",
        x, y, size, anchor, weight, fill, words.replace("&", "&amp;").replace("<", "&lt;"));
  }

  private static String listed(double... points) {
    StringBuilder listed = new StringBuilder();
    for (int i = 0; i < points.length; i += 2) {
      listed.append(String.format(Locale.ROOT, "%.1f,%.1f ", points[i], points[i + 1]));
    }
    return listed.toString().strip();
  }

  private Svg add(String form, Object... values) {
    parts.add(String.format(Locale.ROOT, form, values));
    return this;
  }

  @Override
  public String toString() {
    return String.format(
            Locale.ROOT,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %1$d %2$d\" width=\"%1$d\""
                + " height=\"%2$d\" font-family=\"Helvetica, Arial, sans-serif\">%n"
                    .replace("%n", "\n")
                + "<title>%3$s</title>\n",
            width,
            height,
            title)
        + String.join("\n", parts)
        + "\n</svg>\n";
  }
}
