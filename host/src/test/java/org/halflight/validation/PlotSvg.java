package org.halflight.validation;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A plot of percentages over a number, for docs/images: lines with their names, zones. */
final class PlotSvg {
  private static final double LEFT = 60;
  private static final double TOP = 40;
  private static final double WIDTH = 640;
  private static final double HEIGHT = 320;
  private static final List<String> COLOURS =
      List.of("#0b6e99", "#c0392b", "#6c3483", "#2e7d32", "#b9770e");
  private static final List<String> DASHES = List.of("none", "8 4", "3 3", "12 3 3 3", "1 4");

  private final double from;
  private final double to;
  private final List<String> parts = new ArrayList<>();
  private int lines;

  PlotSvg(String title, String across, String up, double from, double to, double step) {
    this.from = from;
    this.to = to;
    text(LEFT + WIDTH / 2, 22, "middle", 15, title);
    text(LEFT + WIDTH / 2, TOP + HEIGHT + 38, "middle", 13, across);
    parts.add(
        format(
            "<text transform=\"translate(16 %.1f) rotate(-90)\" text-anchor=\"middle\""
                + " font-size=\"13\">%s</text>",
            TOP + HEIGHT / 2, up));
    for (int percent = 0; percent <= 100; percent += 20) {
      line("#ccc", LEFT, y(percent), LEFT + WIDTH, y(percent));
      text(LEFT - 6, y(percent) + 4, "end", 12, percent + " %");
    }
    for (double at = from; at <= to + step / 2; at += step) {
      line("#ccc", x(at), TOP, x(at), TOP + HEIGHT);
      // A rounded zero may be below it.
      text(x(at), TOP + HEIGHT + 18, "middle", 12, format("%.1f", Math.rint(10 * at) / 10 + 0.0));
    }
  }

  /** What has to be hit. */
  PlotSvg zone(double left, double right, double low, double high) {
    parts.add(
        format(
            "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"#2e7d32\""
                + " fill-opacity=\"0.25\"/>",
            x(left), y(high), x(right) - x(left), y(low) - y(high)));
    return this;
  }

  PlotSvg line(String name, double[] at, double[] percent) {
    StringBuilder points = new StringBuilder();
    for (int i = 0; i < at.length; i++) {
      points.append(format("%.1f,%.1f ", x(at[i]), y(percent[i])));
    }
    String style =
        format(
            "fill=\"none\" stroke=\"%s\" stroke-width=\"2\" stroke-dasharray=\"%s\"",
            COLOURS.get(lines), DASHES.get(lines));
    parts.add(format("<polyline %s points=\"%s\"/>", style, points.toString().trim()));
    double row = TOP + HEIGHT + 62 + 20 * lines;
    parts.add(format("<path %s d=\"M%.1f %.1f h40\"/>", style, LEFT, row - 4));
    text(LEFT + 50, row, "start", 13, name);
    lines++;
    return this;
  }

  void write(String name) {
    double height = TOP + HEIGHT + 62 + 20 * lines;
    String all =
        format(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%1$.0f\" height=\"%2$.0f\""
                    + " viewBox=\"0 0 %1$.0f %2$.0f\" font-family=\"sans-serif\">\n"
                    + "<rect width=\"100%%\" height=\"100%%\" fill=\"#fff\"/>\n",
                LEFT + WIDTH + 20, height)
            + String.join("\n", parts)
            + "\n</svg>\n";
    try {
      Files.writeString(Path.of("docs/images", name), all, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private double x(double at) {
    return LEFT + WIDTH * (at - from) / (to - from);
  }

  private static double y(double percent) {
    return TOP + HEIGHT * (1 - percent / 100);
  }

  private void line(String colour, double x1, double y1, double x2, double y2) {
    parts.add(format("<path stroke=\"%s\" d=\"M%.1f %.1f L%.1f %.1f\"/>", colour, x1, y1, x2, y2));
  }

  private void text(double x, double y, String anchor, int size, String text) {
    parts.add(
        format(
            "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" font-size=\"%d\">%s</text>",
            x, y, anchor, size, text));
  }

  private static String format(String format, Object... args) {
    return String.format(Locale.ROOT, format, args);
  }
}
